/** Whether plain numbers under headings without a unit may be taken for the shop's unit: the whole list is asked. */
import { namesGauge } from "../../units/parse-gauge.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { type UnitSystem, unitName } from "../../units/system.ts";
import { US_WORDS } from "./notation.ts";
import { isGauge, LONG_INCHES } from "./read-length.ts";

/** A cell under a heading of lengths. */
export interface LengthCell {
  readonly text: string;
  readonly isThickness: boolean;
  /** Width or flanges, lists taken apart. */
  readonly isSide: boolean;
  /** Of its heading. */
  readonly unit: string | undefined;
}

const METRIC = /\d\s*(?:mm|cm|m)\.?$/i;
/** Chosen: no sheet of a bracket is thinner in mm, and few are as thick in inches. */
const [THINNEST_MM, THICK_INCH] = [0.3, 1];

/** Why they may not, as the person is asked; undefined where nothing speaks against the shop's unit. */
export function unitDoubt(cells: readonly LengthCell[], shop: UnitSystem): string | undefined {
  const plain = cells.filter(
    ({ text, unit }) => unit === undefined && typeof parseNumber(text) === "number" && !/\//.test(text),
  );
  if (plain.length === 0) return undefined;
  const thick = cells.filter(({ isThickness }) => isThickness);
  const americans = thick.filter(isAmerican).length;
  const metrics = thick.filter(isMetric).length;
  const [american, metric] = [americans > 0, metrics > 0];
  const values = plain.filter(({ isThickness }) => isThickness).map(({ text }) => parseNumber(text) as number);
  const ask = (why: string) =>
    `${why}: plain numbers are not taken for ${unitName("length", shop)}; write the unit in the heading or say --units in or --units mm`;
  const [ofInches, ofMetric] = [cells.filter(isAmerican).length, cells.filter(isMetric).length];
  if (ofInches > 0 && ofMetric > 0 && (shop === "in" ? ofMetric >= ofInches : ofInches >= ofMetric))
    return ask("no unit in the heading, and some cells in mm, some in inches or gauges");
  if (shop === "in") {
    const thickOnes = values.filter((value) => value >= THICK_INCH);
    // A few bare gauges among inches are asked about by themselves; nothing else is in doubt for them.
    const areGauges = thickOnes.every(isGauge) && americans > thickOnes.length + metrics;
    if (thickOnes.length > 0 && !areGauges) return ask("no unit in the heading, and a thickness of 1 or more");
    if (plain.some(({ isSide, text }) => isSide && (parseNumber(text) as number) > LONG_INCHES))
      return ask(`no unit in the heading, and a length over ${LONG_INCHES}`);
    if (values.length > 0 && values.every((value) => value >= THINNEST_MM) && !american)
      return ask("no unit in the heading, and every thickness could be in or mm");
    if (metric && !american && values.length === 0) return ask("no unit in the heading, and every thickness is metric");
    return undefined;
  }
  if (values.some((value) => value < THINNEST_MM))
    return ask(`no unit in the heading, and a thickness under ${THINNEST_MM}`);
  if (values.length > 0 && values.every((value) => value < THICK_INCH))
    return ask("no unit in the heading, and every thickness could be in or mm");
  if (american && !metric) return ask("no unit in the heading, and thicknesses in inches or gauges");
  return undefined;
}

const isAmerican = ({ text, unit }: LengthCell): boolean =>
  namesGauge(text) || US_WORDS.test(text) || unit === "ga" || isInch(unit);
const isMetric = ({ text, unit }: LengthCell): boolean =>
  METRIC.test(text) || (unit !== undefined && unit !== "ga" && !isInch(unit));
const isInch = (unit: string | undefined): boolean => unit !== undefined && /^(?:in|inch|inches|ft|feet)$/.test(unit);
