import { DIE_ANGLE, FRICTION, K_DEFAULT, NOSE_OF_THICKNESS, SHOULDER_OF_OPENING } from "../../data/bend-rules.ts";
import { cite, type Fact } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import { type Degrees, degrees, type Millimetres, megapascals, mm, type Ratio } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { step, type Working } from "../../units/working.ts";
import { factValue } from "../material/fact-value.ts";
import { airRadiusByRule } from "./air-radius.ts";
import { hardeningOf } from "./material-hardening.ts";
import type { AirBendInput } from "./mechanics/air-bend-input.ts";
import { airRadius } from "./mechanics/air-radius.ts";

export const AIR_METHODS = ["rule", "mechanics"] as const;
export type AirMethod = (typeof AIR_METHODS)[number];

/** Die and punch of an air bend. What is left out is taken as the working says. */
export interface AirTools {
  readonly dieOpening: Millimetres;
  readonly dieAngle?: Degrees | undefined;
  readonly dieShoulder?: Millimetres | undefined;
  readonly punchNose?: Millimetres | undefined;
  readonly friction?: Ratio | undefined;
}

/** Sheet and tools as the mechanics wants them. #N/A for a material without modulus or hardening. */
export function mechanicsInput(
  material: Material,
  thickness: Millimetres,
  tools: AirTools,
  work?: Working,
): AirBendInput {
  const { modulus, poisson, anisotropy } = material;
  if (!modulus || !poisson)
    throw noAnswer(
      "material",
      "one with modulus and Poisson ratio",
      material.name,
      'add them to the data range, or use method "rule"',
    );
  const assumed = (symbol: string, meaning: string, value: number, unit: string, fact: Fact) =>
    step(work, symbol, `${meaning}, not given: taken as`, value, unit, cite(fact));
  return {
    hardening: hardeningOf(material, work),
    modulus: megapascals(factValue(modulus, "stress")),
    poisson: poisson.value,
    ...(anisotropy ? { anisotropy: anisotropy.value } : {}),
    thickness,
    dieOpening: tools.dieOpening,
    dieShoulder:
      tools.dieShoulder ??
      mm(assumed("rd", "die shoulder radius", SHOULDER_OF_OPENING.value * tools.dieOpening, "mm", SHOULDER_OF_OPENING)),
    dieAngle: tools.dieAngle ?? degrees(assumed("die angle", "die angle", DIE_ANGLE.value, "deg", DIE_ANGLE)),
    punchNose:
      tools.punchNose ??
      mm(assumed("rp", "punch nose radius", NOSE_OF_THICKNESS.value * thickness, "mm", NOSE_OF_THICKNESS)),
    friction: tools.friction ?? assumed("mu", "friction on the die shoulder", FRICTION.value, "", FRICTION),
  };
}

/**
 * Inside radius of the circle tangent to both flanges: what a gauge reads and what a flat is computed with.
 * "mechanics" solves the bend; "rule" takes a share of the opening.
 */
export function airBentRadius(
  material: Material,
  thickness: Millimetres,
  bendAngle: Degrees,
  tools: AirTools,
  method: AirMethod,
  work?: Working,
): Millimetres {
  if (method === "rule") return airRadiusByRule(material, tools.dieOpening, tools.punchNose, work).expected;
  return airRadius(mechanicsInput(material, thickness, tools, work), bendAngle, work);
}

/** The neutral axis of air bends, on the tangent radius; any other k is the caller's own wish. */
export const AIR_K = K_DEFAULT.value;
