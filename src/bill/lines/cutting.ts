/** Which machines can cut a line's blank, and if not, why not. */
import { impossibleReasons } from "../../calc/cutting/impossible.ts";
import type { BlankGrain, Blank as BlankToCut, Stock } from "../../calc/cutting/types.ts";
import { type Finding, rankOf, statusOf } from "../../calc/finding.ts";
import { cuttingFeed, timedFeed } from "../../calc/jet/cutting-feed.ts";
import { liesOnSheet } from "../../calc/jet/lies-on-sheet.ts";
import type { OwnThresholds } from "../../calc/limit-of.ts";
import { checkShear, type ShearedBlank } from "../../calc/shear/check.ts";
import { THIN_MM } from "../../data/jet-rules.ts";
import { JET_WEB_IN } from "../../data/thresholds.ts";
import { firstOf } from "../../units/certain.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr, remember } from "../../units/remember.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { findMachine } from "../nouns/find-tool.ts";
import type { BillLine, Cutter } from "../nouns/line.ts";
import type { Shear, Waterjet } from "../nouns/machines.ts";
import type { Rates } from "../nouns/rates.ts";
import type { Shop } from "../nouns/shop.ts";
import { hasTable } from "../nouns/shop.ts";
import type { StockSheet } from "../nouns/stock.ts";
import type { Blank } from "./blank.ts";

export interface Cutting {
  /** The shear that would cut it; undefined: none can. */
  readonly shear: Shear | undefined;
  /** What is found about cutting it there. */
  readonly onShear: readonly Finding[];
  readonly waterjet: Waterjet | undefined;
  readonly onWaterjet: readonly Finding[];
  /** Why no machine can, or not the one it is pinned to, or only the waterjet. */
  readonly found: readonly Finding[];
}

/** The machine that a line was found to be cut on. */
export function machineFor<C extends Cutter>(cutting: Cutting, cutter: C): NonNullable<Cutting[C]> {
  const machine = cutting[cutter];
  if (machine === undefined) throw new Error(`no ${cutter} cuts it`);
  return machine;
}

type CutShop = Pick<Shop, "shears" | "waterjets" | "stations" | "rates" | "given">;

export function cuttingOf(
  line: BillLine,
  blank: Blank,
  sheets: readonly StockSheet[] | undefined,
  shop: CutShop,
): Cutting {
  const sheared = shearFor(line, blank, sheets, shop);
  const jet = jetFor(line, blank, sheets, shop);
  const shear = line.pin === "waterjet" ? undefined : sheared.shear;
  const waterjet = line.pin === "shear" ? undefined : jet.waterjet;
  const found: Finding[] = [];
  if (!hasTable(shop, "shears") && !hasTable(shop, "waterjets"))
    return { shear, onShear: [], waterjet, onWaterjet: [], found };
  if (shear === undefined && waterjet === undefined)
    found.push(
      line.material.cutOnly && jet.why !== "" && line.pin !== "shear"
        ? { about: "cutting", status: "stop", kind: "waterjet only", words: jet.why, name: line.material.name }
        : line.pin === "waterjet"
          ? { about: "cutting", status: "stop", kind: "not on waterjet", words: jet.why }
          : line.pin === "shear" || !hasTable(shop, "waterjets")
            ? asStop(sheared.why)
            : { about: "cutting", status: "stop", kind: "no machine", words: jet.why, name: nameOf(sheared.why) },
    );
  else if (shear === undefined && line.pin === undefined && sheared.why)
    found.push({ ...sheared.why, status: "note", kind: `waterjet: ${sheared.why.kind}` });
  const onShear = shear === undefined ? [] : sheared.findings;
  return { shear, onShear, waterjet, onWaterjet: thinOnJet(line, waterjet), found };
}

/**
 * In thin sheet the formula is faster than anything published, whatever factor the machine has in plate; only a cut
 * timed there holds.
 */
function thinOnJet({ material, thickness }: BillLine, jet: Waterjet | undefined): Finding[] {
  if (jet === undefined || atLeast(thickness, THIN_MM.value)) return [];
  if (timedFeed(material, { ...jet.cut, thickness }) !== undefined) return [];
  return [{ about: "cutting", status: "note", kind: "thin on waterjet", figure: thickness, quantity: "length" }];
}

const asStop = (why: Finding | undefined): Finding => why ?? { about: "cutting", status: "stop", kind: "no shear" };
const nameOf = (why: Finding | undefined): string =>
  (why?.kind === "over rating" || why?.kind === "too long" ? why.name : undefined) ?? "the shear";

interface Sheared {
  readonly shear: Shear | undefined;
  readonly findings: readonly Finding[];
  readonly why: Finding | undefined;
}

/** Of several shears the one with the best status, then the lowest rating, then by name. */
function shearFor(line: BillLine, blank: Blank, sheets: readonly StockSheet[] | undefined, shop: CutShop): Sheared {
  const never = (why: Finding): Sheared => ({ shear: undefined, findings: [], why });
  if (shop.shears.length === 0) return never({ about: "cutting", status: "stop", kind: "no shear" });
  if (line.material.cutOnly)
    return never({ about: "cutting", status: "stop", kind: "not sheared", words: line.material.name });
  const needs = unmadeOnShear(line, shop);
  if (needs) return never(needs);
  const shears = line.shear === undefined ? shop.shears : [findMachine(line.shear, shop.shears, "shear")];
  const tried = shears
    .map((shear) => ({ shear, findings: shearFindings(line, blank, sheets ?? [], shear, shop.rates.own) }))
    .sort(
      (a, b) =>
        rankOf(worst(a.findings)) - rankOf(worst(b.findings)) ||
        // Where none can the largest says by how little it fails.
        (rankOf(worst(a.findings)) < rankOf("stop") ? 1 : -1) * (a.shear.ratedThickness - b.shear.ratedThickness) ||
        (a.shear.name < b.shear.name ? -1 : 1),
    );
  const { shear, findings } = firstOf(tried);
  const stop = findings.find(({ status }) => status === "stop");
  return stop ? never(stop) : { shear, findings, why: undefined };
}

const worst = (findings: readonly Finding[]): Finding["status"] => {
  const status = statusOf(findings);
  return status === "clear" ? "note" : status;
};

function shearFindings(
  { material, thickness }: BillLine,
  blank: Blank,
  sheets: readonly StockSheet[],
  shear: Shear,
  own: OwnThresholds,
): Finding[] {
  const { length, width, grain } = blank;
  const found = checkShear(shearedBlank({ material, thickness }, blank), shear, own);
  const [sheet] = sheets;
  if (sheet === undefined || statusOf(found) === "stop") return found;
  const reason = layoutReason(length, width, grain, sheets, shear);
  return reason === null
    ? found
    : [...found, { about: "cutting", status: "stop", kind: "no layout", words: reason, name: shear.name }];
}

export const shearedBlank = (
  { material, thickness }: Pick<BillLine, "material" | "thickness">,
  { length, width }: Pick<Blank, "length" | "width">,
): ShearedBlank => ({
  material,
  thickness,
  cutLength: mm(Math.max(length, width)),
  stripWidth: mm(Math.min(length, width)),
});

/** Holes and notches that only the waterjet makes. */
function unmadeOnShear(line: BillLine, shop: CutShop): Finding | undefined {
  if (!hasTable(shop, "stations")) return undefined;
  const lacks = (basis: "hole" | "notch") => !shop.stations.some((station) => station.basis === basis);
  const what = line.notches > 0 && lacks("notch") ? "notches" : line.holes > 0 && lacks("hole") ? "holes" : undefined;
  return what === undefined ? undefined : { about: "cutting", status: "stop", kind: "no station", words: what };
}

function jetFor(
  { material, thickness }: BillLine,
  { length, width, grain }: Blank,
  sheets: readonly StockSheet[] | undefined,
  { waterjets, rates }: CutShop,
): { readonly waterjet: Waterjet | undefined; readonly why: string } {
  const [long, short] = [Math.max(length, width), Math.min(length, width)];
  const ranked = [...waterjets].sort((a, b) => (a.name < b.name ? -1 : 1));
  const [first] = ranked;
  if (first === undefined) return { waterjet: undefined, why: "there is no waterjet" };
  // A material nobody has timed has no speed and no price on any waterjet.
  if (refusalOr(() => cuttingFeed(material, { ...first.cut, thickness }, undefined)) instanceof Refusal)
    return { waterjet: undefined, why: "no cut of this thickness is timed" };
  const waterjet = ranked.find(({ bedLength, bedWidth }) => {
    const bed = [bedLength ?? Infinity, bedWidth ?? Infinity];
    return atMost(long, Math.max(...bed)) && atMost(short, Math.min(...bed));
  });
  if (!waterjet) return { waterjet, why: `it does not fit on ${first.name}` };
  const blank = { length, width, grain: rollingOf(grain) };
  const lies =
    sheets === undefined || sheets.length === 0 || sheets.some((sheet) => liesOnSheet(blank, sheet, webOf(rates)));
  return lies ? { waterjet, why: "" } : { waterjet: undefined, why: "no sheet in Stock has room for it and its web" };
}

/** Metal between two blanks on the waterjet's table, and along a sheet's edge. */
export const webOf = (rates: Rates): Millimeters => mm(rates.find("jetWeb") ?? JET_WEB_IN.value * MM_PER_INCH);

/** Sheets as the cut plan takes them. Names of the table may repeat; the planner needs them distinct. */
export const asStock =
  (trim: Millimeters) =>
  (sheet: StockSheet, index: number): Stock => ({
    id: stockId(sheet, index),
    w: sheet.length,
    h: sheet.width,
    quantity: sheet.count ?? Number.POSITIVE_INFINITY,
    price: sheet.price ?? null,
    grain: sheet.grain === "long" ? "w" : "h",
    trim,
    remnant: sheet.isRemnant,
    edgesSheared: sheet.edgesSheared,
    remnantWorth: sheet.remnantWorth,
    ...(sheet.pinned ? { pinned: sheet.pinned } : {}),
  });
export const stockId = ({ name }: StockSheet, index: number): string => `${index + 1} ${name}`;

export const asBlank = (
  id: string,
  { length, width, grain }: Pick<Blank, "length" | "width" | "grain">,
  quantity: number,
): BlankToCut => ({
  id,
  w: length,
  h: width,
  quantity,
  grain: rollingOf(grain),
});

/** The way the grain runs in a blank, as the cut plans call it: along its first size, across it, or any way. */
export const rollingOf = (grain: Blank["grain"]): BlankGrain =>
  grain === "length" ? "along" : grain === "width" ? "across" : "free";

/** Why no layout of these sheets gives the blank within the shear's limits; null where one does. */
const layoutReason = remember(
  8192,
  (length: Millimeters, width: Millimeters, grain: Blank["grain"], sheets: readonly StockSheet[], shear: Shear) =>
    firstOf(
      impossibleReasons(
        [asBlank("it", { length, width, grain }, 1)],
        sheets.map(asStock(shear.trim)),
        { ...shear.limits, thickness: firstOf(sheets).thickness },
        {},
      ),
    ),
);
