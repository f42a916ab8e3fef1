import { atLeast, atMost } from "../../units/nearly.ts";
import type { Millimetres } from "../../units/quantity.ts";
import { show } from "../../units/show.ts";
import type { AppliedCorrection } from "./apply.ts";
import type { Regime } from "./shop-correction.ts";

/** What decides which strips speak for a bend. */
export interface CorrectedBy {
  readonly material: string;
  readonly thickness: Millimetres;
  readonly dieOpening: Millimetres;
  readonly regime: Regime;
}

/**
 * The row of the shop's corrections that holds for a bend: of its material and contact, its thickness within the row's
 * range, its die the row's own. An offset found in one contact or die says nothing about another. A row that names no die
 * or range holds for all; one that names the die comes first.
 */
export function correctionFor(rows: readonly AppliedCorrection[], bend: CorrectedBy): AppliedCorrection | undefined {
  const holding = rows.filter(
    ({ material, regime, opening, thicknessFrom, thicknessTo }) =>
      material === bend.material &&
      regime === bend.regime &&
      (opening === undefined || (atLeast(bend.dieOpening, opening) && atMost(bend.dieOpening, opening))) &&
      (thicknessFrom === undefined || atLeast(bend.thickness, thicknessFrom)) &&
      (thicknessTo === undefined || atMost(bend.thickness, thicknessTo)),
  );
  return holding.find(({ opening }) => opening !== undefined) ?? holding[0];
}

/** "A36, point contact, 0.225 in to 0.275 in over 2 in": how a working names the row. */
export function correctionWords({ material, regime, opening, thicknessFrom, thicknessTo }: AppliedCorrection): string {
  const length = (value: Millimetres) => show(value, "length", "in", 3);
  const range =
    thicknessFrom === undefined || thicknessTo === undefined
      ? "any thickness"
      : `${length(thicknessFrom)} to ${length(thicknessTo)}`;
  return `${material}, ${regime} contact, ${range} over ${opening === undefined ? "any die" : length(opening)}`;
}
