/** Angles in degrees. The bend angle is the angle the sheet is turned through: 0 flat, 90 square. */
import type { CellValue } from "../../units/cell.ts";
import { isBlank } from "../../units/cell.ts";
import { type Degrees, degrees } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";
import { type NumberRule, readNumber, ruleInWords } from "./number.ts";

/** Nearer to 180 it is a closed hem, whose length is nothing that a tangent of half the angle tells. */
const MOST_BENT = 179;
const BEND: NumberRule = { from: -MOST_BENT, above: true, to: MOST_BENT, below: true };
const BEND_HINT = "it is 180 less the included angle; a closed hem is flattened in a hem die";
export const DEGREE_SIGN = /\s*(?:°|deg|degrees?)\s*$/i;
/** "90/90", "2 x 90": several angles written as one. */
const SEVERAL = /\d\s*(?:°|deg|degrees?)?\s*[/⁄x×*]\s*\d/i;
export const ANGLES_HINT = 'an angle is no fraction: write "90; 90" for two bends, 22.5 for 22 1/2';

export const isSeveralAngles = (given: CellValue): boolean => typeof given === "string" && SEVERAL.test(given);

const withoutSign = (given: CellValue): CellValue =>
  typeof given === "string" ? given.replace(DEGREE_SIGN, "") : given;

/** An angle is never a fraction: "90/90" is two bends, not 1 degree. */
function readAngle(given: CellValue, name: string, rule: NumberRule, noun: string, hint?: string): Degrees {
  if (isSeveralAngles(given)) throw wrong(name, ruleInWords(rule, noun), given, ANGLES_HINT);
  return degrees(readNumber(withoutSign(given), name, rule, noun, hint));
}

/** Negative where the bend goes down. */
export const readSignedBendAngle = (given: CellValue, name: string): Degrees =>
  readAngle(given, name, BEND, "bend angle in degrees", BEND_HINT);

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
      optional && isBlank(given) ? (options.fallback as D) : readAngle(given, name, options.rule, "angle in degrees"),
  };
}
