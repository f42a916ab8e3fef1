/** Every place where work is done: the three machines, benches, and vendors outside. */

import type { Station } from "../../bill/nouns/station.ts";
import { seconds } from "../../calc/time/seconds.ts";
import { BASES, type Basis } from "../../calc/time/station-time.ts";
import { type Millimeters, money } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { type Columns, notNegative, oneOf, type Row, whole } from "../parameters/read-table.ts";
import { shopTable } from "../parameters/shop-table.ts";

const STATION_COLUMNS = {
  name: { headers: ["Station", "Name"], kind: "text" },
  basis: { headers: ["Basis"], kind: "text", rule: oneOf(...BASES) },
  setUp: { headers: ["Set-up"], kind: "seconds", optional: true, rule: notNegative },
  each: { headers: ["Time each"], kind: "seconds", optional: true, rule: notNegative },
  rate: { headers: ["Rate", "Hourly rate", "Rate per hour"], kind: "number", rule: notNegative },
  queue: { headers: ["Queue"], kind: "seconds", optional: true, rule: notNegative },
  atOnce: { headers: ["At once"], kind: "number", optional: true, rule: whole(1, 50) },
  vendorDays: { headers: ["Vendor days"], kind: "number", optional: true, rule: whole(0, 1000) },
  priceEach: { headers: ["Price each"], kind: "number", optional: true, rule: notNegative },
  minimum: { headers: ["Minimum"], kind: "number", optional: true, rule: notNegative },
  coat: { headers: ["Coat"], kind: "length", optional: true, rule: notNegative },
} as const satisfies Columns;

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
    atOnce: row.atOnce,
    vendorDays: row.vendorDays,
    priceEach: row.priceEach === undefined ? undefined : money(row.priceEach),
    minimum: row.minimum === undefined ? undefined : money(row.minimum),
    coat: row.coat as Millimeters | undefined,
  };
}

export const stations = () =>
  shopTable("station table", "Shear, Waterjet, Brake and every other station", STATION_COLUMNS, asStation);
