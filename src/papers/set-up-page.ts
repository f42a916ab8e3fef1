/** One set of tools: what is mounted, what is locked out first, and the lines that are bent on it, in their order. */
import { throatSays } from "../bill/drawn-says.ts";
import { hitsOf } from "../bill/lines/bent-strip.ts";
import { openPlates } from "../bill/open-plates.ts";
import type { BillPlan, QuotedLine } from "../bill/plan.ts";
import { releaseOf } from "../bill/release.ts";
import { notFromPlateSays } from "../bill/says.ts";
import type { SetUp } from "../bill/setups/plan-setups.ts";
import { missing } from "../units/certain.ts";
import { show, showForce, showMark, showNumber, showThickness } from "../units/show.ts";
import { cautionsOfSetUp } from "./cautions.ts";
import { partSays } from "./line-words.ts";
import { MOVES } from "./moves.ts";
import { BLANK, BOX, heading, keyFigures, list, paragraph, table, text } from "./page.ts";

/** @param name "Set-up 3 of 14" */
export function setUpPage(name: string, { tools, lines }: SetUp, plan: BillPlan): string {
  const { system } = plan.shop;
  const force = (line: QuotedLine, of: "expected" | "worst") => line.plan.force?.[of] ?? 0;
  const most = (of: "expected" | "worst") => showForce(Math.max(...lines.map((line) => force(line, of))), system);
  const throat = throatSays(lines[0]?.plan.strips[0], tools.punch);
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
    throat === "" ? "" : `<p><strong>${text(`${(tools.punch ?? missing()).name}: ${throat}.`)}</strong></p>`,
    paragraph(notFromPlateSays(openPlates([tools.brake, tools.die, tools.punch]))),
    table(
      [
        { title: "Part", short: true },
        { title: "Description" },
        { title: "Material", short: true },
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
          partSays(line),
          ordered.description,
          `${ordered.material.name} ${showThickness(ordered.thickness, system)}`,
          showNumber(blanks, 7),
          `${showMark(blank.length, system).split(" · ")[0]} x ${showMark(blank.width, system).split(" · ")[0]}`,
          String(strips.reduce((sum, strip) => sum + hitsOf(strip).length, 0)),
          showForce(force(line, "expected"), system),
          releaseOf(line),
          { markup: BOX },
        ];
      }),
      "tight",
    ),
    `<h2>Before the first stroke</h2>${list(cautionsOfSetUp, "cautions")}`,
    `<p>Tools set by ${BLANK} date ${BLANK} &nbsp; middle of the die lined up with the punch ${BOX} &nbsp; gauge square ${BOX}</p>`,
    LEGEND,
  ].join("\n");
}

/** What the sheets of its lines mean, so that nobody has to ask. */
const LEGEND = `<h2>How to read its sheets</h2><div class="legend">${MOVES.map(
  ({ words, mark, means }) => `${mark}<b>${text(words)}</b><span>${text(means)}</span>`,
).join("")}</div>${list(
  [
    "Small pictures: seen from above, the back gauge to the right. Hits: seen from the end of the bed, the back gauge to the right.",
    "Drawn side: the one that the drawing of the flat shows. It is up at every bend that says up, and down at every one that says down.",
    "Edge 1 is the end beside flange 1, edge 2 the other end; top and bottom edge as in the drawing of the flat. Gauge off flange 1: its outside against the finger; off flange 1 at 0.5: it leans, and the finger meets it that high above the die, further back than its mold line (finger height assumed: with another, set the stop by the first piece); off a round: the outside of that bend.",
    "Back gauge: from the middle of the die to the finger. Bend to: turned so far under load, before it springs back. Depth: punch tip below the top of the die.",
  ],
  "small",
)}`;
