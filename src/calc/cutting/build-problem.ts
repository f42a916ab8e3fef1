/** From blanks, stock and limits as a shop states them to the whole-number problem of the search. */
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
  const money = countsMoney(stock, options);
  return {
    sheets: stock.map((sheet) => sheetKind(sheet, rule, money, options)),
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
    remnantWorth: limits.remnantWorth,
  };
}

export const countsMoney = (stock: readonly Stock[], options: PlanOptions): boolean =>
  options.least === "money" && stock.every(({ price }) => price !== null && price > 0);

export const gaugeRule = (limits: Limits): GaugeRule => ({
  longestCut: gridDown(limits.longestCut),
  reach: gridDown(limits.reach),
  leastDrop: gridUp(Math.max(limits.leastDrop, limits.nearestGauge) as Limits["leastDrop"]),
  leastHold: gridUp(limits.leastHold),
});

/** A turned blank lies with its first size along the sheet's h. */
function mayLie({ grain }: Blank, sheet: Stock, turned: boolean): boolean {
  if (grain === "free") return true;
  const grainAlongW = sheet.grain === "w";
  const firstSizeAlongW = !turned;
  return (grain === "along") === (firstSizeAlongW === grainAlongW);
}

/** Money, or the area of the whole sheet in square millimetres. */
export const costOf = (sheet: Stock, money: boolean): number =>
  money && sheet.price !== null ? sheet.price : areaFromGrid(gridDown(sheet.w) * gridDown(sheet.h));

function sheetKind(stock: Stock, rule: GaugeRule, money: boolean, options: PlanOptions): SheetKind {
  const trim = gridUp(stock.trim);
  const w = gridDown(stock.w);
  const h = gridDown(stock.h);
  const usableW = Math.max(0, w - trim);
  const usableH = Math.max(0, h - trim);
  // With its short edge trimmed first a sheet may just go under the blade; a longer one is trimmed part by part.
  const tooLongToTrim = trim > 0 && Math.max(w, h) - trim > rule.longestCut;
  const roots: Direction[] = [];
  // Where both sides are longer than the blade no edge of the sheet can be cut first.
  if (Math.min(w, h) <= rule.longestCut) {
    // Cuts between parts along y run along x, over the whole width of what is on the table; a side still untrimmed is the
    // lesser one, short enough as it is.
    if (usableW <= rule.longestCut) roots.push(ALONG_Y);
    if (options.firstCut !== "along w" && usableH <= rule.longestCut) roots.push(ALONG_X);
  }
  return {
    w: usableW,
    h: usableH,
    available: stock.quantity,
    cost: costOf(stock, money),
    roots,
    trimPartLimit: tooLongToTrim ? rule.longestCut : Infinity,
  };
}
