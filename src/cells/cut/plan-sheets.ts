/** Plans every material and thickness of a table of blanks on its own, since no sheet serves two. */
import { DEFAULT_UNITS, planCuts } from "../../calc/cutting/plan-cuts.ts";
import type { Blank, Plan, Stock } from "../../calc/cutting/types.ts";
import type { Material } from "../../data/materials/material.ts";
import type { Millimetres } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { type StockSheet, sheetsFor } from "../tables/stock.ts";
import type { BlankToCut } from "./blanks-table.ts";
import type { CutLimits } from "./limits-table.ts";

export interface SheetPlan {
  readonly material: Material;
  readonly thickness: Millimetres;
  readonly sheets: readonly StockSheet[];
  /** A refusal where no plan can be made for this material and thickness; the others still have theirs. */
  readonly plan: Plan | Refusal;
}

/** Most search for one material and thickness: effort 10 is what the planner takes for about a second. */
const UNITS_PER_EFFORT = DEFAULT_UNITS / 10;

/**
 * CUT.PLAN and CUT.LIST of one workbook ask for the same plan. The same input always has the same plan, so that keeping
 * the last few changes nothing but time.
 */
const kept = new Map<string, SheetPlan[]>();
const MOST_KEPT = 4;

export function planSheets(
  blanks: readonly BlankToCut[],
  stock: readonly StockSheet[],
  limits: CutLimits,
  effort: number,
): SheetPlan[] {
  const key = JSON.stringify([blanks, stock, limits, effort]);
  const found = kept.get(key) ?? planAll(blanks, stock, limits, effort);
  kept.delete(key);
  kept.set(key, found);
  for (const oldest of kept.keys()) {
    if (kept.size <= MOST_KEPT) break;
    kept.delete(oldest);
  }
  return found;
}

function planAll(
  blanks: readonly BlankToCut[],
  stock: readonly StockSheet[],
  { limits, trim }: CutLimits,
  effort: number,
): SheetPlan[] {
  const groups = new Map<string, BlankToCut[]>();
  for (const blank of blanks) {
    const sheet = `${blank.material.name}\n${blank.thickness}`;
    groups.set(sheet, [...(groups.get(sheet) ?? []), blank]);
  }
  return [...groups.values()].map((group): SheetPlan => {
    const { material, thickness } = group[0]!;
    try {
      const sheets = sheetsFor(material, thickness, stock);
      const plan = planCuts(group.map(asBlank), sheets.map(asStock(trim)), limits, {
        units: effort * UNITS_PER_EFFORT,
        least: "money",
      });
      return { material, thickness, sheets, plan };
    } catch (problem) {
      if (problem instanceof Refusal) return { material, thickness, sheets: [], plan: problem };
      throw problem;
    }
  });
}

const asBlank = ({ part, length, width, quantity, grain }: BlankToCut): Blank => ({
  id: part,
  w: length,
  h: width,
  quantity,
  grain,
});

/** Names of the table may repeat; the planner wants them distinct, and the row number is what it is told apart by. */
export const stockId = (sheet: StockSheet, index: number): string => `${index + 1} ${sheet.name}`;

const asStock =
  (trim: Millimetres) =>
  (sheet: StockSheet, index: number): Stock => ({
    id: stockId(sheet, index),
    w: sheet.length,
    h: sheet.width,
    quantity: sheet.count ?? Number.POSITIVE_INFINITY,
    price: sheet.price,
    grain: "w",
    trim,
    remnant: sheet.isRemnant,
  });
