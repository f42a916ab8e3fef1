/** The sheets as the shear cuts them, one after another: each drawn, with its cuts in words by the numbers of the drawing. */
import { cutsInOrder } from "../bill/cut/cuts-in-order.ts";
import { offcutsOf } from "../bill/cut/offcuts.ts";
import type { BillPlan } from "../bill/plan.ts";
import { showReading, showThickness } from "../units/show.ts";
import { drawPattern, patternTitle } from "./drawing/cut-plan.ts";
import { sheetDrawn } from "./shear-cuts.ts";

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
  return groups.flatMap((group) => {
    const all = cutsInOrder(group, plan.shop, offcuts);
    return (group.plan?.patterns ?? []).map((pattern): CutSheet => {
      const rows = all.filter(({ row }) => row.pattern === pattern.id);
      const own = offcuts.filter((offcut) => offcut.group === group && offcut.pattern === pattern.id);
      const drawn = sheetDrawn(pattern, group, own, rows);
      return {
        title: `${group.material.name} ${showThickness(group.thickness, system)}`,
        about: `${patternTitle(pattern, drawn.name)}, on ${group.shear!.name}`,
        repeats: pattern.repeats,
        svg: drawPattern(
          pattern,
          rows.map(({ row }) => row),
          drawn,
          system,
        ).svg,
        cuts: rows.map(({ row, piece, drops, onTable }) => ({
          number: row.seq,
          says: `${piece}: set ${showReading(row.measure, system)}; drops ${drops || "nothing"}; on table ${onTable || "nothing"}`,
        })),
      };
    });
  });
}
