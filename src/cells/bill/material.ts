/** What the material of a line costs: its share of a cut plan, else its area in the sheet it is cut from. */
import { knownOrNot } from "../../calc/bend/air-estimate.ts";
import { materialByArea } from "../../calc/cost/material-cost.ts";
import { atMost } from "../../units/nearly.ts";
import { type Millimetres, type Money, money } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { show } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import type { BillLine } from "../tables/bill.ts";
import type { Rates } from "../tables/rates.ts";
import { type StockSheet, sheetsFor } from "../tables/stock.ts";
import { blankOf } from "./blank.ts";
import { type PlanRow, plannedBlanks, planPrice, sheetKey } from "./plan-range.ts";
import { isAnswered, type Outcome } from "./rows.ts";
import type { PlannedLine } from "./work.ts";

export interface MaterialFrom {
  readonly stock: readonly StockSheet[];
  /** What CUT.PLAN spills; empty: material by area at the stated yield. */
  readonly plan: readonly PlanRow[];
}

const areaOf = ({ blank, blanks }: PlannedLine): number => blank.length * blank.width * blanks;
const keyOf = ({ line }: PlannedLine): string => sheetKey(line.material.name, line.nominal);

/** A line that the plan leaves out, in part or whole, has no share of the sheets it names. */
const isPlanned = ({ line, blanks }: PlannedLine, cutPlan: readonly PlanRow[]): boolean =>
  (plannedBlanks(cutPlan, line.part) ?? blanks) >= blanks;

/** Area of all planned blanks by material and thickness: a plan's price is shared out by it. */
export function planAreas(
  planned: readonly Outcome<{ plan: PlannedLine }>[],
  cutPlan: readonly PlanRow[],
): Map<string, number> {
  const areas = new Map<string, number>();
  for (const { answer } of planned.filter(isAnswered))
    if (isPlanned(answer.plan, cutPlan))
      areas.set(keyOf(answer.plan), (areas.get(keyOf(answer.plan)) ?? 0) + areaOf(answer.plan));
  return areas;
}

export function materialCost(
  plan: PlannedLine,
  { stock, plan: cutPlan }: MaterialFrom,
  rates: Rates,
  areas: ReadonlyMap<string, number>,
  system: UnitSystem,
  work?: Working,
): Money {
  const { line, blank, blanks } = plan;
  if (cutPlan.length > 0) {
    if (!isPlanned(plan, cutPlan))
      throw noAnswer(
        "plan",
        `one that cuts all ${blanks} blanks of ${line.part}`,
        `${plannedBlanks(cutPlan, line.part)}`,
        "the last column of CUT.PLAN says why blanks are left out",
      );
    const share = areaOf(plan) / areas.get(keyOf(plan))!;
    const price = money(planPrice(cutPlan, line.material, line.nominal) * share);
    return step(work, "material", "share of the cut plan by area", price, "money", "price of its sheets x area share");
  }
  const sheet = sheetToCutFrom(line, blank, stock);
  const sheetArea = sheet.length * sheet.width;
  const area = areaFrom(sheet, plan, system);
  return materialByArea(blanks, area, sheet.price, sheetArea, rates.get("materialYield"), work);
}

/**
 * Area of one blank in the sheet it is cut from. Where the line's own figure differs (measured, or between two sheets),
 * the sheet's thickness rules: it is what is bought, and a line that is a little thicker is not cheaper for it.
 */
function areaFrom(sheet: StockSheet, { line, chosen, blank }: PlannedLine, system: UnitSystem): number {
  if (sheet.thickness === line.thickness) return blank.length * blank.width;
  const cut = knownOrNot(() => blankOf({ ...line, thickness: sheet.thickness }, chosen, system)) ?? blank;
  return cut.length * cut.width;
}

/** The cheapest sheet by area that the blank fits on, turned or not. */
export function sheetToCutFrom(
  line: BillLine,
  blank: { readonly length: Millimetres; readonly width: Millimetres },
  stock: readonly StockSheet[],
): StockSheet {
  const [long, short] = [Math.max(blank.length, blank.width), Math.min(blank.length, blank.width)];
  const fitting = sheetsFor(line.material, line.nominal, stock).filter(
    (sheet) => atMost(long, sheet.length) && atMost(short, sheet.width),
  );
  if (fitting.length === 0)
    throw noAnswer(
      "stock",
      "a table with a sheet that the blank fits on",
      `a blank of ${show(long, "length", "in")} x ${show(short, "length", "in")} (${show(long, "length", "mm")} x ${show(short, "length", "mm")})`,
    );
  const perArea = ({ price, length, width }: StockSheet) => price / (length * width);
  return fitting.reduce((a, b) => (perArea(b) < perArea(a) ? b : a));
}
