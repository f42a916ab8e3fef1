import type { Ratio } from "../../../units/quantity.ts";
import type { AirBendBand } from "./air-bend-band.ts";
import type { AirBendInput } from "./air-bend-input.ts";

/*
 * What holds 90 % of the model's errors against the finite-element cases that fitted nothing (1.645 x rms of 19 cases:
 * deduction 0.018 t, angle 0.41 deg, springback 0.08 deg, force 1.4 %, radius 0.04 t), rounded up.
 */
const DEDUCTION = 0.04; // t
const RADIUS = 0.08; // t
const SPRINGBACK = 0.15; // deg
const STROKE = 0.006; // V: 0.7 degrees at V / 2 a radian
const FORCE = 0.025; // of itself

/**
 * The band of stock and die widened by the model's own error, added by squares. Beyond a distance of 1 from any compared
 * bend nobody knows that error: it is taken to grow with the distance (chosen).
 */
export function withModelError(band: AirBendBand, input: AirBendInput, distance: Ratio): AirBendBand {
  const { thickness, dieOpening } = input;
  const error: Partial<Record<keyof AirBendBand, number>> = {
    bendDeduction: DEDUCTION * thickness,
    tangentRadius: RADIUS * thickness,
    centerRadius: RADIUS * thickness,
    springback: SPRINGBACK,
    loadedAngle: SPRINGBACK,
    stroke: STROKE * dieOpening,
    peakForce: FORCE * band.peakForce.value,
  };
  const grown = Math.max(1, distance);
  const widened = Object.entries(band).map(([figure, { lower, value, upper }]) => {
    const by = grown * (error[figure as keyof AirBendBand] ?? 0);
    return [
      figure,
      { lower: value - Math.hypot(value - lower, by), value, upper: value + Math.hypot(upper - value, by) },
    ];
  });
  return Object.fromEntries(widened) as AirBendBand;
}
