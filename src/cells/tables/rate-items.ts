/** The shop's own figures that belong to no machine, by name: what each is, and what it may be. */
import { RATE_NAMES, type RateKey } from "../../bill/nouns/rates.ts";
import { inInternal, kindOf } from "../../calc/limit-of.ts";
import { THRESHOLDS } from "../../data/threshold-rows.ts";
import type { QuantityKind } from "../../units/system.ts";
import type { NumberRule } from "../parameters/number.ts";

export type RateKind =
  | "share"
  | "number"
  | "seconds"
  | "seconds per mass"
  | "seconds per length"
  | "hours"
  | QuantityKind;
export interface RateItem {
  readonly name: string;
  readonly kind: RateKind;
  readonly rule: NumberRule;
}
const item = (kind: RateKind, rule: NumberRule = { from: 0 }) => ({ kind, rule });
const SHARE: NumberRule = { from: 0, to: 10 };

const ITEMS: Readonly<Record<RateKey, Omit<RateItem, "name">>> = {
  materialYield: item("share", { from: 0, above: true, to: 1 }),
  scrapAllowance: item("share", { from: 0, to: 1 }),
  firstPieces: item("number", { from: 0, to: 1000, whole: true }),
  firstJobFactor: item("number", { from: 1, to: 100 }),
  brakeLineSetUp: item("seconds"),
  handlingPerPiece: item("seconds"),
  handlingPerMass: item("seconds per mass"),
  handlingPerLength: item("seconds per length"),
  onePersonLimit: item("mass", { from: 0, above: true }),
  hoistAbove: item("mass", { from: 0, above: true }),
  hoistTime: item("seconds"),
  hoistLimit: item("mass", { from: 0, above: true }),
  pileLimit: item("mass", { from: 0, above: true }),
  secondPerson: item("number"),
  liftReach: item("length"),
  liftHeight: item("length"),
  liftTravel: item("length"),
  liftTwist: item("angle", { from: 0, to: 180 }),
  liftEndReach: item("length"),
  liftEndHeight: item("length"),
  liftEndTwist: item("angle", { from: 0, to: 180 }),
  liftsPerMinute: item("number", { from: 0, to: 60 }),
  liftHours: item("hours", { from: 0, above: true, to: 8 }),
  overhead: item("share", SHARE),
  margin: item("share", { from: 0, to: 1, below: true }),
  markup: item("share", SHARE),
  minimumCharge: item("number"),
  rush: item("share", SHARE),
  overtimePerDay: item("hours", { from: 0, to: 16 }),
  shearedEdge: item("length"),
  cutEdge: item("length"),
  deductionSpread: item("length"),
  angleSpread: item("angle", { from: 0, to: 45 }),
  cutEffort: item("number", { from: 0, above: true, to: 100 }),
  gaugeSetting: item("seconds"),
  shearStroke: item("seconds"),
  shearTurn: item("seconds"),
  scribeLine: item("seconds"),
  jetWeb: item("length"),
  allowance: item("number", { from: 1, to: 5 }),
  setUpPerBend: item("seconds"),
  setUpPerLength: item("seconds per length"),
  nextBends: item("share", { from: 0, to: 1 }),
  shearHandling: item("seconds"),
  shearHandlingPerLength: item("seconds per length"),
  sheetLoading: item("seconds"),
  bladeGapSetting: item("seconds"),
  leastRemnant: item("length", { from: 0, above: true }),
  wholeSheets: item("number", { from: 0, to: 1, whole: true }), // 1: yes
  materialMarkUp: item("share", SHARE),
  outsideMarkUp: item("share", SHARE),
  lineMinimum: item("number"),
  engineering: item("number"),
  firstArticle: item("number"),
  certificate: item("number"),
  crate: item("number"),
  truck: item("number"),
  tax: item("share", SHARE),
  secondShift: item("hours", { from: 0, above: true, to: 16 }),
  overtimePremium: item("share", SHARE),
  transferLot: item("number", { from: 1, to: 1_000_000, whole: true }),
};

/** Every item by name, for people who fill in the table. */
export const RATE_ITEMS: readonly RateItem[] = (Object.keys(ITEMS) as RateKey[]).map((key) => ({
  name: RATE_NAMES[key],
  ...ITEMS[key],
}));

/** Thresholds of findings, by name; a share may be written as one, or in percent. */
export const THRESHOLD_ITEMS: readonly RateItem[] = THRESHOLDS.map((threshold) => ({
  name: threshold.row,
  kind: kindOf(threshold) ?? (threshold.to <= 1 ? "share" : "number"),
  rule: { from: inInternal(threshold, threshold.from), to: inInternal(threshold, threshold.to) },
}));
