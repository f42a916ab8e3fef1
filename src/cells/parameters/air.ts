/** What every AIR function takes about one air bend: sheet, angle, die and punch. */
import type { Millimetres } from "../../units/quantity.ts";
import { bendAngle } from "./angle.ts";
import { choice } from "./choice.ts";
import { length, thickness } from "./length.ts";
import { material } from "./material.ts";

export const AIR_METHODS = ["rule"] as const;

export const airSheet = () => ({ material: material(), thickness: thickness() });

export const airTools = () => ({
  dieOpening: length({ description: "Opening of the V die" }),
  punchNose: length({
    description: "Nose radius of the punch; blank means not known",
    zero: true,
    fallback: undefined as Millimetres | undefined,
  }),
  method: choice({
    description: '"rule": a share of the die opening by material',
    words: AIR_METHODS,
    fallback: "rule",
  }),
});

export const airParameters = () => ({ ...airSheet(), bendAngle: bendAngle(), ...airTools() });
