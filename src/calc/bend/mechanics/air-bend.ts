import {
  type Degrees,
  degrees,
  type Millimetres,
  mm,
  type NewtonsPerMillimetre,
  newtonsPerMillimetre,
} from "../../../units/quantity.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import type { BendSetup } from "./bend-setup.ts";
import type { LoadedPose } from "./loaded-pose.ts";
import { peakBeamForce } from "./peak-force.ts";
import { FORCE_FACTOR, punchTip } from "./punch-tip.ts";
import { unloadedRadius } from "./unloaded-radius.ts";

/** One air bend. Angles are the angle the sheet is turned through; forces are per millimetre of bend length. */
export interface AirBend {
  /** Whether the punch touches at a point or the sheet wraps its nose. */
  readonly regime: "point" | "wrapped";
  /** Punch travel from first contact. */
  readonly stroke: Millimetres;
  readonly loadedAngle: Degrees;
  readonly springback: Degrees;
  readonly finalAngle: Degrees;
  /** Force at the stroke. */
  readonly force: NewtonsPerMillimetre;
  /** Largest force on the way to the stroke. */
  readonly peakForce: NewtonsPerMillimetre;
  /** Tightest inside radius of the finished bend, at its centre. */
  readonly centreRadius: Millimetres;
  /** Inside radius of the circle tangent to both flanges of the finished bend: the one a gauge reads. */
  readonly tangentRadius: Millimetres;
  /** Outside flanges to the virtual sharp, less the flat length. */
  readonly bendDeduction: Millimetres;
}

/** Neutral-axis fraction on the tangent radius: 0.415-0.438 in the finite-element cases; fitted on A, B, C, E, G, H, I. */
export const NEUTRAL_FRACTION = 0.42;

const inDegrees = (angle: number) => degrees((angle * 180) / Math.PI);

/** Stroke of a pose: the beam's depth, less what rounding the peak keeps the centre above the flanges' corner. */
export function strokeOf(setup: BendSetup, pose: LoadedPose, exponent: number): number {
  return pose.depth - punchTip(setup, pose, exponent).rounding * (1 / Math.cos(pose.halfAngle) - 1);
}

/** All answers at one loaded pose; undefined while the sheet would spring back flat. */
export function airBendAt(input: AirBendInput, setup: BendSetup, pose: LoadedPose): AirBend | undefined {
  const { section } = setup;
  const { end } = pose.path;
  const half = pose.halfAngle - pose.springback;
  if (!(half > 1e-4) || end.curvature <= section.elasticCurvature * 1.001) return undefined;
  const { rounding, folding } = punchTip(setup, pose, input.hardening.exponent);
  const t = input.thickness;
  const tangentRadius = unloadedRadius(setup, pose) + rounding - folding;
  const residualCurvature = end.curvature - end.moment / section.stiffness;
  return {
    regime: pose.regime,
    stroke: mm(strokeOf(setup, pose, input.hardening.exponent)),
    loadedAngle: inDegrees(2 * pose.halfAngle),
    springback: inDegrees(2 * pose.springback),
    finalAngle: inDegrees(2 * half),
    force: newtonsPerMillimetre(FORCE_FACTOR * pose.force),
    peakForce: newtonsPerMillimetre(FORCE_FACTOR * peakBeamForce(setup, pose)),
    centreRadius: mm(Math.min(tangentRadius, 1 / residualCurvature - t / 2)),
    tangentRadius: mm(tangentRadius),
    bendDeduction: mm(2 * (tangentRadius + t) * Math.tan(half) - 2 * half * (tangentRadius + NEUTRAL_FRACTION * t)),
  };
}
