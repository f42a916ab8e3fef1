import { LANGE_OPENING, OPENING_LEAST, OPENING_MOST } from "../../../data/bend-rules.ts";
import { OPENING_COUNTS_AS_LEAST } from "../../../data/thresholds.ts";
import { atLeast, atMost } from "../../../units/nearly.ts";
import type { Finding, Severity } from "../../finding.ts";
import { limitOf } from "../../limit-of.ts";
import { hasStrip } from "../strip-correction.ts";
import type { BendLine, Setup } from "./line.ts";

/**
 * Does the opening suit the thickness? 6 to 12 thicknesses (common practice); the force formulas end at 5 and 20. Over a
 * wider die the bend scatters, unless the shop has bent a strip of this sheet over it.
 */
export function openingFinding({ material, thickness }: BendLine, { die, own }: Setup): Finding | undefined {
  const openings = die.opening / thickness;
  if (atLeast(openings, limitOf(OPENING_COUNTS_AS_LEAST, own)) && atMost(openings, OPENING_MOST.value))
    return undefined;
  const narrow = openings < OPENING_LEAST.value;
  const beyond = narrow ? !atLeast(openings, LANGE_OPENING.from) : !atMost(openings, LANGE_OPENING.to);
  const isMeasured = hasStrip(material, { thickness, dieOpening: die.opening });
  const status: Severity = narrow ? (beyond ? "stop" : "check") : beyond && !isMeasured ? "check" : "note";
  return {
    about: "opening",
    status,
    kind: narrow ? "narrow" : "wide",
    figure: openings,
    limit: narrow ? OPENING_LEAST.value : OPENING_MOST.value,
    name: die.name,
  };
}
