import type { Ratio } from "../../../units/quantity.ts";
import type { AirBend } from "./air-bend.ts";
import type { AirBendInput } from "./air-bend-input.ts";

/** One quantity of a bend against the range in which the model was compared with finite elements. */
export interface CheckedQuantity {
  readonly quantity: string;
  /** Unit of value and range; "" for ratios. */
  readonly unit: "" | "deg";
  readonly value: Ratio;
  readonly least: Ratio;
  readonly most: Ratio;
  readonly inside: boolean;
}

type Read = (input: AirBendInput, bend: AirBend) => number;

/** Spans of the 29 cases of two finite-element programs; a test compares them with tests/reference/fe-cases*.json. */
const CHECKED: ReadonlyArray<readonly [string, "" | "deg", Read, number, number]> = [
  ["friction", "", (input) => input.friction, 0, 0.2],
  ["die angle", "deg", (input) => input.dieAngle, 85, 85],
  ["die opening / thickness", "", (input) => input.dieOpening / input.thickness, 6, 16],
  ["punch nose / thickness", "", (input) => input.punchNose / input.thickness, 1 / 3, 4],
  ["die shoulder / thickness", "", (input) => input.dieShoulder / input.thickness, 4 / 6.35, 1],
  ["hardening exponent", "", (input) => input.hardening.exponent, 0.05, 0.45],
  ["final angle", "deg", (_, bend) => bend.finalAngle, 45.8313, 119.3779],
  ["tangent radius / thickness", "", (input, bend) => bend.tangentRadius / input.thickness, 0.62, 4.14],
];

/**
 * Which quantities of a bend lie inside what the model was checked against, and which do not: outside, the mechanics
 * still hold but nobody has compared them. The die angle was 85 degrees
 * in every case; it moves only the centre of the shoulder arc. Springback of sheets that hardly harden (n about 0.05) was
 * off by up to 5 % of it, 0.3 degrees; everything else within 0.15 degrees.
 */
export function checkedAgainstFiniteElements(input: AirBendInput, bend: AirBend): readonly CheckedQuantity[] {
  return CHECKED.map(([quantity, unit, read, least, most]) => {
    const value = read(input, bend);
    const rounding = 1e-9 * most;
    return { quantity, unit, value, least, most, inside: value >= least - rounding && value <= most + rounding };
  });
}
