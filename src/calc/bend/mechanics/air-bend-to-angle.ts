import type { Degrees } from "../../../units/quantity.ts";
import { Refusal } from "../../../units/refusal.ts";
import { type AirBend, airBendAt, type SolvedAt } from "./air-bend.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import { type BendSetup, bendSetup } from "./bend-setup.ts";
import { type LoadedPose, loadedPose } from "./loaded-pose.ts";
import { rootBetween } from "./root.ts";

const DEGREE = Math.PI / 180;

/** The free sheet never reaches the angle between this die and punch, or springs all the way back. */
export class OutOfReach extends Refusal {}

/**
 * Air bend that ends at `finalAngle` (degrees the sheet is turned through, after springback): the stroke, force,
 * springback, radii and bend deduction. The loaded half angle a solves a - springback(a) = finalAngle/2. Takes any
 * angle the free sheet can reach: die and punch faces are not part of it. Refuses (#N/A) an angle not from 0.5 to
 * 175 degrees and (#N/A) one this sheet cannot reach in this die. `near`, the solution of a bend that differs little,
 * saves two thirds of the work.
 */
export function airBendToAngle(input: AirBendInput, finalAngle: Degrees, near?: SolvedAt): AirBend {
  if (!(finalAngle >= 0.5 && finalAngle <= 175)) {
    throw new Refusal("#N/A", `bend_angle must be from 0.5 to 175 deg for the mechanics; got ${finalAngle} deg`);
  }
  const setup = bendSetup(input);
  const pose = (near && poseNear(setup, finalAngle, near)) ?? poseEndingAt(setup, finalAngle);
  const answer = airBendAt(input, setup, pose, near?.peakShare);
  if (answer === undefined) {
    throw new OutOfReach("#N/A", `bend_angle must be large enough to leave a bend in this sheet; got ${finalAngle}`);
  }
  return answer;
}

const NEAR_ENOUGH = 1e-5; // radians (numerical)
/** Springback takes back a few hundredths of what the loaded angle grows by (numerical: only the first guess). */
const FIRST_SLOPE = 0.97;

/** The pose by secants from a neighbor's; undefined where they do not close in at once. */
function poseNear(setup: BendSetup, finalAngle: number, near: SolvedAt): LoadedPose | undefined {
  const wanted = (finalAngle / 2) * DEGREE;
  let curvature = near.curvature;
  let [before, fBefore] = [Number.NaN, Number.NaN];
  let here = near.halfAngle;
  for (let turn = 0; turn < 6; turn++) {
    if (!(here > 0 && here < setup.largestHalfAngle)) return undefined;
    // The first pose only says where to go on.
    const pose = loadedPose(setup, here, curvature, turn === 0 ? 1e-4 : 1e-8);
    const excess = here - pose.springback - wanted;
    if (turn > 0 && Math.abs(excess) < NEAR_ENOUGH) return pose;
    const slope = turn === 0 ? FIRST_SLOPE : (excess - fBefore) / (here - before);
    [before, fBefore] = [here, excess];
    here -= excess / slope;
    curvature = pose.path.end.curvature;
  }
  return undefined;
}

function poseEndingAt(setup: BendSetup, finalAngle: number): LoadedPose {
  const wanted = (finalAngle / 2) * DEGREE;
  const most = setup.largestHalfAngle;
  let pose: LoadedPose | undefined;
  const solve = (halfAngle: number) => {
    pose = loadedPose(setup, halfAngle, pose?.path.end.curvature);
    return pose;
  };
  const excess = (halfAngle: number) => halfAngle - solve(halfAngle).springback - wanted;
  let low = wanted;
  let fLow = low < most ? excess(low) : 0;
  // Springback grows slowly with the angle, so a step a tenth longer than what is missing mostly brackets (numerical).
  for (let step = 1.1; low < most; step *= 2) {
    const high = Math.min(most, low - step * fLow);
    const fHigh = excess(high);
    if (fHigh >= 0) return solve(rootBetween(excess, [low, fLow], [high, fHigh], 1e-11));
    [low, fLow] = [high, fHigh];
  }
  const reached = 2 * (most - loadedPose(setup, most).springback);
  const limit = Math.max(0, Math.floor((reached / DEGREE) * 10) / 10);
  throw new OutOfReach(
    "#N/A",
    `bend_angle must be at most ${limit} deg for this sheet, die and punch; got ${finalAngle}; use a wider die or a smaller nose or shoulder`,
  );
}
