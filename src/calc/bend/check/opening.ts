import { LANGE_OPENING, OPENING_LEAST, OPENING_MOST } from "../../../data/bend-rules.ts";
import { atLeast, atMost } from "../../../units/nearly.ts";
import { show, showNumber } from "../../../units/show.ts";
import type { UnitSystem } from "../../../units/system.ts";
import type { Problem, Severity } from "../../problem.ts";
import type { BendLine, Setup } from "./line.ts";

/** Does the opening suit the thickness? 6 to 12 thicknesses (common practice); the force formulas end at 5 and 20. */
export function openingProblem({ thickness }: BendLine, { die }: Setup, system: UnitSystem): Problem | undefined {
  const openings = die.opening / thickness;
  if (atLeast(openings, OPENING_LEAST.value) && atMost(openings, OPENING_MOST.value)) return undefined;
  const narrow = openings < OPENING_LEAST.value;
  const beyond = narrow ? !atLeast(openings, LANGE_OPENING.from) : !atMost(openings, LANGE_OPENING.to);
  const severity: Severity = narrow ? (beyond ? "stop" : "check") : beyond ? "check" : "note";
  return {
    check: "die opening",
    severity,
    value: die.opening,
    limit: thickness * (narrow ? OPENING_LEAST.value : OPENING_MOST.value),
    quantity: "length",
    message: `Die ${die.name} opens ${showNumber(openings, 2)} thicknesses of ${show(thickness, "length", system)}; usual is ${OPENING_LEAST.value} to ${OPENING_MOST.value}: ${narrow ? "it marks, and force and radius are outside the formulas" : "radius and angle scatter more"}.`,
  };
}
