/**
 * The cheapest assignment of lines to the two cutting machines whose loads stay within both capacities, exactly.
 *
 * Every line starts on the machine that the Lagrangian prices choose; moving it costs its penalty on top of the bound.
 * Lines are taken in the order of their penalties, and of all sets of moves only those are kept that no other set beats
 * in load, load and cost, and that can still beat the best plan known (dynamic programming over a growing core, after
 * Pisinger 1997 and Nemhauser & Ullmann 1969, memory). When the next penalty is above the gap, the answer is proved.
 */
import { type Label, type Move, machinesOf, otherThan, undominated, unmoved, withMove } from "./labels.ts";
import { bestPrices, boundAt, type Prices } from "./multipliers.ts";
import type { Choice, Machine } from "./problem.ts";
import { repaired } from "./repaired.ts";

export interface Within {
  /** Machine of each line; undefined: no assignment fits. */
  readonly machines: readonly Machine[] | undefined;
  readonly cost: number;
  /** No assignment within the capacities costs less. */
  readonly bound: number;
  /** Whether the cost (or that nothing fits) is proved. */
  readonly proved: boolean;
}

const MOST_LABELS = 20_000; // chosen: bounds memory and time; beyond it the answer is good but not proved

/**
 * @param most dearer plans are not looked for: one of this cost is known, or they are of no use.
 * @param any whether the first plan within `most` will do.
 */
export function cheapestWithin(choices: readonly Choice[], capacity: Prices, most = Infinity, any = false): Within {
  const prices = bestPrices(choices, capacity);
  const lagrangian = boundAt(choices, prices, capacity);
  const slack = 1e-9 * Math.max(1, Math.abs(lagrangian)) + 1e-6; // numerical, the rounding of the sum
  const atLeast = (value: number) => Math.ceil(value - slack);
  const moves = choices.map((choice, index) => {
    const shear = choice.shear.cost + prices.shear * choice.shear.time;
    const waterjet = choice.waterjet.cost + prices.waterjet * choice.waterjet.time;
    const machine: Machine = shear <= waterjet ? "shear" : "waterjet";
    return { index, choice, machine, penalty: Math.abs(shear - waterjet) };
  });
  moves.sort((a, b) => a.penalty - b.penalty || a.index - b.index);
  const bound = atLeast(lagrangian);
  if (bound > most) return { machines: undefined, cost: Infinity, bound, proved: true };
  const enough = any ? most : bound;
  let best: Label | undefined;
  const limit = () => best?.cost ?? most + 1;
  const mayPay = (penalty: number) => atLeast(lagrangian + penalty) < limit();
  const root = unmoved(moves);
  const fits = (label: Label) => label.shear <= capacity.shear && label.waterjet <= capacity.waterjet;
  const consider = (label: Label) => {
    if (fits(label) && label.cost < limit()) best = label;
  };
  let complete = true;
  let labels: Label[] = [root];
  consider(root);
  consider(repaired(root, moves, capacity) ?? root);
  for (const [i, { move, relief, growth }] of stillPossible(moves).entries()) {
    if (labels.length === 0 || (best !== undefined && best.cost <= enough)) break;
    const alive = (label: Label) =>
      mayPay(label.penalty) &&
      label.shear - relief.shear <= capacity.shear &&
      label.waterjet - relief.waterjet <= capacity.waterjet;
    const kept = labels.filter(alive);
    if (!mayPay(move.penalty)) {
      // No move from here on can pay, and every label kept was considered as it stands.
      labels = [];
      break;
    }
    const moved = kept.map((label) => withMove(label, move, i));
    for (const label of moved) consider(label);
    labels = undominated([...kept, ...moved], {
      shear: capacity.shear - growth.shear,
      waterjet: capacity.waterjet - growth.waterjet,
    });
    if (labels.length > MOST_LABELS) {
      complete = false;
      labels = labels.sort((a, b) => a.penalty - b.penalty).slice(0, MOST_LABELS);
    }
  }
  const reached = best !== undefined && best.cost <= enough;
  return {
    machines: best === undefined ? undefined : machinesOf(best, moves),
    cost: best?.cost ?? Infinity,
    bound: complete && !any ? limit() : bound,
    proved: complete || reached,
  };
}

/** Each move with what those from it on can still take off each machine, and what those after it can add. */
function stillPossible(moves: readonly Move[]): { move: Move; relief: Prices; growth: Prices }[] {
  let off: Prices = { shear: 0, waterjet: 0 };
  let on = off;
  const backwards = moves.toReversed().map((move) => {
    const { choice, machine } = move;
    const other = otherThan(machine);
    const growth = on;
    off = { ...off, [machine]: off[machine] + choice[machine].time };
    on = { ...on, [other]: on[other] + choice[other].time };
    return { move, relief: off, growth };
  });
  return backwards.reverse();
}
