/** How the finished parts go out: in which order, in which stacks. */
import { pilesOf } from "../../calc/schedule/piles.ts";
import { entryOf } from "../../units/certain.ts";
import { type Kilograms, kilograms } from "../../units/quantity.ts";
import { noAnswer } from "../../units/refusal.ts";
import { type Lift, liftOf } from "../lines/lifting.ts";
import { lineKey } from "../lines/line-key.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import { onePersonLimit, type Rates } from "../nouns/rates.ts";

export interface LoadedLine {
  readonly plan: LinePlan;
  /** Of all its pieces, as blanks. */
  readonly weight: Kilograms;
  readonly perStack: number;
  readonly stacks: number;
  /** Of a full one. */
  readonly stackWeight: Kilograms;
  readonly liftPiece: Lift;
  readonly liftStack: Lift;
}

/**
 * What is needed first is loaded last: areas in the order the job states, else by when they are due, else by name; in an
 * area the heavy lines go first, so that they lie at the bottom (common practice).
 */
export function planLoad(plans: readonly LinePlan[], rates: Rates, areas: readonly string[]): LoadedLine[] {
  const limit = rates.find("pileLimit") ?? rates.find("hoistAbove") ?? onePersonLimit(rates);
  if (limit === undefined)
    throw noAnswer("rates", 'a table with a row "Pile limit", "Hoist above" or "One-person limit"', "none");
  const dueOfArea = new Map<string, number>();
  const due = ({ line }: LinePlan) => line.due ?? Infinity;
  for (const plan of plans)
    dueOfArea.set(plan.line.area, Math.min(dueOfArea.get(plan.line.area) ?? Infinity, due(plan)));
  const stated = ({ line }: LinePlan) => {
    const at = areas.findIndex((area) => area.toLowerCase() === line.area.toLowerCase());
    return at < 0 ? areas.length : at;
  };
  const later = (a: LinePlan, b: LinePlan): number => {
    if (stated(a) !== stated(b)) return stated(b) - stated(a);
    const [first, second] = [entryOf(dueOfArea, a.line.area), entryOf(dueOfArea, b.line.area)];
    if (first !== second) return first > second ? -1 : 1;
    if (a.line.area !== b.line.area) return a.line.area < b.line.area ? -1 : 1;
    return b.blank.weight - a.blank.weight || (lineKey(a.line) < lineKey(b.line) ? -1 : 1);
  };
  return [...plans].sort(later).map((plan) => {
    const { perPile, piles } = pilesOf(plan.line.quantity, plan.blank.weight, kilograms(limit));
    const stackWeight = kilograms(Math.min(perPile, plan.line.quantity) * plan.blank.weight);
    return {
      plan,
      weight: kilograms(plan.line.quantity * plan.blank.weight),
      perStack: perPile,
      stacks: piles,
      stackWeight,
      liftPiece: liftOf(plan.blank.weight, rates),
      liftStack: liftOf(stackWeight, rates),
    };
  });
}

export const weightOf = (loaded: readonly LoadedLine[]): Kilograms =>
  kilograms(loaded.reduce((sum, { weight }) => sum + weight, 0));
