/** The waterjet: how it cuts, and the bed it has. */
import type { Waterjet } from "../../bill/nouns/machines.ts";
import { seconds } from "../../calc/time/seconds.ts";
import { QUALITY } from "../../data/jet-rules.ts";
import { gramsPerMinute, type Millimeters, type MillimetersPerMinute, megapascals, mm } from "../../units/quantity.ts";
import { between, type Columns, notNegative, positive, type Row } from "../parameters/read-table.ts";
import { anyTable } from "../parameters/shop-table.ts";

const WATERJET_COLUMNS = {
  name: { headers: ["Waterjet", "Name"], kind: "text" },
  pressure: { headers: ["Pressure"], kind: "stress", rule: positive },
  orifice: { headers: ["Orifice"], kind: "length", rule: positive },
  abrasiveRate: { headers: ["Abrasive rate"], kind: "massFlow", rule: positive },
  nozzleDiameter: { headers: ["Nozzle diameter"], kind: "length", rule: positive },
  quality: { headers: ["Quality"], kind: "number", rule: between(QUALITY.from, QUALITY.to) },
  highestFeed: { headers: ["Highest feed"], kind: "feed", rule: positive },
  pierceTime: { headers: ["Pierce time"], kind: "seconds", rule: notNegative },
  speedFactor: { headers: ["Speed factor"], kind: "number", optional: true, rule: positive },
  bedLength: { headers: ["Bed length"], kind: "length", optional: true, rule: positive },
  bedWidth: { headers: ["Bed width"], kind: "length", optional: true, rule: positive },
  plate: { headers: ["From the plate"], kind: "text", optional: true },
} as const satisfies Columns;

const asWaterjet = (row: Row<typeof WATERJET_COLUMNS>): Waterjet => ({
  name: row.name,
  cut: {
    quality: row.quality,
    pressure: megapascals(row.pressure),
    orifice: mm(row.orifice),
    abrasiveRate: gramsPerMinute(row.abrasiveRate),
    nozzleDiameter: mm(row.nozzleDiameter),
  },
  highestFeed: row.highestFeed as MillimetersPerMinute,
  pierceTime: seconds(row.pierceTime),
  speedFactor: row.speedFactor,
  bedLength: row.bedLength as Millimeters | undefined,
  bedWidth: row.bedWidth as Millimeters | undefined,
  plate: row.plate ?? "",
});

export const anyWaterjets = () =>
  anyTable("waterjet table", "Waterjets of the shop; blank for none", WATERJET_COLUMNS, asWaterjet);
