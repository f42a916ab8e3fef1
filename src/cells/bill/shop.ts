/** The shop as a bill meets it: its tables, and what follows from them once for all lines. */

import type { MaterialTable } from "../../bill/material-table.ts";
import { blanksNeeded } from "../../calc/cost/blanks-needed.ts";
import { liftLimit } from "../../calc/handling/lift-limit.ts";
import type { HandlingRules } from "../../calc/time/handling.ts";
import { type Degrees, hours, type Kilograms, kilograms, type Millimetres } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { Rates } from "../tables/rates.ts";
import type { TimedShear } from "../tables/shop-tables.ts";
import type { Station } from "../tables/stations.ts";
import type { Waterjet } from "../tables/waterjet.ts";
import type { BendTools } from "./tools.ts";

export interface Shop extends BendTools {
  readonly shears: readonly TimedShear[];
  readonly waterjets: readonly Waterjet[];
  readonly stations: readonly Station[];
  readonly rates: Rates;
  readonly system: UnitSystem;
  readonly materials: MaterialTable;
}

/** The shop's handling: times as stated; one person lifts what the lifting equation and the shop's own limit allow. */
export function handlingRules(rates: Rates): HandlingRules {
  const hoistAbove = rates.find("hoistAbove");
  return {
    perPiece: rates.seconds("handlingPerPiece"),
    secondsPerKilogram: rates.find("handlingPerMass") ?? 0,
    secondsPerMillimetre: rates.find("handlingPerLength") ?? 0,
    onePersonLimit: onePersonLimit(rates),
    hoistAbove: hoistAbove === undefined ? undefined : kilograms(hoistAbove),
    hoistTime: hoistAbove === undefined ? rates.seconds("handlingPerPiece") : rates.seconds("hoistTime"),
  };
}

/** LIFT.LIMIT for the posture of the rates, where it is given, and the shop's own limit, whichever is less. */
export function onePersonLimit(rates: Rates): Kilograms | undefined {
  const limits = [rates.find("onePersonLimit"), postureLimit(rates)].filter((limit) => limit !== undefined);
  return limits.length === 0 ? undefined : kilograms(Math.min(...limits));
}

function postureLimit(rates: Rates): number | undefined {
  const reach = rates.find("liftReach");
  if (reach === undefined) return undefined;
  if (rates.liftCoupling === undefined)
    throw noAnswer("rates", 'a table with a row "Lift coupling" where "Lift reach" is given', "none");
  return liftLimit({
    horizontal: reach as Millimetres,
    vertical: rates.get("liftHeight") as Millimetres,
    travel: rates.get("liftTravel") as Millimetres,
    asymmetry: rates.get("liftTwist") as Degrees,
    liftsPerMinute: rates.get("liftsPerMinute"),
    coupling: rates.liftCoupling,
    hours: hours(rates.get("liftHours")),
  });
}

export const blanksFor = (quantity: number, rates: Rates): number =>
  blanksNeeded(quantity, rates.get("scrapAllowance"), rates.get("firstPieces"));
