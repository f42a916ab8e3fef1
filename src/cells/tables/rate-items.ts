/** The shop's own figures that belong to no machine, by name: what each is, and what it may be. */
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
const item = (name: string, kind: RateKind, rule: NumberRule = { from: 0 }): RateItem => ({ name, kind, rule });
const SHARE: NumberRule = { from: 0, to: 10 };

export const ITEMS = {
  materialYield: item("Material yield", "share", { from: 0, above: true, to: 1 }),
  scrapAllowance: item("Scrap allowance", "share", { from: 0, to: 1 }),
  firstPieces: item("First-piece blanks", "number", { from: 0, to: 1000, whole: true }),
  firstJobFactor: item("First job factor", "number", { from: 1, to: 100 }),
  handlingPerPiece: item("Handling per piece", "seconds"),
  handlingPerMass: item("Handling by weight", "seconds per mass"),
  handlingPerLength: item("Handling by length", "seconds per length"),
  onePersonLimit: item("One-person limit", "mass", { from: 0, above: true }),
  hoistAbove: item("Hoist above", "mass", { from: 0, above: true }),
  hoistTime: item("Hoist time", "seconds"),
  pileLimit: item("Pile limit", "mass", { from: 0, above: true }),
  secondPerson: item("Second person", "number"),
  liftReach: item("Lift reach", "length"),
  liftHeight: item("Lift height", "length"),
  liftTravel: item("Lift travel", "length"),
  liftTwist: item("Lift twist", "angle", { from: 0, to: 180 }),
  liftsPerMinute: item("Lifts per minute", "number", { from: 0, to: 60 }),
  liftHours: item("Lift hours", "hours", { from: 0, above: true, to: 8 }),
  overhead: item("Overhead", "share", SHARE),
  margin: item("Margin", "share", { from: 0, to: 1, below: true }),
  markup: item("Mark-up", "share", SHARE),
  minimumCharge: item("Minimum charge", "number"),
  rush: item("Rush", "share", SHARE),
  overtimePerDay: item("Overtime per day", "hours", { from: 0, to: 16 }),
  shearedEdge: item("Sheared edge", "length"),
  cutEdge: item("Waterjet edge", "length"),
  deductionSpread: item("Deduction spread", "length"),
  angleSpread: item("Angle spread", "angle", { from: 0, to: 45 }),
} as const satisfies Record<string, RateItem>;
export type RateKey = keyof typeof ITEMS;

/** Every item by name, for people who fill in the table. */
export const RATE_ITEMS: readonly RateItem[] = Object.values(ITEMS);
export const COUPLING = "Lift coupling";
