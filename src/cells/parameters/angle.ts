/** Angles in degrees. The bend angle is the angle the sheet is turned through: 0 flat, 90 square. */
import type { CellValue } from "../../units/cell.ts";
import { isBlank } from "../../units/cell.ts";
import { type Degrees, degrees } from "../../units/quantity.ts";
import type { CellParameter } from "../record/record.ts";
import { type NumberRule, readNumber } from "./number.ts";

/** Nearer to 180 it is a closed hem, whose length is nothing that a tangent of half the angle tells. */
const MOST_BENT = 179;
const BEND: NumberRule = { from: -MOST_BENT, above: true, to: MOST_BENT, below: true };
const BEND_HINT = "it is 180 less the included angle; a closed hem is flattened in a hem die";
const DEGREE_SIGN = /\s*(?:°|deg|degrees?)\s*$/i;

const withoutSign = (given: CellValue): CellValue =>
  typeof given === "string" ? given.replace(DEGREE_SIGN, "") : given;

/** Negative where the bend goes down. */
export const readSignedBendAngle = (given: CellValue, name: string): Degrees =>
  degrees(readNumber(withoutSign(given), name, BEND, "bend angle in degrees", BEND_HINT));

/** Which way it goes changes no length and no force. */
export const readBendAngle = (given: CellValue, name: string): Degrees =>
  degrees(Math.abs(readSignedBendAngle(given, name)));

export const bendAngle = (fallback?: Degrees): CellParameter<Degrees> => ({
  shape: "cell",
  type: "angle",
  quantity: "angle",
  description:
    "Bend angle, the angle the sheet is turned through: 0 flat, 90 square; the sign, up or down, does not matter",
  optional: fallback !== undefined,
  default: fallback ?? null,
  read: (given, name) => (fallback !== undefined && isBlank(given) ? fallback : readBendAngle(given, name)),
});

interface AngleOptions<D> {
  readonly description: string;
  readonly rule: NumberRule;
  readonly fallback?: D;
}

export function angle(options: AngleOptions<never>): CellParameter<Degrees>;
export function angle<D extends Degrees | undefined>(
  options: AngleOptions<D> & { fallback: D },
): CellParameter<Degrees | D>;
export function angle<D>(options: AngleOptions<D>): CellParameter<Degrees | D> {
  const optional = "fallback" in options;
  return {
    shape: "cell",
    type: "angle",
    quantity: "angle",
    description: options.description,
    optional,
    default: (options.fallback ?? null) as CellValue,
    read: (given, name) =>
      optional && isBlank(given)
        ? (options.fallback as D)
        : degrees(readNumber(withoutSign(given), name, options.rule, "angle in degrees")),
  };
}
