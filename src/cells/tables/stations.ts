/** Every place where work is done: the three machines, benches, and vendors outside. */

import { type Seconds, seconds } from "../../calc/time/seconds.ts";
import { BASES, type Basis } from "../../calc/time/station-time.ts";
import { nearest } from "../../units/nearest.ts";
import { type Millimetres, type Money, money } from "../../units/quantity.ts";
import { noAnswer, wrong } from "../../units/refusal.ts";
import { type Columns, notNegative, oneOf, type Row, whole } from "../parameters/read-table.ts";
import { shopTable } from "../parameters/shop-table.ts";

const STATION_COLUMNS = {
  name: { headers: ["Station", "Name"], kind: "text" },
  basis: { headers: ["Basis"], kind: "text", rule: oneOf(...BASES) },
  setUp: { headers: ["Set-up"], kind: "seconds", optional: true, rule: notNegative },
  each: { headers: ["Time each"], kind: "seconds", optional: true, rule: notNegative },
  rate: { headers: ["Rate", "Hourly rate", "Rate per hour"], kind: "number", rule: notNegative },
  queue: { headers: ["Queue"], kind: "seconds", optional: true, rule: notNegative },
  vendorDays: { headers: ["Vendor days"], kind: "number", optional: true, rule: whole(0, 1000) },
  priceEach: { headers: ["Price each"], kind: "number", optional: true, rule: notNegative },
  minimum: { headers: ["Minimum"], kind: "number", optional: true, rule: notNegative },
  coat: { headers: ["Coat"], kind: "length", optional: true, rule: notNegative },
} as const satisfies Columns;

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
  /** A vendor does it, or could: days, price of one unit of the basis, minimum of an order. */
  readonly vendorDays: number | undefined;
  readonly priceEach: Money | undefined;
  readonly minimum: Money | undefined;
  /** Build of a finish on one surface: a hole closes by twice as much. */
  readonly coat: Millimetres | undefined;
}

/** The names under which the three machines stand in the table. */
export const MACHINE_STATIONS = ["Shear", "Waterjet", "Brake"] as const;
export type MachineStation = (typeof MACHINE_STATIONS)[number];

function asStation(row: Row<typeof STATION_COLUMNS>, name: string): Station {
  const basis = row.basis.toLowerCase() as Basis;
  if (basis !== "machine" && row.each === undefined && row.priceEach === undefined)
    throw wrong(`${name} row ${row.row} column "Time each"`, 'given, or "Price each" where a vendor does it', null);
  return {
    name: row.name,
    basis,
    setUp: seconds(row.setUp ?? 0),
    each: row.each === undefined ? undefined : seconds(row.each),
    rate: money(row.rate),
    queue: seconds(row.queue ?? 0),
    vendorDays: row.vendorDays,
    priceEach: row.priceEach === undefined ? undefined : money(row.priceEach),
    minimum: row.minimum === undefined ? undefined : money(row.minimum),
    coat: row.coat as Millimetres | undefined,
  };
}

export const stations = () =>
  shopTable("station table", "Shear, Waterjet, Brake and every other station", STATION_COLUMNS, asStation);

/** A station by its name. A machine that is used must stand in the table: its rate and set-up are nowhere else. */
export function stationNamed(wanted: string, table: readonly Station[], parameter = "stations"): Station {
  const found = table.find(({ name }) => name.toLowerCase() === wanted.toLowerCase());
  if (found) return found;
  const names = table.map(({ name }) => name);
  throw noAnswer(parameter, "a station of the table", `"${wanted}"`, `nearest is "${nearest(wanted, names)}"`);
}
