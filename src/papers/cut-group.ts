/** What is pulled for one material and thickness, what comes of it, and what to mind at the machine. */
import type { Offcut } from "../bill/cut/offcuts.ts";
import type { CutGroup } from "../bill/cut/plan-cutting.ts";
import { liftOf } from "../bill/lines/lifting.ts";
import { openPlates } from "../bill/open-plates.ts";
import type { BillPlan, LineAnswer } from "../bill/plan.ts";
import { releaseToCut } from "../bill/release.ts";
import { notFromPlateSays } from "../bill/says.ts";
import { missing } from "../units/certain.ts";
import { show, showNumber, showPlain, showReading } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { holesCounted } from "./holes.ts";
import { AT_THE_CUT, partSays, sayOnce } from "./line-words.ts";
import { BOX, goesOn, list, releaseCell, table, text } from "./page.ts";
import { sheetOf } from "./shear-cuts.ts";

export function groupHead(group: CutGroup, plan: BillPlan, offcuts: readonly Offcut[]): string {
  const { system } = plan.shop;
  const { cutter, uses } = group;
  const lines = plan.lines.filter((line) => line.plan !== undefined && group.lines.includes(line.plan));
  const count = uses.reduce((sum, use) => sum + use.count, 0);
  const machines = group.lines.map(({ cutting }) => cutting[cutter]);
  const body = [
    `<p>Pull <strong>${count}</strong> ${count === 1 ? "sheet" : "sheets"}.${yieldOf(group)} ${text(notFromPlateSays(openPlates(machines)))}</p>`,
    sheets(group, plan, offcuts),
    // Only lines on the waterjet have a finding about the machine they are not cut on.
    list(
      sayOnce(lines, system, ({ about, status }) => status !== "note" && [...AT_THE_CUT, "stock"].includes(about)),
      "findings",
    ),
    pieces(group, lines, system),
  ].join("\n");
  return goesOn(`<h2>${text(sheetOf(group, plan))}</h2>`, body);
}

const yieldOf = ({ plan }: CutGroup): string =>
  plan && plan.sheetArea > 0
    ? ` ${showNumber((100 * plan.blankArea) / plan.sheetArea, 3)} % of the metal is blanks.`
    : "";

const sheets = (group: CutGroup, { shop: { system, rates } }: BillPlan, offcuts: readonly Offcut[]): string =>
  table(
    [
      { title: "Sheet", short: true },
      { title: "Size", short: true },
      { title: "Pull", number: true },
      { title: "Each", number: true },
      { title: "Lift", short: true },
      { title: "Together", number: true },
      { title: "Worth keeping, with a tag" },
      { title: "Pulled" },
    ],
    group.uses.map(({ sheet, count, weight }) => [
      sheet.name,
      `${showPlain(sheet.length, system)} x ${showReading(sheet.width, system)}`,
      showNumber(count, 7),
      show(sheet.weight, "mass", system, 4),
      liftOf(sheet.weight, rates),
      show(weight, "mass", system, 4),
      offcuts
        .filter((offcut) => offcut.group === group && offcut.sheet === sheet)
        .map(
          ({ tag, count, length, width }) =>
            `${count === 1 ? "" : `${count} x `}${tag}: ${showPlain(length, system)} x ${showReading(width, system)}`,
        )
        .join("; "),
      { markup: BOX },
    ]),
    "tight",
  );

const pieces = ({ uses }: CutGroup, lines: readonly LineAnswer[], system: UnitSystem): string =>
  table(
    [
      { title: "Part" },
      { title: "Blank" },
      { title: "Grain along" },
      { title: "Ordered", number: true },
      { title: "To cut", number: true },
      { title: "Holes, by the drawing" },
      { title: "Release" },
      { title: "Counted" },
    ],
    lines.map((line) => {
      const { blank, line: ordered } = line.plan ?? missing();
      const cut = uses.reduce((sum, use) => sum + (use.pieces.get(line.plan ?? missing()) ?? 0), 0);
      return [
        partSays(line),
        `${showPlain(blank.length, system)} x ${showReading(blank.width, system)}`,
        blank.grain || "as it comes",
        showNumber(ordered.quantity, 7),
        showNumber(cut, 7),
        holesCounted(ordered, system),
        releaseCell(releaseToCut(line)),
        { markup: BOX },
      ];
    }),
    "tight",
  );
