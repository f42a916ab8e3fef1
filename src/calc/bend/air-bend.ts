import { DIE_ANGLE, FRICTION, NOSE_OF_THICKNESS } from "../../data/bend-rules.ts";
import { cite, type Fact } from "../../data/fact.ts";
import type { Material } from "../../data/materials/material.ts";
import { type Degrees, degrees, type Millimeters, megapascals, mm, type Ratio } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { refuseCutOnly } from "../material/cut-only.ts";
import { factValue } from "../material/fact-value.ts";
import { hardeningOf, unsolvable } from "./material-hardening.ts";
import type { AirBendInput } from "./mechanics/air-bend-input.ts";
import { shoulderRadius } from "./shoulder-radius.ts";

/** "best" is the mechanics where it was compared, else the rule, and between the two a mixture of both. */
export const AIR_METHODS = ["best", "rule", "mechanics"] as const;
export type AirMethod = (typeof AIR_METHODS)[number];

/** Die and punch of an air bend. What is left out is taken as the working says. */
export interface AirTools {
  readonly dieOpening: Millimeters;
  readonly dieAngle?: Degrees | undefined;
  readonly dieShoulder?: Millimeters | undefined;
  readonly punchNose?: Millimeters | undefined;
  readonly punchAngle?: Degrees | undefined;
  readonly friction?: Ratio | undefined;
}

const asItIs = (fact: Fact) => ({ value: fact.value, fact });

/** Sheet and tools as the mechanics needs them. #N/A for a material without modulus or hardening. */
export function mechanicsInput(
  material: Material,
  thickness: Millimeters,
  tools: AirTools,
  work?: Working,
): AirBendInput {
  refuseCutOnly(material);
  const { modulus, poisson, anisotropy } = material;
  if (!modulus || !poisson) throw unsolvable(material);
  const given = (symbol: string, meaning: string, value: number, unit: string, source: string) =>
    step(work, symbol, meaning, value, unit, source);
  /** A figure of the call, or what is taken where the call leaves it out. */
  const tool = (
    symbol: string,
    meaning: string,
    value: number | undefined,
    unit: string,
    usual: { readonly value: number; readonly fact: Fact },
  ) =>
    value === undefined
      ? given(symbol, `${meaning}, not given: taken as`, usual.value, unit, cite(usual.fact))
      : given(symbol, meaning, value, unit, "given");
  const nose = { value: NOSE_OF_THICKNESS.value * thickness, fact: NOSE_OF_THICKNESS };
  given("t", "thickness", thickness, "mm", "given");
  given("V", "die opening", tools.dieOpening, "mm", "given");
  return {
    hardening: hardeningOf(material, work),
    modulus: megapascals(given("E", "modulus", factValue(modulus, "stress"), "MPa", cite(modulus))),
    poisson: given("nu", "Poisson ratio", poisson.value, "", cite(poisson)),
    ...(anisotropy ? { anisotropy: given("r", "normal anisotropy", anisotropy.value, "", cite(anisotropy)) } : {}),
    thickness,
    dieOpening: tools.dieOpening,
    dieShoulder: shoulderRadius(tools.dieShoulder, tools.dieOpening, work),
    dieAngle: degrees(tool("die angle", "die angle", tools.dieAngle, "deg", asItIs(DIE_ANGLE))),
    punchNose: mm(tool("rp", "punch nose radius", tools.punchNose, "mm", nose)),
    friction: tool("mu", "friction on the die shoulder", tools.friction, "", asItIs(FRICTION)),
  };
}
