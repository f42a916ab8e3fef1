import type { Degrees } from "../../../units/quantity.ts";
import { Refusal } from "../../../units/refusal.ts";
import { type AirBend, airBendAt } from "./air-bend.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { type BendSetup, bendSetup } from "./bend-setup.ts";
import { type LoadedPose, loadedPose } from "./loaded-pose.ts";
import { rootBetween } from "./root.ts";

const DEGREE = Math.PI / 180;

/**
 * Air bend that ends at `finalAngle` (degrees the sheet is turned through, after springback): the stroke, force,
 * springback, radii and bend deduction. The loaded half angle a solves a - springback(a) = finalAngle/2. Takes any
 * angle the free sheet can reach: die and punch faces are not part of it. Refuses (#N/A) an angle not from 0.5 to
 * 175 degrees and (#N/A) one this sheet cannot reach in this die.
 */
export function airBendToAngle(input: AirBendInput, finalAngle: Degrees): AirBend {
  if (!(finalAngle >= 0.5 && finalAngle <= 175)) {
    throw new Refusal("#N/A", `bend_angle must be from 0.5 to 175 deg for the mechanics; got ${finalAngle} deg`);
  }
  const setup = bendSetup(input);
  const answer = airBendAt(input, setup, poseEndingAt(setup, finalAngle));
  if (answer === undefined) {
    throw new Refusal("#N/A", `bend_angle must be large enough to leave a bend in this sheet; got ${finalAngle}`);
  }
  return answer;
}

function poseEndingAt(setup: BendSetup, finalAngle: number): LoadedPose {
  const wanted = (finalAngle / 2) * DEGREE;
  const most = setup.largestHalfAngle;
  let pose: LoadedPose | undefined;
  const excess = (halfAngle: number) => {
    pose = loadedPose(setup, halfAngle, pose?.path.end.curvature);
    return halfAngle - pose.springback - wanted;
  };
  let low = wanted;
  let fLow = low < most ? excess(low) : 0;
  // Springback grows slowly with the angle, so a step a tenth longer than what is missing mostly brackets (numerical).
  for (let step = 1.1; low < most; step *= 2) {
    const high = Math.min(most, low - step * fLow);
    const fHigh = excess(high);
    if (fHigh >= 0) {
      excess(rootBetween(excess, low, fLow, high, fHigh, 1e-11));
      return pose!;
    }
    [low, fLow] = [high, fHigh];
  }
  const reached = 2 * (most - loadedPose(setup, most).springback);
  const limit = Math.max(0, Math.floor((reached / DEGREE) * 10) / 10);
  throw new Refusal(
    "#N/A",
    `bend_angle must be at most ${limit} deg for this sheet, die and punch; got ${finalAngle}; use a wider die or a smaller nose or shoulder`,
  );
}
