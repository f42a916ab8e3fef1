import type { BendSetup } from "./bend-setup.ts";
import { integralToNodes } from "./gauss.ts";
import type { LoadedPose } from "./loaded-pose.ts";
import { ELASTIC_POINTS, PLASTIC_RULE } from "./section.ts";

const TO_NODES = integralToNodes(PLASTIC_RULE);

const dot = (weights: readonly number[], values: readonly number[]) => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += weights[i]! * values[i]!;
  return sum;
};

/**
 * Inside radius (mm) of the circle tangent to both flanges after springback, before the corrections of punchTip: the
 * centre's distance h from the flange's line is r (1 - cos theta/2) for a circle. h is the integral of sin of the
 * residual slope from the flange inwards; curvature left at each place is k - M/(E'I) (derived).
 */
export function unloadedRadius(setup: BendSetup, pose: LoadedPose): number {
  const { section, noseRadius } = setup;
  const { path, arm, wrapAngle } = pose;
  const sinFriction = Math.sin(setup.frictionAngle);
  const turnRate: number[] = [];
  const steps: number[] = [];
  for (let i = ELASTIC_POINTS; i < path.moment.length; i++) {
    const sinPsi = path.complementary[i]! / arm.reaction - sinFriction;
    const ds = path.momentStep[i]! / (arm.reaction * Math.sqrt(1 - sinPsi * sinPsi));
    steps.push(ds);
    turnRate.push(
      ((path.curvature[i]! - path.moment[i]! / section.stiffness) * ds) / PLASTIC_RULE.weights[i - ELASTIC_POINTS]!,
    );
  }
  // The elastic part of the arm springs back straight: nothing of it but its length is left.
  let height = 0;
  for (let i = 0; i < steps.length; i++) height += Math.sin(dot(TO_NODES[i]!, turnRate)) * steps[i]!;
  let slope = dot(PLASTIC_RULE.weights, turnRate);
  const wrapLength = wrapAngle * noseRadius;
  const turn = (path.end.curvature - path.end.moment / section.stiffness) * wrapLength;
  const chord = turn > 1e-9 ? (Math.sin(turn / 2) / (turn / 2)) * wrapLength : wrapLength;
  height += chord * Math.sin(slope + turn / 2);
  slope += turn;
  // 1 - cos as 2 sin^2: shallow bends keep their digits.
  return height / (2 * Math.sin(slope / 2) ** 2) - section.thickness / 2;
}
