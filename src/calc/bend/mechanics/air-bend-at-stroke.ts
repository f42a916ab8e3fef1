import type { Millimeters } from "../../../units/quantity.ts";
import { Refusal } from "../../../units/refusal.ts";
import { type AirBend, airBendAt, strokeOf } from "./air-bend.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { bendSetup } from "./bend-setup.ts";
import { type LoadedPose, loadedPose } from "./loaded-pose.ts";
import { rootBetween } from "./root.ts";

/**
 * Air bend made by a stroke (mm of punch travel from first contact): loaded and final angle, force, springback, radii,
 * bend deduction. Refuses (#VALUE!) a stroke that is not a positive number and (#N/A) one after which the sheet springs
 * back flat or which the free sheet cannot follow.
 */
export function airBendAtStroke(input: AirBendInput, stroke: Millimeters): AirBend {
  if (!(stroke > 0 && stroke < 1e4)) {
    throw new Refusal("#VALUE!", `stroke must be above 0 and below 10000 mm; got ${stroke}`);
  }
  const setup = bendSetup(input);
  let pose: LoadedPose | undefined;
  const solve = (halfAngle: number) => {
    pose = loadedPose(setup, halfAngle, pose?.path.end.curvature);
    return pose;
  };
  const excess = (halfAngle: number) => strokeOf(setup, solve(halfAngle), input.hardening.exponent) - stroke;
  // Upwards from a straight-legged guess, so that the first root is found and no pose near the nip is asked for.
  let low = 1e-5;
  let fLow = -stroke;
  let high = Math.min(setup.largestHalfAngle, Math.atan(stroke / setup.shoulderCenter));
  for (let fHigh = excess(high); ; fHigh = excess(high)) {
    if (fHigh >= 0) {
      const answer = airBendAt(input, setup, solve(rootBetween(excess, [low, fLow], [high, fHigh], 1e-11)));
      if (answer) return answer;
      throw new Refusal("#N/A", `stroke must be large enough to leave a bend in this sheet; got ${stroke} mm`);
    }
    if (high >= setup.largestHalfAngle) {
      const limit = Math.floor((stroke + fHigh) * 1000) / 1000;
      throw new Refusal("#N/A", `stroke must be at most ${limit} mm for this sheet, die and punch; got ${stroke}`);
    }
    [low, fLow] = [high, fHigh];
    high = Math.min(setup.largestHalfAngle, high * 1.25);
  }
}
