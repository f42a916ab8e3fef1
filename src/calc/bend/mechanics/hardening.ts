import { type Megapascals, megapascals, type Ratio } from "../../../units/quantity.ts";
import { Refusal } from "../../../units/refusal.ts";

/**
 * Swift hardening: flow stress = strength (prestrain + plastic strain)^exponent. A missing prestrain is put where the
 * power law meets the elastic line, (strength/E)^(1/(1 - exponent)): then the law is Hollomon's in the total strain.
 */
export interface Hardening {
  /** K of the formula. */
  readonly strength: Megapascals;
  /** n of the formula. */
  readonly exponent: Ratio;
  /** e0 of the formula. */
  readonly prestrain?: Ratio;
}

/** Above what any sheet metal shows; annealed stainless and brass reach about 0.5 (common practice). */
export const LARGEST_EXPONENT = 0.6;

/**
 * Hardening from yield and tensile strength, where nothing better is known: the power law through the yield point at
 * strain 0.002 + Y/E whose necking stress is the tensile strength. Solves n ln(e (0.002 + Y/E)/n) = ln(Y/UTS), then
 * K = UTS (e/n)^n. Derived from Considere's condition (uniform strain = n); it under-reads n of steels with a yield
 * plateau. Refuses a tensile strength that is not above the yield strength.
 */
export function hardeningFrom(tensileTest: {
  readonly yield: Megapascals;
  readonly tensile: Megapascals;
  readonly modulus: Megapascals;
}): Hardening {
  const { yield: yieldStrength, tensile, modulus } = tensileTest;
  for (const [name, value] of Object.entries(tensileTest)) {
    if (!(value > 0 && value < 1e7)) throw new Refusal("#VALUE!", `${name} must be above 0 MPa; got ${value}`);
  }
  if (tensile <= yieldStrength) {
    throw new Refusal("#VALUE!", `tensile must be above yield (${yieldStrength} MPa); got ${tensile}`);
  }
  const strainAtYield = 0.002 + yieldStrength / modulus;
  const wanted = Math.log(yieldStrength / tensile);
  const excess = (n: number) => n * Math.log((Math.E * strainAtYield) / n) - wanted;
  // Between n = e strainAtYield, where the left side is 0, and infinity it only falls: one root, found by bisection.
  let low = Math.E * strainAtYield;
  let high = LARGEST_EXPONENT;
  if (excess(low) <= 0 || excess(high) >= 0) {
    throw new Refusal(
      "#N/A",
      `yield must be near enough to tensile (${tensile} MPa) for a power law; got ${yieldStrength}`,
    );
  }
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0) low = middle;
    else high = middle;
  }
  return { strength: megapascals(tensile * (Math.E / low) ** low), exponent: low };
}
