/** From blanks, stock and limits as a shop states them to the whole-number problem of the search. */
import { type Millimeters, mm } from "../../units/quantity.ts";
import type { GaugeRule } from "./gauge-rule.ts";
import { areaFromGrid, gridDown, gridUp } from "./grid.ts";
import { ALONG_X, ALONG_Y, type Direction, type Problem, type SheetKind } from "./problem.ts";
import type { Blank, Limits, PlanOptions, Stock } from "./types.ts";

export function buildProblem(
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
  options: PlanOptions,
): Problem {
  const rule = gaugeRule(limits);
  const money = moneyRate(stock, options);
  return {
    sheets: stock.map((sheet) => sheetKind(sheet, rule, money, limits, options)),
    items: blanks.map(({ w, h, quantity, value }) => ({
      w: gridUp(w),
      h: gridUp(h),
      quantity,
      value: value ?? gridUp(w) * gridUp(h),
    })),
    plain: stock.map((sheet) => Uint8Array.from(blanks, (blank) => (mayLie(blank, sheet, false) ? 1 : 0))),
    turned: stock.map((sheet) => Uint8Array.from(blanks, (blank) => (mayLie(blank, sheet, true) ? 1 : 0))),
    stages: limits.stages,
    rule,
    leastRemnant: gridUp(limits.leastRemnant),
  };
}

/** Price per square millimeter of sheets without a price; null where area is counted. */
export type MoneyRate = number | null;

/**
 * Money counts where some new sheet has a price. An offcut without one is there already: it costs nothing. A new sheet
 * without one is taken as dear as the dearest, so that it is not chosen for being unknown.
 */
export function moneyRate(stock: readonly Stock[], options: PlanOptions): MoneyRate {
  if (options.least !== "money") return null;
  const rates = stock.flatMap(({ price, w, h }) => (price !== null && price > 0 ? [price / (w * h)] : []));
  return rates.length > 0 ? Math.max(...rates) : null;
}

export const gaugeRule = (limits: Limits): GaugeRule => {
  const front = mayMark(limits) ? Infinity : gridDown(mm(limits.frontReach ?? 0));
  const backReach = gridDown(limits.reach);
  return {
    longestCut: gridDown(limits.longestCut),
    reach: Math.max(backReach, front),
    backReach,
    frontReach: front,
    leastDrop: gridUp(Math.max(limits.leastDrop, limits.nearestGauge) as Limits["leastDrop"]),
    leastHold: gridUp(limits.leastHold),
    leastWaste: gridUp(leastTrim(limits)),
    ...twistRule(limits),
  };
};

/** Either limit alone holds whatever the other measure is; without a thickness no width is narrow. */
function twistRule({ twistWidth, twistLength, thickness }: Limits): Pick<GaugeRule, "twistWidth" | "twistLength"> {
  if (twistWidth === undefined && twistLength === undefined) return { twistWidth: 0, twistLength: 0 };
  const width = twistWidth === undefined ? Infinity : gridUp(mm(twistWidth * (thickness ?? 0)));
  return { twistWidth: width, twistLength: twistLength ?? 0 };
}

/** A person can always scribe a line, unless the shop says otherwise (common practice). */
export const mayMark = ({ cutToMark }: Limits): boolean => cutToMark ?? true;

/** Nothing thinner than the sheet is sheared off an edge (common practice). */
export const leastTrim = ({ leastTrim, thickness }: Limits): Millimeters =>
  mm(Math.max(leastTrim ?? 0, thickness ?? 0));

/** Nothing off an edge that was sheared already; else what the stock says, and never under the least. */
export const trimOf = (sheet: Stock, limits: Limits): Millimeters =>
  sheet.edgesSheared || sheet.trim === 0 ? mm(0) : mm(Math.max(sheet.trim, leastTrim(limits)));

/** A turned blank lies with its first size along the sheet's h. */
function mayLie({ grain }: Blank, sheet: Stock, turned: boolean): boolean {
  if (grain === "free") return true;
  const grainAlongW = sheet.grain === "w";
  const firstSizeAlongW = !turned;
  return (grain === "along") === (firstSizeAlongW === grainAlongW);
}

/** Money, or the area of the whole sheet in square millimeters. */
export function costOf(sheet: Stock, money: MoneyRate): number {
  if (money === null) return areaFromGrid(gridDown(sheet.w) * gridDown(sheet.h));
  return sheet.price ?? (sheet.remnant ? 0 : money * sheet.w * sheet.h);
}

/** What the search counts: an offcut that costs nothing still counts a little, so that it is not used for nothing. */
const searchCost = (sheet: Stock, money: MoneyRate): number =>
  Math.max(costOf(sheet, money), (money ?? 0) * LEAST_SHARE * sheet.w * sheet.h);
const LEAST_SHARE = 1e-3;

function sheetKind(stock: Stock, rule: GaugeRule, money: MoneyRate, limits: Limits, options: PlanOptions): SheetKind {
  const trim = gridUp(trimOf(stock, limits));
  const w = gridDown(stock.w);
  const h = gridDown(stock.h);
  const usableW = Math.max(0, w - trim);
  const usableH = Math.max(0, h - trim);
  // With its short edge trimmed first a sheet may just go under the blade; a longer one is trimmed part by part.
  const tooLongToTrim = trim > 0 && Math.max(w, h) - trim > rule.longestCut;
  const roots: Direction[] = [];
  // Where both sides are longer than the blade no edge of the sheet can be cut first.
  const weight = stock.w * stock.h * (options.weightPerArea ?? 0);
  if (Math.min(w, h) <= rule.longestCut && weight <= (limits.heaviestLift ?? Infinity)) {
    // Cuts between parts along y run along x, over the whole width of what is on the table; a side still untrimmed is the
    // lesser one, short enough as it is.
    if (usableW <= rule.longestCut) roots.push(ALONG_Y);
    if (options.firstCut !== "along w" && usableH <= rule.longestCut) roots.push(ALONG_X);
  }
  return {
    w: usableW,
    h: usableH,
    available: stock.quantity,
    remnantWorth: stock.remnantWorth ?? limits.remnantWorth,
    cost: options.least === "sheets" ? 1 : searchCost(stock, money),
    roots,
    trimPartLimit: tooLongToTrim ? rule.longestCut : Infinity,
  };
}
