import type { Seconds } from "../../calc/time/seconds.ts";
import type { Basis } from "../../calc/time/station-time.ts";
import { nearest } from "../../units/nearest.ts";
import type { Millimeters, Money } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";

/** A place where work is done: a machine, a bench, or a vendor outside. */
export interface Station {
  readonly name: string;
  readonly basis: Basis;
  readonly setUp: Seconds;
  /** Time of one unit of the basis; undefined where only a vendor does it. */
  readonly each: Seconds | undefined;
  /** Money per hour. */
  readonly rate: Money;
  /** Work already waiting there. */
  readonly queue: Seconds;
  /** How many lines are worked on there at once, by benches or people; undefined: one. */
  readonly atOnce: number | undefined;
  /** A vendor does it, or could: days, price of one unit of the basis, minimum of an order. */
  readonly vendorDays: number | undefined;
  readonly priceEach: Money | undefined;
  readonly minimum: Money | undefined;
  /** Build of a finish on one surface: a hole closes by twice as much. */
  readonly coat: Millimeters | undefined;
}

/** The names under which the three machines stand in the table. */
export const MACHINE_STATIONS = ["Shear", "Waterjet", "Brake"] as const;

export const findStation = (wanted: string, table: readonly Station[]): Station | undefined =>
  table.find(({ name }) => name.toLowerCase() === wanted.toLowerCase());

/** Of one unit of its basis at a vendor. */
export function priceEachOf({ name, priceEach }: Station): Money {
  if (priceEach === undefined) throw noAnswer("stations", `a table with a "Price each" for ${name}`, "none");
  return priceEach;
}

/** A station by its name. A machine that is used must stand in the table: its rate and set-up are nowhere else. */
export function stationNamed(wanted: string, table: readonly Station[], parameter = "stations"): Station {
  const found = findStation(wanted, table);
  if (found) return found;
  const names = table.map(({ name }) => name);
  throw noAnswer(
    parameter,
    "a station in the table",
    showGiven(wanted),
    `nearest is ${showGiven(nearest(wanted, names))}`,
  );
}
