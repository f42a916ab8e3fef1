import { OPENING_LEAST } from "../../../data/bend-rules.ts";
import { OPENING_COUNTS_AS_LEAST, OPENING_STOP, OPENING_WIDE, OPENING_WIDE_CHECK } from "../../../data/thresholds.ts";
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
  const wide = limitOf(OPENING_WIDE, own);
  const narrow = !atLeast(openings, limitOf(OPENING_COUNTS_AS_LEAST, own));
  if (!narrow && atMost(openings, wide)) return undefined;
  const beyond = narrow
    ? !atLeast(openings, limitOf(OPENING_STOP, own))
    : !atMost(openings, limitOf(OPENING_WIDE_CHECK, own));
  const isMeasured = hasStrip(material, { thickness, dieOpening: die.opening });
  const status: Severity = narrow ? (beyond ? "stop" : "check") : beyond && !isMeasured ? "check" : "note";
  return {
    about: "opening",
    status,
    kind: narrow ? "narrow" : "wide",
    figure: openings,
    limit: narrow ? OPENING_LEAST.value : wide,
    name: die.name,
  };
}
