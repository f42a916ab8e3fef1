import { type Degrees, radians } from "../../../units/quantity.ts";
import { allowance, type BentPart, bendOf } from "./part.ts";
import type { Press } from "./press.ts";

/** Where the sheet of one hit sits on the die at any angle. Lengths in mm, angles in radians. */
export interface Seat {
  /** Half of the wanted bend angle, and half of the angle under load (springback added). */
  readonly free: number;
  readonly loaded: number;
  readonly zoneLength: number;
  /** Radius of the middle line of the round at half angle a. */
  readonly radius: (a: number) => number;
  /** Height of the corner the outside faces would make. */
  readonly corner: (a: number) => number;
  /** Height of the punch tip. */
  readonly tip: (a: number) => number;
  /** Slope length from that corner to where the outside face rests on the shoulder. */
  readonly restsAt: (a: number) => number;
}

/** Middle of the shoulder round beside the V: x_c = V / 2 + rd tan((90 - dieAngle / 2) / 2), at depth rd (derived). */
export const shoulderCenter = (press: Press): number =>
  press.dieOpening / 2 + press.shoulderRadius * Math.tan((Math.PI / 2 - radians(press.dieAngle) / 2) / 2);

/**
 * Air bending: both flanges straight, tangent to the round and resting on the shoulders, the punch tip in the round.
 * The fiber that keeps its length, at depth BA / A - r, keeps it at every angle, so the round is BA / angle - depth
 * (derived).
 */
export function seat(part: BentPart, bendNumber: number, springback: Degrees, press: Press): Seat {
  const bend = bendOf(part, bendNumber);
  const angle = Math.abs(radians(bend.angle));
  const zoneLength = allowance(part, bend);
  const neutralDepth = zoneLength / angle - bend.insideRadius;
  const t = part.thickness;
  const rd = press.shoulderRadius;
  const center = shoulderCenter(press);
  const inside = (a: number) => Math.max(0, zoneLength / (2 * a) - neutralDepth);
  const corner = (a: number) => rd / Math.cos(a) - rd - center * Math.tan(a);
  return {
    free: angle / 2,
    loaded: (angle + radians(springback)) / 2,
    zoneLength,
    radius: (a) => inside(a) + t / 2,
    corner,
    tip: (a) => (a > 1e-9 ? corner(a) + t / Math.cos(a) + inside(a) * (1 / Math.cos(a) - 1) : t),
    restsAt: (a) => (center - rd * Math.sin(a)) / Math.cos(a),
  };
}

/** Where the middle line leaves the round, and its direction: the frame in which a chain of flanges is drawn. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
}

/** Sheet flat on the die, lifted by `lift`. */
export const flatPose = (s: Seat, t: number, lift = 0): Pose => ({ x: s.zoneLength / 2, y: t / 2 + lift, angle: 0 });

/** Bent to half angle a in the die. */
export const bentPose = (s: Seat, t: number, a: number): Pose =>
  a > 1e-9 ? turnedPose(s, t, a, a, s.corner(a)) : flatPose(s, t);

/** Bent to half angle a, outside corner at height `corner`, this side standing at `slope`. */
export function turnedPose(s: Seat, t: number, a: number, slope: number, corner: number): Pose {
  const tangent = (s.radius(a) + t / 2) * Math.tan(a);
  const [cos, sin] = [Math.cos(slope), Math.sin(slope)];
  return { x: tangent * cos - (t / 2) * sin, y: corner + tangent * sin + (t / 2) * cos, angle: slope };
}
