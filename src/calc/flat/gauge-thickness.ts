import { cite } from "../../data/fact.ts";
import {
  AWG_BASE,
  AWG_BASE_GAUGE,
  AWG_RANGE,
  AWG_RATIO,
  AWG_STEPS,
  GALVANIZED_COATING_OUNCES,
  GALVANIZED_RANGE,
  STAINLESS_DECIMALS,
  STATUTE_OUNCES_PER_INCH,
  STATUTORY_OUNCES,
  STATUTORY_RANGE,
  STEEL_POUNDS_PER_INCH,
  STEEL_RANGE,
} from "../../data/gauges.ts";
import type { Edition, GaugeSeries } from "../../data/materials/material.ts";
import { lastOf } from "../../units/certain.ts";
import { showGauge } from "../../units/parse-gauge.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";

const OUNCES_PER_POUND = 16; // by definition (avoirdupois)

/**
 * How thick is a gauge number in this series? The same number is a different thickness in each material.
 * steel: ounces / 16 / 41.82; galvanized: the coating's ounces added; stainless: ounces / 640 to 4 places;
 * aluminum: 0.005 x 92^((36 - n) / 39), n = -3 for 4/0. Gauge with zeros counted down from 0 (3/0 is -2).
 * Printed stainless tables cut an exact half off instead of rounding it up; an edition says which.
 * Refuses (#N/A) a gauge that the series does not have.
 * Source: 15 U.S.C. 206; Manufacturers' Standard Gauge; ASTM B258.
 */
export function gaugeThickness(
  gauge: number,
  series: GaugeSeries,
  work?: Working,
  stainless?: Edition["stainlessGauges"],
): Millimeters {
  const range = RANGES[series];
  if (!Number.isInteger(gauge) || gauge < range.first || gauge > range.last)
    throw noAnswer(
      "gauge",
      `a ${series} gauge from ${showGauge(range.first)} to ${showGauge(range.last)}`,
      showGauge(gauge),
      "give the thickness itself",
    );
  if (series === "aluminum") {
    const inches = AWG_BASE.value * AWG_RATIO.value ** ((AWG_BASE_GAUGE.value - gauge) / AWG_STEPS.value);
    return step(work, "t", `thickness of ${showGauge(gauge)}`, mm(inches * MM_PER_INCH), "mm", cite(AWG_RATIO));
  }
  const ounces = step(
    work,
    "oz",
    "statutory weight per square foot",
    statutoryOunces(gauge),
    "oz/ft2",
    STATUTORY_RANGE.source,
  );
  if (series === "stainless") {
    const places = 10 ** STAINLESS_DECIMALS.value;
    const exact = (ounces / STATUTE_OUNCES_PER_INCH.value) * places;
    // Printed tables cut an exact half off: 22 gauge, 0.03125, stands as 0.0312.
    const inches = (stainless === "as printed" ? Math.ceil(exact - 0.5) : Math.round(exact)) / places;
    return step(
      work,
      "t",
      `thickness of ${showGauge(gauge)}`,
      mm(inches * MM_PER_INCH),
      "mm",
      cite(STAINLESS_DECIMALS),
    );
  }
  const coating = series === "galvanized" ? GALVANIZED_COATING_OUNCES.value : 0;
  const inches = (ounces + coating) / OUNCES_PER_POUND / STEEL_POUNDS_PER_INCH.value;
  return step(
    work,
    "t",
    `thickness of ${showGauge(gauge)}`,
    mm(inches * MM_PER_INCH),
    "mm",
    cite(STEEL_POUNDS_PER_INCH),
  );
}

const RANGES: Record<GaugeSeries, { readonly first: number; readonly last: number }> = {
  steel: STEEL_RANGE,
  galvanized: GALVANIZED_RANGE,
  stainless: STATUTORY_RANGE,
  aluminum: AWG_RANGE,
};

function statutoryOunces(gauge: number): number {
  const [first, ounces, less] = lastOf(STATUTORY_OUNCES.filter(([from]) => gauge >= from));
  return ounces - less * (gauge - first);
}
