/** Lengths: plain numbers in the call's unit, or text that brings its own unit; thicknesses may be gauges too. */
import { gaugeThickness } from "../../calc/flat/gauge-thickness.ts";
import type { CellValue } from "../../units/cell.ts";
import { isBlank, isCellError } from "../../units/cell.ts";
import { namesGauge, parseGauge } from "../../units/parse-gauge.ts";
import { parseLength } from "../../units/parse-length.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { type Millimeters, mm } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { showBoth } from "../../units/show.ts";
import { toInternal, type UnitSystem } from "../../units/system.ts";
import type { CellParameter, ReadContext } from "../record/record.ts";

/** Longer than any sheet, coil cut or bed, and shorter than the day numbers below read as millimeters. */
export const LONGEST = mm(36_000);
/** Thicker than any plate a brake or a shear of this kind takes. */
export const THICKEST = mm(300);
/** Excel's day numbers from 2000 to 2099: "1/4" typed into an unformatted cell becomes one of these. */
const DATES = { from: 36526, to: 73050 };

export const looksLikeDate = (given: CellValue): boolean =>
  typeof given === "number" && Number.isInteger(given) && given >= DATES.from && given <= DATES.to;
export const DATE_HINT = "the number is a date: Excel turns 1/4 into a day; type 0.25, =1/4 or format the cell as text";

/** Reads one length; `zero` allows 0. Throws Refusal. */
export function readLength(
  given: CellValue,
  name: string,
  context: Pick<ReadContext, "system">,
  { zero = false, longest = LONGEST, hint }: { zero?: boolean; longest?: Millimeters; hint?: string | undefined } = {},
): Millimeters {
  const rule = zero
    ? `a length of at least 0 and at most ${showBoth(longest, "length")}`
    : `a length of more than 0 and at most ${showBoth(longest, "length")}`;
  if (isBlank(given)) throw wrong(name, "given", given, hint);
  if (typeof given === "boolean" || isCellError(given)) throw wrong(name, rule, given, hint);
  const value =
    typeof given === "number" ? toInternal<"mm">(given, "length", context.system) : parseLength(given, context.system);
  if (value === "ambiguous") throw wrong(name, rule, given, "write 1234 or 1.234: the comma could mean either");
  if (value === undefined)
    throw wrong(
      name,
      rule,
      given,
      namesGauge(given as string)
        ? "a gauge needs a material: give the thickness, or use SHEET.THICKNESS"
        : (hint ?? 'write 0.25, "1/4", "6 mm" or "2 ft 6 in"'),
    );
  if (!Number.isFinite(value) || value < 0 || (!zero && value === 0) || value > longest)
    throw wrong(name, rule, given, looksLikeDate(given) ? DATE_HINT : hint);
  return value;
}

/** A bare 10 for a thickness in inches is a gauge more often than a plate of 10 in: its hint, undefined for any other. */
export function bareGauge(given: CellValue, system: UnitSystem): string | undefined {
  const plain = typeof given === "string" ? parseNumber(given) : given;
  const isGauge = system === "in" && typeof plain === "number" && Number.isInteger(plain) && plain >= 7 && plain <= 30;
  return isGauge ? `write "${plain} ga" for the gauge, "${plain} in" or "${plain} mm"` : undefined;
}

/** Reads a thickness: a length, or a gauge of the row's material. */
export function readThickness(given: CellValue, name: string, context: ReadContext): Millimeters {
  if (typeof given === "string" && namesGauge(given)) {
    const gauge = parseGauge(given);
    if (gauge === undefined) throw wrong(name, 'a thickness such as 0.25, "1/4", "3 mm" or "10 ga"', given);
    const series = context.material?.gaugeSeries;
    if (!series)
      throw wrong(
        name,
        "a length where the material has no gauge series",
        given,
        "the same gauge is a different thickness in each material: name the material, or give the thickness",
      );
    return gaugeThickness(gauge, series, undefined, context.materials.edition.stainlessGauges);
  }
  const hint = bareGauge(given, context.system);
  if (hint) throw wrong(name, "a thickness with its unit", given, hint);
  return readLength(given, name, context, { longest: THICKEST, hint: 'write 0.25, "1/4", "3 mm" or "10 ga"' });
}

interface LengthOptions<D> {
  readonly description: string;
  readonly zero?: true;
  readonly hint?: string;
  readonly fallback?: D;
}

export function length(options: LengthOptions<never>): CellParameter<Millimeters>;
export function length<D extends Millimeters | undefined>(
  options: LengthOptions<D> & { fallback: D },
): CellParameter<Millimeters | D>;
export function length<D>(options: LengthOptions<D>): CellParameter<Millimeters | D> {
  const optional = "fallback" in options;
  return {
    shape: "cell",
    type: "length",
    quantity: "length",
    description: options.description,
    optional,
    default: (options.fallback ?? null) as CellValue,
    read: (given, name, context) =>
      optional && isBlank(given)
        ? (options.fallback as D)
        : readLength(given, name, context, { zero: options.zero ?? false, hint: options.hint }),
  };
}

export const thickness = (
  description = 'Sheet thickness: a length, or a gauge such as "10 ga" where a material is given',
): CellParameter<Millimeters> => ({
  shape: "cell",
  type: "thickness",
  quantity: "length",
  description,
  optional: false,
  default: null,
  read: readThickness,
});

export const radius = (description = "Inside radius of the bend"): CellParameter<Millimeters> =>
  length({ description, zero: true });
