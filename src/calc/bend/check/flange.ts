import { atLeast } from "../../../units/nearly.ts";
import { degrees, type Millimeters, mm } from "../../../units/quantity.ts";
import type { UnitSystem } from "../../../units/system.ts";
import type { Working } from "../../../units/working.ts";
import type { Finding } from "../../finding.ts";
import { safeFlange, shortestFlange } from "../minimum-flange.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/** Does every flange rest on both shoulders until the bend is done? */
export function flangeFinding(line: BendLine, { die }: Setup, system: UnitSystem, work?: Working): Finding | undefined {
  const flange = mm(Math.min(...line.flanges));
  // A die bends no further than its own faces: a sharper bend is a finding about its angle, not about the flange.
  const bend = degrees(Math.min(sharpest(line), 180 - die.angle));
  const safe = safeFlange(
    { thickness: line.thickness, dieOpening: die.opening, bendAngle: bend, shoulder: die.shoulder },
    system,
    work,
  );
  if (atLeast(flange, safe)) return undefined;
  const falls = !atLeast(flange, shortestFlange(die.opening, bend));
  return {
    about: "flange",
    status: falls ? "stop" : "check",
    kind: falls ? "falls in" : "barely rests",
    figure: flange,
    limit: safe,
    quantity: "length",
    name: die.name,
  };
}

export const leastFlange = (
  line: BendLine,
  opening: Millimeters,
  shoulder: Millimeters | undefined,
  system: UnitSystem,
  work?: Working,
): Millimeters =>
  safeFlange({ thickness: line.thickness, dieOpening: opening, bendAngle: sharpest(line), shoulder }, system, work);
