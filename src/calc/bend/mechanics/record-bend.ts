import { step, type Working } from "../../../units/working.ts";
import type { AirBend } from "./air-bend.ts";

export const MECHANICS = "air-bend mechanics (derived; compared with finite elements and published measured bends)";

/** Writes what every answer of the mechanics rests on: the contact, the angle under load and what springs back. */
export function recordBend(bend: AirBend, work: Working | undefined): void {
  step(work, "contact", "contact under the punch", bend.regime, "", MECHANICS);
  step(work, "2a", "bend angle under load", bend.loadedAngle, "deg", MECHANICS);
  step(work, "dA", "angle that springs back", bend.springback, "deg", MECHANICS);
}
