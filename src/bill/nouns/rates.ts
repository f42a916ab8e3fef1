import { type Lift, liftLimit } from "../../calc/handling/lift-limit.ts";
import { placingLimit } from "../../calc/handling/placing-limit.ts";
import { COMMON_PRACTICE, limitOf, type OwnThresholds } from "../../calc/limit-of.ts";
import type { HandlingRules } from "../../calc/time/handling.ts";
import { type Seconds, seconds } from "../../calc/time/seconds.ts";
import type { Coupling } from "../../data/niosh.ts";
import type { Threshold } from "../../data/thresholds.ts";
import { type Degrees, hours, type Kilograms, kilograms, type Millimeters } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";

/** The shop's own figures that belong to no machine, as they are called in its table. */
export const RATE_NAMES = {
  materialYield: "Material yield",
  scrapAllowance: "Scrap allowance",
  firstPieces: "First-piece blanks",
  firstJobFactor: "First job factor",
  brakeLineSetUp: "Brake line set-up",
  handlingPerPiece: "Handling per piece",
  handlingPerMass: "Handling by weight",
  handlingPerLength: "Handling by length",
  onePersonLimit: "One-person limit",
  hoistAbove: "Hoist above",
  hoistTime: "Hoist time",
  hoistLimit: "Hoist limit",
  pileLimit: "Pile limit",
  secondPerson: "Second person",
  liftReach: "Lift reach",
  liftHeight: "Lift height",
  liftTravel: "Lift travel",
  liftTwist: "Lift twist",
  liftEndReach: "Lift end reach",
  liftEndHeight: "Lift end height",
  liftEndTwist: "Lift end twist",
  liftsPerMinute: "Lifts per minute",
  liftHours: "Lift hours",
  overhead: "Overhead",
  margin: "Margin",
  markup: "Mark-up",
  minimumCharge: "Minimum charge",
  rush: "Rush",
  overtimePerDay: "Overtime per day",
  shearedEdge: "Sheared edge",
  cutEdge: "Waterjet edge",
  deductionSpread: "Deduction spread",
  angleSpread: "Angle spread",
  cutEffort: "Cut effort",
  gaugeSetting: "Gauge setting",
  shearStroke: "Shear stroke",
  shearTurn: "Shear turn",
  scribeLine: "Scribe line",
  jetWeb: "Waterjet web",
  allowance: "Allowance",
  setUpPerBend: "Set-up per further bend",
  setUpPerLength: "Set-up by bend length",
  nextBends: "Handling at next bends",
  shearHandling: "Shear handling per cut",
  shearHandlingPerLength: "Shear handling by length",
  sheetLoading: "Sheet loading",
  bladeGapSetting: "Blade gap setting",
  leastRemnant: "Least remnant",
  wholeSheets: "Charge whole sheets",
  materialMarkUp: "Material mark-up",
  outsideMarkUp: "Outside mark-up",
  lineMinimum: "Line minimum",
  engineering: "Engineering per new part",
  firstArticle: "First article",
  certificate: "Certificate",
  crate: "Crate",
  truck: "Truck",
  tax: "Tax",
  secondShift: "Second shift",
  overtimePremium: "Overtime premium",
  transferLot: "Transfer lot",
} as const;
export type RateKey = keyof typeof RATE_NAMES;

/** The rows whose value is a word, as they are called in the table. */
export const RATE_WORDS = { liftCoupling: "Lift coupling", cutFor: "Cut plan" } as const;

/** What the cut plan keeps low: sheets and minutes in money, the number of sheets, or the minutes at the shear. */
export const CUT_FOR = ["money", "fewest sheets", "least time"] as const;
type CutFor = (typeof CUT_FOR)[number];

/** Rows whose value is a word. */
export interface RateWords {
  readonly liftCoupling?: Coupling;
  readonly cutFor?: CutFor;
}

/** Nothing here has a default; a figure that is needed and missing is asked for by name. */
export class Rates {
  constructor(
    private readonly parameter: string,
    /** By the name of the row. */
    private readonly values: ReadonlyMap<string, number>,
    private readonly words: RateWords = {},
    /** Thresholds of findings that the shop has set for itself. */
    readonly own: OwnThresholds = COMMON_PRACTICE,
  ) {}

  get liftCoupling(): Coupling | undefined {
    return this.words.liftCoupling;
  }

  get cutFor(): CutFor {
    return this.words.cutFor ?? "money";
  }

  find(key: RateKey): number | undefined {
    return this.values.get(RATE_NAMES[key]);
  }

  get(key: RateKey): number {
    const found = this.find(key);
    if (found === undefined) throw noAnswer(this.parameter, `a table with a row "${RATE_NAMES[key]}"`, "none");
    return found;
  }

  /** What a finding is held against, in internal units. */
  limit(threshold: Threshold): number {
    return limitOf(threshold, this.own);
  }

  /** All rows, sorted by name. */
  entries(): readonly (readonly [string, number | string])[] {
    const words = Object.keys(this.words).sort() as (keyof RateWords)[];
    return [
      ...[...this.values, ...this.own].sort(([a], [b]) => (a < b ? -1 : 1)),
      ...words.map((word) => [RATE_WORDS[word], this.words[word] as string] as const),
    ];
  }

  seconds(key: RateKey): Seconds {
    return seconds(this.get(key));
  }
}

export const NO_RATES = new Rates("rates", new Map());

/** The shop's handling: times as stated; one person lifts what the lifting equation and the shop's own limit allow. */
export function handlingRules(rates: Rates): HandlingRules {
  const hoistAbove = rates.find("hoistAbove");
  return {
    perPiece: rates.seconds("handlingPerPiece"),
    secondsPerKilogram: rates.find("handlingPerMass") ?? 0,
    secondsPerMillimeter: rates.find("handlingPerLength") ?? 0,
    onePersonLimit: onePersonLimit(rates),
    hoistAbove: hoistAbove === undefined ? undefined : kilograms(hoistAbove),
    hoistTime: hoistAbove === undefined ? rates.seconds("handlingPerPiece") : rates.seconds("hoistTime"),
  };
}

/**
 * LIFT.LIMIT for the posture of the rates, where it is given, and the shop's own limit, whichever is less. Where the
 * rates say how a blank is put down, it must be placed with care and the limit is that of LIFT.PLACE.
 */
export function onePersonLimit(rates: Rates): Kilograms | undefined {
  const limits = [rates.find("onePersonLimit"), postureLimit(rates)].filter((limit) => limit !== undefined);
  return limits.length === 0 ? undefined : kilograms(Math.min(...limits));
}

function postureLimit(rates: Rates): number | undefined {
  const reach = rates.find("liftReach");
  if (reach === undefined) return undefined;
  if (rates.liftCoupling === undefined)
    throw noAnswer("rates", 'a table with a row "Lift coupling" where "Lift reach" is given', "none");
  const lift: Omit<Lift, "travel"> = {
    horizontal: reach as Millimeters,
    vertical: rates.get("liftHeight") as Millimeters,
    asymmetry: rates.get("liftTwist") as Degrees,
    liftsPerMinute: rates.get("liftsPerMinute"),
    coupling: rates.liftCoupling,
    hours: hours(rates.get("liftHours")),
  };
  const endReach = rates.find("liftEndReach");
  if (endReach === undefined) return liftLimit({ ...lift, travel: rates.get("liftTravel") as Millimeters });
  return placingLimit(lift, {
    horizontal: endReach as Millimeters,
    vertical: rates.get("liftEndHeight") as Millimeters,
    asymmetry: rates.get("liftEndTwist") as Degrees,
  });
}
