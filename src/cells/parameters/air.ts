/** What every AIR function takes about one air bend: sheet, angle, die and punch. */
import { AIR_METHODS } from "../../calc/bend/air-bend.ts";
import { NOSE_OF_THICKNESS, SHOULDER_OF_OPENING } from "../../data/bend-rules.ts";
import type { Degrees, Millimetres } from "../../units/quantity.ts";
import { showNumber } from "../../units/show.ts";
import { angle, bendAngle } from "./angle.ts";
import { choice } from "./choice.ts";
import { length, thickness } from "./length.ts";
import { material } from "./material.ts";

export const airSheet = () => ({ material: material(), thickness: thickness() });

export const dieOpening = () => length({ description: "Opening of the V die" });

export const punchNose = () =>
  length({
    description: `Nose radius of the punch; blank means not known, and the mechanics takes ${NOSE_OF_THICKNESS.value} of the thickness`,
    zero: true,
    fallback: undefined as Millimetres | undefined,
  });

export const method = () =>
  choice({
    description:
      '"rule": a share of the die opening by material, as shops reckon; "mechanics": the bend solved from strength and hardening',
    words: AIR_METHODS,
    fallback: "rule",
  });

export const dieFaces = () => ({
  dieAngle: angle({
    description: "Included angle of the die; blank for 85 degrees",
    rule: { from: 20, to: 150 },
    fallback: undefined as Degrees | undefined,
  }),
  dieShoulder: length({
    description: `Shoulder radius of the die; blank for ${showNumber(SHOULDER_OF_OPENING.value, 2)} of the opening`,
    zero: true,
    fallback: undefined as Millimetres | undefined,
  }),
});

/** Die, punch and method, in the order of the arguments. */
export const airTools = () => ({ dieOpening: dieOpening(), punchNose: punchNose(), method: method(), ...dieFaces() });

export const airParameters = () => ({ ...airSheet(), bendAngle: bendAngle(), ...airTools() });

/** The same without a method, for answers that only the mechanics has. */
export const mechanicsParameters = () => ({
  ...airSheet(),
  bendAngle: bendAngle(),
  dieOpening: dieOpening(),
  punchNose: punchNose(),
  ...dieFaces(),
});
