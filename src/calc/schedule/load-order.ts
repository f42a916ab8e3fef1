import type { Kilograms } from "../../units/quantity.ts";

/** Finished parts of one line. */
export interface Load {
  readonly area: string;
  readonly weight: Kilograms;
}

/**
 * The order in which parts are loaded: areas that come first in the list are needed first, so they are loaded last; within
 * an area the heavy parts go in first and lie at the bottom (common practice).
 */
export function loadOrder<L extends Load>(loads: readonly L[]): L[] {
  const areas = [...new Set(loads.map(({ area }) => area))];
  return [...loads].sort((a, b) => areas.indexOf(b.area) - areas.indexOf(a.area) || b.weight - a.weight);
}

/** Pieces on one pile of at most this weight, and how many piles; a piece heavier than that is a pile by itself. */
export function pilesOf(quantity: number, weight: Kilograms, limit: Kilograms): { perPile: number; piles: number } {
  const perPile = Math.max(1, Math.floor(limit / weight));
  return { perPile, piles: Math.ceil(quantity / perPile) };
}
