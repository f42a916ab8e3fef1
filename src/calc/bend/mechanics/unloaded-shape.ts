import { missing } from "../../../units/certain.ts";
import type { BendSetup } from "./bend-setup.ts";
import { integralToNodes } from "./gauss.ts";
import type { LoadedPose } from "./loaded-pose.ts";
import { ELASTIC_POINTS, PLASTIC_RULE } from "./section.ts";

const TO_NODES = integralToNodes(PLASTIC_RULE);

const dot = (weights: readonly number[], values: readonly number[]) => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += (weights[i] ?? missing()) * (values[i] ?? missing());
  return sum;
};

/** The middle line after springback, before the corrections of punchTip. */
interface UnloadedShape {
  /** Inside radius (mm) of the circle tangent to both flanges. */
  readonly radius: number;
  /** Outside flanges to the virtual sharp, less the length of the middle line. */
  readonly middleDeduction: number;
}

/**
 * Shape of the finished bend from the residual curvature k - M/(E'I) at each place (derived). The center's distance h
 * from the flange's line is r (1 - cos theta/2) for a circle: that is the radius a gauge reads. Seen along the flange
 * the center lies at x; the corner of the outside faces at x + (h + t/2) tan(theta/2), and the line itself is S long:
 * 2 (x + (h + t/2) tan(theta/2) - S) is what the flanges have over the flat if the middle keeps its length.
 */
export function unloadedShape(setup: BendSetup, pose: LoadedPose): UnloadedShape {
  const { section, noseRadius } = setup;
  const { path, arm, wrapAngle } = pose;
  const sinFriction = Math.sin(setup.frictionAngle);
  const turnRate: number[] = [];
  const steps: number[] = [];
  for (let i = ELASTIC_POINTS; i < path.moment.length; i++) {
    const sinPsi = (path.complementary[i] ?? missing()) / arm.reaction - sinFriction;
    const ds = (path.momentStep[i] ?? missing()) / (arm.reaction * Math.sqrt(1 - sinPsi * sinPsi));
    steps.push(ds);
    turnRate.push(
      (((path.curvature[i] ?? missing()) - (path.moment[i] ?? missing()) / section.stiffness) * ds) /
        (PLASTIC_RULE.weights[i - ELASTIC_POINTS] ?? missing()),
    );
  }
  // The elastic part of the arm springs back straight: it lengthens flange and middle line alike. What the line is
  // longer than its shadow on the flange is summed as 2 sin^2, so that shallow bends keep their digits.
  let height = 0;
  let excess = 0;
  const add = (slope: number, length: number) => {
    height += Math.sin(slope) * length;
    excess += 2 * Math.sin(slope / 2) ** 2 * length;
  };
  for (let i = 0; i < steps.length; i++) add(dot(TO_NODES[i] ?? missing(), turnRate), steps[i] ?? missing());
  let slope = dot(PLASTIC_RULE.weights, turnRate);
  const wrapLength = wrapAngle * noseRadius;
  const turn = (path.end.curvature - path.end.moment / section.stiffness) * wrapLength;
  const chord = turn > 1e-9 ? (Math.sin(turn / 2) / (turn / 2)) * wrapLength : wrapLength;
  add(slope + turn / 2, chord);
  excess += wrapLength - chord;
  slope += turn;
  const t = section.thickness;
  return {
    radius: height / (2 * Math.sin(slope / 2) ** 2) - t / 2,
    middleDeduction: 2 * ((height + t / 2) * Math.tan(slope) - excess),
  };
}
