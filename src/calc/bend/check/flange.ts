import { atLeast } from "../../../units/nearly.ts";
import { type Millimetres, mm } from "../../../units/quantity.ts";
import { show } from "../../../units/show.ts";
import type { UnitSystem } from "../../../units/system.ts";
import type { Working } from "../../../units/working.ts";
import type { Problem } from "../../problem.ts";
import { safeFlange, shortestFlange } from "../minimum-flange.ts";
import { type BendLine, type Setup, sharpest } from "./line.ts";

/** Does every flange rest on both shoulders until the bend is done? */
export function flangeProblem(line: BendLine, { die }: Setup, system: UnitSystem, work?: Working): Problem | undefined {
  const flange = mm(Math.min(...line.flanges));
  const safe = leastFlange(line, die.opening, die.shoulder, system, work);
  if (atLeast(flange, safe)) return undefined;
  const falls = !atLeast(flange, shortestFlange(die.opening, sharpest(line)));
  return {
    check: "flange",
    severity: falls ? "stop" : "check",
    value: flange,
    limit: safe,
    quantity: "length",
    message: `A flange of ${show(flange, "length", system)} ${falls ? "falls into" : "barely rests on"} die ${die.name}, which wants at least ${show(safe, "length", system)}.`,
  };
}

export const leastFlange = (
  line: BendLine,
  opening: Millimetres,
  shoulder: Millimetres | undefined,
  system: UnitSystem,
  work?: Working,
): Millimetres => safeFlange(line.thickness, opening, sharpest(line), shoulder, system, work);
