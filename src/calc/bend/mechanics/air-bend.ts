import {
  type Degrees,
  degrees,
  type Millimeters,
  mm,
  type NewtonsPerMillimeter,
  newtonsPerMillimeter,
  type Ratio,
} from "../../../units/quantity.ts";
import type { AirBendInput } from "./air-bend-input.ts";
import type { BendSetup } from "./bend-setup.ts";
import type { LoadedPose } from "./loaded-pose.ts";
import { peakBeamForce } from "./peak-force.ts";
import { FOLDED_STROKE, FORCE_FACTOR, punchTip } from "./punch-tip.ts";
import { unloadedShape } from "./unloaded-shape.ts";

/** One air bend. Angles are the angle the sheet is turned through; forces are per millimeter of bend length. */
export interface AirBend {
  /** Whether the punch touches at a point or the sheet wraps its nose. */
  readonly regime: "point" | "wrapped";
  /** Punch travel from first contact. */
  readonly stroke: Millimeters;
  readonly loadedAngle: Degrees;
  readonly springback: Degrees;
  readonly finalAngle: Degrees;
  /** Force at the stroke. */
  readonly force: NewtonsPerMillimeter;
  /** Largest force on the way to the stroke. */
  readonly peakForce: NewtonsPerMillimeter;
  /** Tightest inside radius of the finished bend, at its center. */
  readonly centerRadius: Millimeters;
  /** Inside radius of the circle tangent to both flanges of the finished bend: the one a gauge reads. */
  readonly tangentRadius: Millimeters;
  /** Outside flanges to the virtual sharp, less the flat length. */
  readonly bendDeduction: Millimeters;
  /** The K that gives this deduction on the tangent radius: 0.41-0.44 in usual dies, less in wide ones. */
  readonly neutralFraction: Ratio;
  /** Where the solver found it, for a bend near by to start from. */
  readonly solution: SolvedAt;
}

export interface SolvedAt {
  /** Loaded half angle, radians. */
  readonly halfAngle: number;
  /** Curvature under the punch, 1/mm. */
  readonly curvature: number;
  /** Share of the loaded angle at which the force was largest. */
  readonly peakShare: Ratio;
  /** Half angle, radians, still left before nose and shoulder would nip the sheet. */
  readonly room: number;
}

/*
 * Neutral axis of the middle line, share of the thickness from the inside: NEUTRAL_WIDE far from the sheet, less the
 * tighter the bend, K = 0.489 - 0.071 t/(R + t/2). Fitted with the constants of punch-tip.ts and on the same cases.
 */
const NEUTRAL_WIDE = 0.489;
const NEUTRAL_TIGHT = 0.071;

const inDegrees = (angle: number) => degrees((angle * 180) / Math.PI);

/** Stroke of a pose: the beam's depth, with what the sheet under the nose does that a beam does not. */
export function strokeOf(setup: BendSetup, pose: LoadedPose, exponent: number): number {
  const { rounding, folding } = punchTip(setup, pose, exponent);
  return pose.depth - rounding + FOLDED_STROKE * folding;
}

/** All answers at one loaded pose; undefined while the sheet would spring back flat. */
export function airBendAt(
  input: AirBendInput,
  setup: BendSetup,
  pose: LoadedPose,
  peakShare?: Ratio,
): AirBend | undefined {
  const { section } = setup;
  const { end } = pose.path;
  const half = pose.halfAngle - pose.springback;
  if (!(half > 1e-4) || end.curvature <= section.elasticCurvature * 1.001) return undefined;
  const { rounding, folding } = punchTip(setup, pose, input.hardening.exponent);
  const t = input.thickness;
  const shape = unloadedShape(setup, pose);
  const tan = Math.tan(half);
  // A circle whose apex lies farther from the corner by a gap has a radius larger by gap / (1/cos - 1).
  const change = ((rounding - folding) * Math.cos(half)) / (2 * Math.sin(half / 2) ** 2);
  const tangentRadius = shape.radius + change;
  const axis = NEUTRAL_WIDE - (NEUTRAL_TIGHT * t) / (Math.max(0, tangentRadius) + t / 2);
  const bendDeduction = shape.middleDeduction + (1 - 2 * axis) * t * half + 2 * change * (tan - half);
  const residualCurvature = end.curvature - end.moment / section.stiffness;
  const peak = peakBeamForce(setup, pose, peakShare);
  return {
    regime: pose.regime,
    stroke: mm(strokeOf(setup, pose, input.hardening.exponent)),
    loadedAngle: inDegrees(2 * pose.halfAngle),
    springback: inDegrees(2 * pose.springback),
    finalAngle: inDegrees(2 * half),
    force: newtonsPerMillimeter(FORCE_FACTOR * pose.force),
    peakForce: newtonsPerMillimeter(FORCE_FACTOR * peak.force),
    centerRadius: mm(Math.min(tangentRadius, 1 / residualCurvature - t / 2)),
    tangentRadius: mm(tangentRadius),
    bendDeduction: mm(bendDeduction),
    neutralFraction: ((tangentRadius + t) * tan - bendDeduction / 2 - half * tangentRadius) / (half * t),
    solution: {
      halfAngle: pose.halfAngle,
      curvature: end.curvature,
      peakShare: peak.share,
      room: setup.largestHalfAngle - pose.halfAngle,
    },
  };
}
