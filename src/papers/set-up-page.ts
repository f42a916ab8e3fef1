/** One set of tools: what is mounted, what is locked out first, and the lines that are bent on it, in their order. */
import { lineName } from "../bill/line-name.ts";
import { hitsOf } from "../bill/lines/bent-strip.ts";
import type { BillPlan, QuotedLine } from "../bill/plan.ts";
import { releaseOf } from "../bill/release.ts";
import type { SetUp } from "../bill/setups/plan-setups.ts";
import { show, showForce, showMark, showNumber } from "../units/show.ts";
import { cautionsOfSetUp } from "./cautions.ts";
import { BLANK, BOX, heading, keyFigures, list, table } from "./page.ts";

/** @param name "Set-up 3 of 14" */
export function setUpPage(name: string, { tools, lines }: SetUp, plan: BillPlan): string {
  const { system } = plan.shop;
  const force = (line: QuotedLine, of: "expected" | "worst") => line.plan.force?.[of] ?? 0;
  const most = (of: "expected" | "worst") => showForce(Math.max(...lines.map((line) => force(line, of))), system);
  return [
    heading(`${name}: ${tools.brake.name}`),
    keyFigures([
      { name: "Die", value: tools.die.name, beside: `opening ${show(tools.die.opening, "length", system)}` },
      {
        name: "Punch",
        value: tools.punch?.name ?? "any",
        beside: tools.punch?.nose === undefined ? "" : `nose ${show(tools.punch.nose, "length", system, 3)}`,
      },
      {
        name: "Most force of these lines",
        value: most("expected"),
        beside: `${most("worst")} if it runs hard; ${tools.brake.name} is rated ${showForce(tools.brake.ratedForce, system)}`,
      },
    ]),
    table(
      [
        { title: "Part", short: true },
        { title: "Description" },
        { title: "Material" },
        { title: "Blanks", number: true },
        { title: "Flat", number: true },
        { title: "Hits", number: true },
        { title: "Force", number: true },
        { title: "Release" },
        { title: "Done" },
      ],
      lines.map((line) => {
        const { line: ordered, blank, blanks, strips } = line.plan;
        return [
          lineName(line),
          ordered.description,
          `${ordered.material.name} ${show(ordered.thickness, "length", system)}`,
          showNumber(blanks, 7),
          `${showMark(blank.length, system).split(" · ")[0]} x ${showMark(blank.width, system).split(" · ")[0]}`,
          String(strips.reduce((sum, strip) => sum + hitsOf(strip).length, 0)),
          showForce(force(line, "expected"), system),
          releaseOf(line),
          { markup: BOX },
        ];
      }),
    ),
    `<h2>Before the first stroke</h2>${list(cautionsOfSetUp, "cautions")}`,
    `<p>Tools set by ${BLANK} date ${BLANK} &nbsp; middle of the die lined up with the punch ${BOX} &nbsp; gauge square ${BOX}</p>`,
  ].join("\n");
}
