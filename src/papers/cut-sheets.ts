/** The sheets as the shear cuts them, one after another: each drawn, with its cuts in words by the numbers of the drawing. */
import { type CutInWords, cutsInOrder } from "../bill/cut/cuts-in-order.ts";
import { offcutsOf } from "../bill/cut/offcuts.ts";
import type { BillPlan } from "../bill/plan.ts";
import { missing } from "../units/certain.ts";
import { showNumber, showReading, showThickness } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { drawPattern, patternTitle } from "./drawing/cut-plan.ts";
import { heldIn, measuredBy, releasesOf, sheetDrawn, turnAndLift } from "./shear-cuts.ts";

export interface CutSheet {
  readonly title: string;
  readonly about: string;
  /** How many sheets are cut so. */
  readonly repeats: number;
  /** The lines of a cut bear its number as data-cut. */
  readonly svg: string;
  readonly cuts: readonly { readonly number: number; readonly says: string }[];
}

export function cutSheets(plan: BillPlan): CutSheet[] {
  const { system } = plan.shop;
  const { groups } = plan;
  const offcuts = offcutsOf(groups);
  const releases = releasesOf(plan);
  return groups.flatMap((group) => {
    const all = cutsInOrder(group, plan.shop, offcuts);
    return (group.plan?.patterns ?? []).map((pattern): CutSheet => {
      const rows = all.filter(({ row }) => row.pattern === pattern.id);
      const own = offcuts.filter((offcut) => offcut.group === group && offcut.pattern === pattern.id);
      const drawn = sheetDrawn(pattern, group, own, rows);
      return {
        title: `${group.material.name} ${showThickness(group.thickness, system)}`,
        about: `${patternTitle(pattern, drawn.name)}, on ${(group.shear ?? missing()).name}`,
        repeats: pattern.repeats,
        svg: drawPattern(
          pattern,
          rows.map(({ row }) => row),
          drawn,
          system,
        ).svg,
        cuts: rows.map((cut) => ({ number: cut.row.seq, says: cutSays(cut, heldIn(group, releases)(cut), system) })),
      };
    });
  });
}

/** The row of the paper's cut list as a sentence, in the order it is done. */
function cutSays(cut: CutInWords, held: string, system: UnitSystem): string {
  const { row, piece, drops, onTable } = cut;
  const before = turnAndLift(cut);
  return [
    `${piece}: ${before === "" ? "" : `${before}; `}set ${showReading(row.measure, system)}, ${measuredBy(cut)}`,
    row.strokes === 1 ? "1 stroke" : `${showNumber(row.strokes, 7)} strokes`,
    `drops ${drops || "nothing"}${held === "" ? "" : `, ${held}`}`,
    `on table ${onTable || "nothing"}`,
  ].join("; ");
}
