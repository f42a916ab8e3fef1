import type { Material } from "../../data/materials/material.ts";
import { type Degrees, degrees, type Millimeters, radians } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { factValue } from "../material/fact-value.ts";

const PLANE_STRAIN = 2 / Math.sqrt(3); // von Mises, plane strain (derived)

/**
 * Springback of an air bend where no hardening data are known: elastic unloading of the two free arms between punch and
 * die. Fully plastic moment M = S t^2 / 4 at the punch with S = 2/sqrt(3) UTS, falling evenly to nothing at the die,
 * E' I = E/(1 - nu^2) t^3 / 12, arm V / (2 sin(included / 2)): angle = 3 S arm / (E' t) in all. Derived; an estimate of
 * the right size only. undefined where strength or modulus is not known.
 */
export function estimateSpringback(
  material: Material,
  thickness: Millimeters,
  dieOpening: Millimeters,
  bendAngle: Degrees,
  work?: Working,
): Degrees | undefined {
  const { tensileTypical, modulus, poisson } = material;
  if (!tensileTypical || !modulus) return undefined;
  const flow = PLANE_STRAIN * factValue(tensileTypical, "stress");
  const stiffness = factValue(modulus, "stress") / (1 - (poisson?.value ?? 0) ** 2);
  const arm = dieOpening / (2 * Math.sin(radians(degrees(180 - bendAngle)) / 2));
  const angle = degrees((((3 * flow * arm) / (stiffness * thickness)) * 180) / Math.PI);
  return step(work, "s", "springback, estimated from the free arms", angle, "deg", "3 S arm / (E' t) (derived)");
}
