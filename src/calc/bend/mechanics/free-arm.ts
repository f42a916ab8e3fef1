import { missing } from "../../../units/certain.ts";
import type { SectionPath } from "./section.ts";

/** The sheet between punch and die shoulder, seen from the die contact: x along the flange, y square to it. */
export interface FreeArm {
  /** Reaction of the shoulder per unit length, N/mm. */
  readonly reaction: number;
  readonly alongFlange: number;
  readonly sag: number;
  readonly length: number;
  /** Integral of the moment over the arm's length; divided by the stiffness it is the angle that springs back. */
  readonly momentLength: number;
}

/**
 * Arm that turns by `turn` (radians) from the die contact to the punch, where the path's end curvature is reached. It
 * carries only the shoulder's reaction R, inclined by the friction angle; with psi the angle of the sheet to the
 * reaction's normal, dM = R cos(psi) ds and d psi = k ds give R d(sin psi) = k dM = dPsi (derived). So
 * R = Psi(end)/(sin(turn - frictionAngle) + sin(frictionAngle)) and every length is one quadrature over the moment.
 */
export function freeArm(path: SectionPath, turn: number, frictionAngle: number): FreeArm {
  const sinFriction = Math.sin(frictionAngle);
  const cosFriction = Math.cos(frictionAngle);
  const reaction = path.end.complementary / (Math.sin(turn - frictionAngle) + sinFriction);
  let alongFlange = 0;
  let sag = 0;
  let length = 0;
  let momentLength = 0;
  for (let i = 0; i < path.moment.length; i++) {
    const sinPsi = (path.complementary[i] ?? missing()) / reaction - sinFriction;
    const cosPsi = Math.sqrt(1 - sinPsi * sinPsi);
    const ds = (path.momentStep[i] ?? missing()) / (reaction * cosPsi);
    alongFlange += ds * (cosPsi * cosFriction - sinPsi * sinFriction);
    sag += ds * (sinPsi * cosFriction + cosPsi * sinFriction);
    length += ds;
    momentLength += (path.moment[i] ?? missing()) * ds;
  }
  return { reaction, alongFlange, sag, length, momentLength };
}
