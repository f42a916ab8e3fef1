/** The third stage: the sheets of every material and thickness, for the shear and for the waterjet, each its own. */

import { impossibleReasons } from "../../calc/cutting/impossible.ts";
import { type JetSheet, planJetSheets } from "../../calc/cutting/jet-sheets.ts";
import { patternIdOf } from "../../calc/cutting/pattern-id.ts";
import { DEFAULT_UNITS, planCuts } from "../../calc/cutting/plan-cuts.ts";
import type {
  Blank as BlankToCut,
  LeftOut,
  Limits,
  PinnedNode,
  Plan,
  PlanOptions,
  Stock,
} from "../../calc/cutting/types.ts";
import { liesOnSheet } from "../../calc/jet/lies-on-sheet.ts";
import type { Material } from "../../data/materials/material.ts";
import { entryOf, firstOf, itemAt, missing } from "../../units/certain.ts";
import { type Kilograms, kilograms, type Millimeters, type Money, mm, money } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr, remember } from "../../units/remember.ts";
import { cutKey } from "../lines/cut-key.ts";
import { asBlank, asStock, rollingOf, stockId, webOf } from "../lines/cutting.ts";
import { lineKey } from "../lines/line-key.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import type { Cutter } from "../nouns/line.ts";
import type { Shear } from "../nouns/machines.ts";
import type { StockSheet } from "../nouns/stock.ts";
import { asCut } from "./as-cut.ts";
import { BETWEEN_EQUALS, type CutAim, type CutShop, cutAim } from "./cut-aim.ts";
import { jetRemnants } from "./jet-remnants.ts";

/** Sheets of one size that a group pulls, and what comes of them. */
export interface SheetUse {
  readonly sheet: StockSheet;
  readonly count: number;
  readonly weight: Kilograms;
  /** Of all of them; undefined where Stock has no price. */
  readonly price: Money | undefined;
  /** Blanks over all of them, by line. */
  readonly pieces: ReadonlyMap<LinePlan, number>;
  readonly remnants: readonly { readonly length: Millimeters; readonly width: Millimeters }[];
}

/** Lines of one material and thickness that one machine cuts. */
export interface CutGroup {
  readonly material: Material;
  readonly thickness: Millimeters;
  readonly cutter: Cutter;
  /** undefined on the waterjet. */
  readonly shear: Shear | undefined;
  readonly lines: readonly LinePlan[];
  readonly uses: readonly SheetUse[];
  /** The shear's patterns and cuts; undefined on the waterjet, and where no plan can be made. */
  readonly plan: Plan | undefined;
  /** The waterjet's sheets, one entry a layout; none on the shear. */
  readonly jet: readonly JetSheet[];
  /** Which line a blank of the plan belongs to, and which sheet a stock of it is. */
  readonly lineOf: ReadonlyMap<string, LinePlan>;
  readonly sheetOf: ReadonlyMap<string, StockSheet>;
  /** Blanks that no sheet is left for, or that no plan takes. */
  readonly short: ReadonlyMap<LinePlan, { readonly count: number; readonly reason: string | undefined }>;
}

export interface CutLine {
  readonly plan: LinePlan;
  readonly cutter: Cutter;
}

const DEFAULT_EFFORT = 1; // a row of the rates table asks for more; the same on every machine
const UNITS_PER_EFFORT = DEFAULT_UNITS / 10; // effort 10 is what the planner takes for about a second

/** Lines of which Stock has sheets; the others need none. */
export function planCutting(lines: readonly CutLine[], shop: CutShop): CutGroup[] {
  const groups = new Map<string, CutLine[]>();
  for (const line of [...lines].sort((a, b) => (lineKey(a.plan.line) < lineKey(b.plan.line) ? -1 : 1))) {
    const key = cutKey(line.plan, line.cutter);
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  // Sheets that are counted are used up by one group after another: the shear's first, then the waterjet's. They are told
  // by material, thickness and place, since a plan out of memory holds rows of a table that was read before.
  const used = new Map<string, number>();
  return [...groups]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, group]) => {
      const found = firstOf(group).cutter === "shear" ? onShear(group, shop, used) : onWaterjet(group, shop, used);
      const { sheets } = firstOf(group).plan;
      for (const { sheet, count } of found.uses) {
        const key = sheetKey(sheet, (sheets ?? missing()).indexOf(sheet));
        used.set(key, (used.get(key) ?? 0) + count);
      }
      return found;
    });
}

/**
 * Lines whose sheets may run out. Where every line of a material and thickness could be cut alone from sheets that are
 * not counted, none can run out however the cuts are planned, so no plan is needed for a status.
 */
export function scarce(lines: readonly CutLine[], shop: CutShop): CutLine[] {
  const groups = new Map<string, CutLine[]>();
  for (const line of lines) {
    const { material } = line.plan.line;
    const key = `${material.name} ${Math.round(line.plan.sheetThickness * 1000)}`;
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  const isCounted = ({ count }: StockSheet) => count !== undefined;
  return [...groups.values()]
    .filter((group) => firstOf(group).plan.sheets?.some(isCounted) && !group.every((line) => hasEndless(line, shop)))
    .flat();
}

function hasEndless({ plan, cutter }: CutLine, shop: CutShop): boolean {
  const { sheets = [], blank, cutting } = plan;
  const endless = sheets.filter(({ count }) => count === undefined);
  const [sheet] = endless;
  // A pinned sheet may ask for more of a part than is wanted; only the plan finds that.
  if (!sheet || sheets.some(({ pinned }) => pinned !== undefined)) return false;
  if (cutter === "waterjet") {
    const lying = { ...blank, grain: rollingOf(blank.grain) };
    return endless.some((each) => liesOnSheet(lying, each, webOf(shop.rates)));
  }
  const { trim, limits } = cutting.shear ?? missing();
  const stock = endless.map(asStock(trim));
  return alone(
    [asBlank("it", asCut(blank, shop.system), 1)],
    stock,
    { ...limits, thickness: sheet.thickness },
    weightPerArea(sheet),
  );
}
const alone = remember(
  4096,
  (blanks: readonly BlankToCut[], stock: readonly Stock[], limits: Limits, weight: number): boolean =>
    impossibleReasons(blanks, stock, limits, { weightPerArea: weight })[0] === null,
);
const weightPerArea = ({ weight, length, width }: StockSheet): number => weight / (length * width);

/** What is left of the group's sheets, in their own order. */
function leftOf(sheets: readonly StockSheet[], used: ReadonlyMap<string, number>): StockSheet[] {
  return sheets.map((sheet, i) =>
    sheet.count === undefined
      ? sheet
      : { ...sheet, count: Math.max(0, sheet.count - (used.get(sheetKey(sheet, i)) ?? 0)) },
  );
}

const sheetKey = ({ material, thickness }: StockSheet, index: number): string =>
  `${material.name} ${thickness} ${index}`;

/** Money counts where every new sheet has a price; else sheets count by area, and minutes only between equals. */
function searchOf(stock: readonly Stock[], { isSheets, perMinute, pace }: CutAim, units: number): PlanOptions {
  const isMoney = stock.every(({ price, remnant }) => price !== null || remnant);
  return {
    units,
    least: isSheets ? "sheets" : isMoney ? "money" : "metal",
    perMinute: isMoney || perMinute === Infinity ? perMinute : Math.min(perMinute, BETWEEN_EQUALS),
    ...(pace ? { pace } : {}),
  };
}
/** The same blanks from the same sheets have the same plan: after an edit the other groups keep theirs. */
const cutsKnown = remember(
  64,
  (blanks: readonly BlankToCut[], stock: readonly Stock[], limits: Limits, options: PlanOptions) =>
    planCuts(blanks, stock, limits, options),
);
const jetKnown = remember(
  64,
  (blanks: readonly BlankToCut[], stock: readonly Stock[], web: Millimeters, options: PlanOptions) =>
    planJetSheets(blanks, stock, { web, margin: web }, options),
);

/** What both machines are asked: the blanks under names of their own, the sheets that are left, and how long to search. */
function asked(group: readonly CutLine[], trim: Millimeters, shop: CutShop, used: ReadonlyMap<string, number>) {
  const lines = group.map(({ plan }) => plan);
  const own = firstOf(lines).sheets ?? missing();
  const ids = namesOf(lines);
  const stock = leftOf(own, used)
    .map(asStock(trim))
    .map(pinnedFor(firstOf(group).cutter === "shear" ? ids : []));
  return {
    blanks: lines.map((plan, i): BlankToCut => {
      const { due } = plan.line;
      return {
        ...asBlank(itemAt(ids, i), asCut(plan.blank, shop.system), plan.blanks),
        ...(due === undefined ? {} : { due }),
      };
    }),
    stock,
    options: searchOf(stock, cutAim(shop), (shop.rates.find("cutEffort") ?? DEFAULT_EFFORT) * UNITS_PER_EFFORT),
    about: {
      material: firstOf(lines).line.material,
      thickness: firstOf(own).thickness,
      lines,
      lineOf: new Map(ids.map((id, i) => [id, itemAt(lines, i)])),
      sheetOf: new Map(own.map((sheet, i) => [stockId(sheet, i), sheet])),
    },
  };
}

/** A pinned sheet is for the shear and for the lines of its parts; all others must leave it uncut. */
const pinnedFor = (ids: readonly string[]) => (sheet: Stock) => {
  const isOwn = (node: PinnedNode): boolean => ("blank" in node ? ids.includes(node.blank) : node.parts.some(isOwn));
  const { pinned, ...rest } = sheet;
  return pinned === undefined || isOwn(pinned) ? sheet : { ...rest, quantity: 0 };
};

function onShear(group: readonly CutLine[], shop: CutShop, used: ReadonlyMap<string, number>): CutGroup {
  const shear = firstOf(group).plan.cutting.shear ?? missing();
  const { blanks, stock, options, about } = asked(group, shear.trim, shop, used);
  const sheet = firstOf(firstOf(group).plan.sheets ?? missing());
  const limits = { ...shear.limits, thickness: sheet.thickness };
  const plan = refusalOr(() => cutsKnown(blanks, stock, limits, { ...options, weightPerArea: weightPerArea(sheet) }));
  if (plan instanceof Refusal) return { ...about, ...noneOf(about.lines, plan), cutter: "shear", shear };
  const uses = plan.sheets.map(({ stock: id, count }): SheetUse => {
    const patterns = plan.patterns.filter((pattern) => pattern.stock === id);
    const pieces = patterns.flatMap(({ yields, repeats }) =>
      yields.map(({ blank, count: each }) => [blank, each * repeats] as const),
    );
    const names = new Set(patterns.map((pattern) => pattern.id));
    const remnants = plan.remnants
      .filter(({ piece }) => names.has(patternIdOf(piece)))
      .flatMap(({ w, h, count: copies }) => Array.from({ length: copies }, () => ({ length: w, width: h })));
    return { ...useOf(entryOf(about.sheetOf, id), count), pieces: byLine(pieces, about.lineOf), remnants };
  });
  return { ...about, cutter: "shear", shear, uses, plan, jet: [], short: shortOf(plan.leftOut, about) };
}

function onWaterjet(group: readonly CutLine[], shop: CutShop, used: ReadonlyMap<string, number>): CutGroup {
  const { blanks, stock, options, about } = asked(group, mm(0), shop, used);
  const plan = refusalOr(() => jetKnown(blanks, stock, webOf(shop.rates), options));
  const cutter = "waterjet";
  if (plan instanceof Refusal) return { ...about, ...noneOf(about.lines, plan), cutter, shear: undefined };
  const uses = stock.flatMap(({ id }): SheetUse[] => {
    const sheets = plan.sheets.filter(({ stock: from }) => from === id);
    const count = sheets.reduce((sum, { repeats }) => sum + repeats, 0);
    const pieces = sheets.flatMap(({ placed, repeats }) => placed.map(({ blank }) => [blank, repeats] as const));
    const remnants = sheets.flatMap((sheet) => jetRemnants(sheet, shop.rates));
    const use = useOf(entryOf(about.sheetOf, id), count);
    return count === 0 ? [] : [{ ...use, pieces: byLine(pieces, about.lineOf), remnants }];
  });
  const short = shortOf(plan.leftOut, about);
  return { ...about, cutter, shear: undefined, uses, plan: undefined, jet: plan.sheets, short };
}

/** Nothing of it is cut, for one reason. */
const noneOf = (lines: readonly LinePlan[], { message }: Refusal) => ({
  uses: [],
  plan: undefined,
  jet: [],
  short: new Map(lines.map((line) => [line, { count: line.blanks, reason: message }])),
});

/** Each blank could be cut alone: where sheets are counted it is left out because they ran out. */
function shortOf(
  leftOut: readonly LeftOut[],
  { lines, lineOf }: Pick<CutGroup, "lines" | "lineOf">,
): CutGroup["short"] {
  const isCounted = (firstOf(lines).sheets ?? missing()).some((sheet) => sheet.count !== undefined);
  return new Map(
    leftOut.map(({ blank, count, reason }) => [
      entryOf(lineOf, blank),
      { count, reason: isCounted ? undefined : reason },
    ]),
  );
}

function byLine(
  pieces: readonly (readonly [blank: string, count: number])[],
  lineOf: ReadonlyMap<string, LinePlan>,
): Map<LinePlan, number> {
  const sums = new Map<LinePlan, number>();
  for (const [blank, count] of pieces) {
    const line = entryOf(lineOf, blank);
    sums.set(line, (sums.get(line) ?? 0) + count);
  }
  return sums;
}

/** Each line a name of its own: its part, numbered where a part stands in the bill twice. */
function namesOf(lines: readonly LinePlan[]): string[] {
  const seen = new Map<string, number>();
  return lines.map(({ line: { part } }) => {
    const times = (seen.get(part) ?? 0) + 1;
    seen.set(part, times);
    return times === 1 ? part : `${part} (${times})`;
  });
}

const useOf = (sheet: StockSheet, count: number) => ({
  sheet,
  count,
  weight: kilograms(sheet.weight * count),
  price: sheet.price === undefined ? undefined : money(sheet.price * count),
});
