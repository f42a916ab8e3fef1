/** What every AIR function takes about one air bend: sheet, angle, die and punch. */
import { AIR_METHODS, type AirMethod } from "../../calc/bend/air-bend.ts";
import type { KChoice } from "../../calc/bend/neutral-axis.ts";
import { NOSE_OF_THICKNESS, SHOULDER_OF_OPENING } from "../../data/bend-rules.ts";
import { isBlank } from "../../units/cell.ts";
import type { Degrees, Millimeters } from "../../units/quantity.ts";
import { showNumber } from "../../units/show.ts";
import type { CellParameter } from "../record/record.ts";
import { angle, bendAngle } from "./angle.ts";
import { choice } from "./choice.ts";
import { length, thickness } from "./length.ts";
import { material } from "./material.ts";
import { k } from "./neutral-axis.ts";

export const airSheet = () => ({ material: material(), thickness: thickness() });

export const dieOpening = () => length({ description: "Opening of the V die" });

export const punchNose = () =>
  length({
    description: `Nose radius of the punch; blank means not known, and the mechanics takes ${NOSE_OF_THICKNESS.value} of the thickness`,
    zero: true,
    fallback: undefined as Millimeters | undefined,
  });

/** Blank means what the edition of the row's material says. */
export const method = (): CellParameter<AirMethod> => {
  const words = choice({
    description:
      '"best": the bend solved from strength and hardening where that was compared, else the rule (blank under edition 2026.2); "rule": a share of the die opening by material, as shops figure it (blank under 2026.1); "mechanics": solved wherever it can be',
    words: AIR_METHODS,
  });
  return {
    ...words,
    optional: true,
    read: (given, name, context) =>
      isBlank(given) ? (context.material?.airMethod ?? "rule") : words.read(given, name, context),
  };
};

/** Blank leaves the neutral axis to the method: the solved bend's own, or 0.42 by rule. */
export const airNeutralAxis = (): CellParameter<KChoice | undefined> => {
  const given = k();
  return {
    ...given,
    description: `${given.description}; blank: the solved bend's own, 0.42 by rule`,
    default: null,
    read: (value, name, context) => (isBlank(value) ? undefined : given.read(value, name, context)),
  };
};

export const dieFaces = () => ({
  dieAngle: angle({
    description: "Included angle of the die, which the loaded sheet must not pass; blank when not known",
    rule: { from: 20, to: 150 },
    fallback: undefined as Degrees | undefined,
  }),
  dieShoulder: length({
    description: `Shoulder radius of the die; blank for ${showNumber(SHOULDER_OF_OPENING.value, 2)} of the opening`,
    zero: true,
    fallback: undefined as Millimeters | undefined,
  }),
});

export const punchAngle = () =>
  angle({
    description: "Included angle of the punch, which the loaded sheet must not pass; blank when not known",
    rule: { from: 10, to: 150 },
    fallback: undefined as Degrees | undefined,
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
