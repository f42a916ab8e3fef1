import { megapascals, mm } from "../../../units/quantity.ts";
import type { Deviations } from "./air-bend-band.ts";
import type { AirBendInput } from "./air-bend-input.ts";

/**
 * Percent: half the width that holds 90 % of sheets and dies. Memory, unverified: mill certificates and calipers do
 * better.
 */
export const USUAL = { thickness: 3, strength: 10, hardening: 10, opening: 1 };

/** What such shares of a bend's figures are. */
export function deviationsOf({ thickness, dieOpening, hardening }: AirBendInput, percent = USUAL): Deviations {
  const { strength, exponent } = hardening;
  return {
    thickness: mm((thickness * percent.thickness) / 100), // percent, by definition
    strength: megapascals((strength * percent.strength) / 100), // percent, by definition
    exponent: (exponent * percent.hardening) / 100, // percent, by definition
    dieOpening: mm((dieOpening * percent.opening) / 100), // percent, by definition
  };
}
