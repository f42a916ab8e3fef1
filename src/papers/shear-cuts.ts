/** The shear's patterns drawn, and its cuts in the order they are made. */
import { cutNote, cutsInOrder } from "../bill/cut/cuts-in-order.ts";
import type { CutGroup } from "../bill/cut/plan-cutting.ts";
import { showNumber, showReading } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { drawPattern, patternTitle } from "./drawing/cut-plan.ts";
import { BOX, list, table, text } from "./page.ts";

export function shearCuts(group: CutGroup, system: UnitSystem): string {
  const { patterns, cuts, warnings } = group.plan!;
  return [
    ...patterns.map((pattern) => {
      const sheet = group.sheetOf.get(pattern.stock)!.name;
      return `<figure class="plan"><figcaption>${text(patternTitle(pattern, sheet))}</figcaption>${drawPattern(pattern, cuts, sheet, system)}</figure>`;
    }),
    cutTable(group, system),
    list(warnings),
    '<p class="foot">Shear guards in place; hands and the drop clear; nobody behind the blade.</p>',
  ].join("\n");
}

const cutTable = (group: CutGroup, system: UnitSystem): string =>
  table(
    [
      { title: "Cut", number: true },
      { title: "Piece", short: true },
      { title: "Gauge", number: true },
      { title: "Cut length", number: true },
      { title: "Strokes", number: true },
      { title: "Drops" },
      { title: "On table" },
      { title: "Turn", short: true },
      { title: "Note" },
      { title: "Done" },
    ],
    cutsInOrder(group).map((cut) => [
      String(cut.seq),
      cut.copies > 1 ? `${cut.piece} (${cut.copies} of them)` : cut.piece,
      cut.gauge === null ? "" : showReading(cut.gauge, system),
      showReading(cut.length, system),
      showNumber(cut.strokes, 7),
      cut.falls,
      cut.stays,
      cut.turn ? "turn" : "",
      cutNote(cut, system),
      { markup: BOX },
    ]),
    "cuts",
  );
