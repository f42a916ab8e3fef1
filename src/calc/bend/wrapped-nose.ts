import { DIE_ANGLE, FRICTION, NOSE_OF_THICKNESS } from "../../data/bend-rules.ts";
import {
  degrees,
  type Megapascals,
  type Millimeters,
  mm,
  type Newtons,
  newtons,
  radians,
} from "../../units/quantity.ts";
import { factValue } from "../material/fact-value.ts";
import { LEAST_ARM, UPRIGHT } from "./mechanics/bend-setup.ts";
import { shoulderRadius } from "./shoulder-radius.ts";
import type { AskedBend } from "./solved-air-bend.ts";

/** A bend whose sheet lies around nose and shoulders and is straight between them: the most that they can wrap. */
interface WrappedNose {
  /** Straight sheet left between nose and shoulder at the loaded angle; 0 or less: they nip it. */
  readonly freeSheet: Millimeters;
  /** The widest nose that leaves so much of it. */
  readonly widestNose: (free: Millimeters) => Millimeters;
  readonly force: Newtons;
}

const PLANE_STRAIN = 2 / Math.sqrt(3); // von Mises, plane strain (derived)

/**
 * Largest force of a bend that wraps nose and shoulders, which shortens the arm the force bends with: fully plastic at
 * S = 2/sqrt(3) UTS, c = rp + rd + t from the nose's center to the shoulder's, xc = V/2 + rd tan(45 - dieAngle/4),
 * F(a) = S t^2/2 cos a (cos a + mu sin a) L/(xc - c sin a), at most where sin a = (xc - sqrt(xc^2 - c^2))/c on the way to
 * the loaded half angle, the wanted one over 1 - 3 S (rp + t/2)/(E' t). Derived (statics of a rigid-plastic strip); never
 * under 0.83 of the solved bends of the sample's tools, and over them by up to a half, in annealed stainless by more.
 */
export function wrappedNose(
  { material, bendAngle, tools }: AskedBend,
  thickness: Millimeters,
  tensile: Megapascals,
  bendLength: Millimeters,
): WrappedNose {
  const { dieOpening, dieAngle = degrees(DIE_ANGLE.value) } = tools;
  const nose = tools.punchNose ?? NOSE_OF_THICKNESS.value * thickness;
  const shoulder = shoulderRadius(tools.dieShoulder, dieOpening);
  const center = dieOpening / 2 + shoulder * Math.tan(Math.PI / 4 - radians(dieAngle) / 4);
  const apart = nose + shoulder + thickness;
  const flow = PLANE_STRAIN * tensile;
  const { modulus, poisson } = material;
  const stiffness = modulus ? factValue(modulus, "stress") / (1 - (poisson?.value ?? 0) ** 2) : Infinity;
  const springsBack = (3 * flow * (nose + thickness / 2)) / (stiffness * thickness);
  const half = springsBack < 1 ? Math.min(UPRIGHT, radians(bendAngle) / 2 / (1 - springsBack)) : UPRIGHT;
  const atMost = apart < center ? (center - Math.sqrt(center ** 2 - apart ** 2)) / apart : 1;
  const sin = Math.min(Math.sin(half), atMost);
  const arm = Math.max(center - apart * sin, LEAST_ARM * center);
  const turned = 1 - sin ** 2 + FRICTION.value * sin * Math.sqrt(1 - sin ** 2);
  const [sinHalf, cosHalf] = [Math.sin(half), Math.cos(half)];
  return {
    freeSheet: mm((center - apart * sinHalf) / cosHalf),
    widestNose: (free) => mm(Math.max(0, (center - free * cosHalf) / sinHalf - shoulder - thickness)),
    force: newtons((flow * thickness ** 2 * turned * bendLength) / (2 * arm)),
  };
}
