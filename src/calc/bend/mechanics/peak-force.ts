import { itemAt } from "../../../units/certain.ts";
import type { BendSetup } from "./bend-setup.ts";
import { type LoadedPose, loadedPose } from "./loaded-pose.ts";

const SAMPLES = 8;

/** Enough for a force to 1e-5, and a third fewer steps than for the pose itself. */
const TOLERANCE = 1e-5;

interface PeakForce {
  /** N/mm, beam value without FORCE_FACTOR. */
  readonly force: number;
  /** Share of the last pose's angle at which it occurs. */
  readonly share: number;
}

/**
 * Largest ram force on the way to `last`. The force rises, passes one rounded top and falls; where wrapping makes it rise
 * again the end counts. Sampled, then refined once on the parabola through the best sample and its neighbors: the top
 * is flat, so that is good to a thousandth. For a bend near one already solved, `nearShare` says where its top is.
 */
export function peakBeamForce(setup: BendSetup, last: LoadedPose, nearShare?: number): PeakForce {
  const end = { force: last.force, share: 1 };
  const at = (share: number, guess: number): PeakForce => ({
    force: loadedPose(setup, last.halfAngle * share, guess, TOLERANCE).force,
    share,
  });
  const larger = (one: PeakForce, other: PeakForce) => (other.force > one.force ? other : one);
  if (nearShare !== undefined) return nearShare < 1 ? larger(end, at(nearShare, last.path.end.curvature)) : end;
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
  const middle = Math.max(1, Math.min(best, SAMPLES - 1));
  const [before, top, after] = [itemAt(force, middle - 1), itemAt(force, middle), itemAt(force, middle + 1)];
  const fraction = (middle + (before - after) / (2 * (before - 2 * top + after))) / SAMPLES;
  const sampled = { force: itemAt(force, best), share: best / SAMPLES };
  return fraction > 0 && fraction < 1 ? larger(sampled, at(fraction, guess)) : sampled;
}
