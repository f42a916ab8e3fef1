import type { BendSetup } from "./bend-setup.ts";
import { type LoadedPose, loadedPose } from "./loaded-pose.ts";

const SAMPLES = 7;

/**
 * Largest ram force (N/mm, beam value without FORCE_FACTOR) on the way to `last`. The force rises, passes one rounded
 * top and falls; where wrapping makes it rise again the end counts. Sampled, then the best sample is refined on the
 * parabola through its neighbours: the top is flat, so one refinement is good to about 1e-4.
 */
export function peakBeamForce(setup: BendSetup, last: LoadedPose): number {
  const force: number[] = [];
  let guess = 1 / setup.noseRadius;
  for (let i = SAMPLES - 1; i >= 1; i--) {
    const pose = loadedPose(setup, (last.halfAngle * i) / SAMPLES, guess);
    guess = pose.path.end.curvature;
    force[i] = pose.force;
  }
  force[0] = 0;
  force[SAMPLES] = last.force;
  const best = force.indexOf(Math.max(...force));
  if (best === SAMPLES) return last.force;
  const [before, top, after] = [force[best - 1]!, force[best]!, force[best + 1]!];
  const offset = (before - after) / (2 * (before - 2 * top + after));
  return Math.max(top, loadedPose(setup, (last.halfAngle * (best + offset)) / SAMPLES).force);
}
