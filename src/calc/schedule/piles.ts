import type { Kilograms } from "../../units/quantity.ts";

/** Pieces on one pile of at most this weight, and how many piles; a piece heavier than that is a pile by itself. */
export function pilesOf(quantity: number, weight: Kilograms, limit: Kilograms): { perPile: number; piles: number } {
  const perPile = Math.max(1, Math.floor(limit / weight));
  return { perPile, piles: Math.ceil(quantity / perPile) };
}
