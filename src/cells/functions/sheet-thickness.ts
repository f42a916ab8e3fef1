import { gaugeThickness } from "../../calc/flat/gauge-thickness.ts";
import type { GaugeSeries } from "../../data/materials/material.ts";
import { isBlank } from "../../units/cell.ts";
import { parseGauge } from "../../units/parse-gauge.ts";
import { wrong } from "../../units/refusal.ts";
import { unitsAndData } from "../parameters/material.ts";
import { type CellParameter, defineFunction } from "../record/record.ts";

const gauge: CellParameter<number> = {
  shape: "cell",
  type: "gauge",
  description: 'Gauge number: 10, "10", "10 ga" or "3/0"',
  optional: false,
  default: null,
  read: (given, name) => {
    if (isBlank(given)) throw wrong(name, "given", given);
    const value = typeof given === "number" || typeof given === "string" ? parseGauge(given) : undefined;
    if (value === undefined) throw wrong(name, 'a gauge number such as 10, "10 ga" or "3/0"', given);
    return value;
  },
};

const series: CellParameter<GaugeSeries> = {
  shape: "cell",
  type: "material",
  description: '"steel" (Manufacturers\' Standard), "galvanized", "stainless", "aluminum" or an alloy by name',
  optional: false,
  default: null,
  read: (given, name, context) => context.materials.gaugeSeries(given, name),
};

export const sheetThickness = defineFunction({
  name: "SHEET.THICKNESS",
  question: "How thick is this gauge in this material?",
  parameters: { gauge, material: series, ...unitsAndData() },
  result: { kind: "length" },
  example: { formula: '=SHOP.SHEET.THICKNESS(3,"stainless")', answer: 0.25 },
  source: "15 U.S.C. 206 (read); Manufacturers' Standard Gauge, 41.82 lb/ft2 per inch (read); ASTM B258 (read)",
  contract: true,
  calculate: ({ gauge, material }, { work, materials }) =>
    gaugeThickness(gauge, material, work, materials.edition.stainlessGauges),
});
