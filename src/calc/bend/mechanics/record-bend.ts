import { step, type Working } from "../../../units/working.ts";
import type { AirBend } from "./air-bend.ts";
import type { AirBendInput } from "./air-bend-input.ts";

const MECHANICS = "air-bend mechanics (derived; compared with finite elements, not with measured bends)";

/** Writes what every answer of the mechanics rests on: the hardening law, the contact, the angle that springs back. */
export function recordBend(input: AirBendInput, bend: AirBend, work: Working | undefined): void {
  if (work === undefined) return;
  const { hardening } = input;
  step(work, "K", "strength coefficient of the hardening law", hardening.strength, "MPa", "input");
  step(work, "n", "hardening exponent", hardening.exponent, "", "input");
  step(work, "V/t", "die opening over thickness", input.dieOpening / input.thickness, "", "input");
  step(work, "mu", "friction on the die shoulder", input.friction, "", "input");
  step(work, "", "contact under the punch", bend.regime, "", MECHANICS);
  step(work, "2a", "bend angle under load", bend.loadedAngle, "deg", MECHANICS);
  step(work, "dA", "angle that springs back", bend.springback, "deg", MECHANICS);
}

export { MECHANICS };
