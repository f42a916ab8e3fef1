import type { BendSetup } from "./bend-setup.ts";
import { type LoadedPose, loadedPose } from "./loaded-pose.ts";

const SAMPLES = 8;

/** Enough for a force to 1e-5, and a third fewer steps than for the pose itself. */
const TOLERANCE = 1e-5;

/**
 * Largest ram force (N/mm, beam value without FORCE_FACTOR) on the way to `last`. The force rises, passes one rounded
 * top and falls; where wrapping makes it rise again the end counts. Sampled, then refined once on the parabola through
 * the best sample and its neighbours: the top is flat, so that is good to a thousandth.
 */
export function peakBeamForce(setup: BendSetup, last: LoadedPose): number {
  const force: number[] = [];
  let guess = 1 / setup.noseRadius;
  for (let i = SAMPLES - 1; i >= 1; i--) {
    const pose = loadedPose(setup, (last.halfAngle * i) / SAMPLES, guess, TOLERANCE);
    guess = pose.path.end.curvature;
    force[i] = pose.force;
  }
  force[0] = 0;
  force[SAMPLES] = last.force;
  const best = force.indexOf(Math.max(...force));
  const middle = Math.min(best, SAMPLES - 1);
  const [before, top, after] = [force[middle - 1]!, force[middle]!, force[middle + 1]!];
  const fraction = (middle + (before - after) / (2 * (before - 2 * top + after))) / SAMPLES;
  if (!(fraction > 0 && fraction < 1)) return force[best]!;
  return Math.max(force[best]!, loadedPose(setup, last.halfAngle * fraction, guess, TOLERANCE).force);
}
