/**
 * The cheapest assignment of lines to the two cutting machines whose loads stay within both capacities, exactly.
 *
 * Every line starts on the machine that the Lagrangian prices choose; moving it costs its penalty on top of the bound.
 * Lines are taken in the order of their penalties, and of all sets of moves only those are kept that no other set beats
 * in load, load and cost, and that can still beat the best plan known (dynamic programming over a growing core, after
 * Pisinger 1997 and Nemhauser & Ullmann 1969, memory). When the next penalty is above the gap, the answer is proved.
 */
import { bestPrices, boundAt, type Prices } from "./multipliers.ts";
import type { Cut, Machine } from "./problem.ts";

/** A line that both machines can cut. */
export interface Choice {
  readonly shear: Cut;
  readonly waterjet: Cut;
}

export interface Within {
  /** Machine of each line; undefined: no assignment fits. */
  readonly machines: readonly Machine[] | undefined;
  readonly cost: number;
  /** No assignment within the capacities costs less. */
  readonly bound: number;
  /** Whether the cost (or that nothing fits) is proved. */
  readonly proved: boolean;
}

interface Label {
  readonly shear: number;
  readonly waterjet: number;
  readonly cost: number;
  readonly penalty: number;
  readonly moved: number;
  readonly from: Label | undefined;
}

const MOST_LABELS = 20_000; // chosen: bounds memory and time; beyond it the answer is good but not proved

/** @param limit where any plan will do that costs no more: the search stops at the first, and looks at none above. */
export function cheapestWithin(choices: readonly Choice[], capacity: Prices, limit?: number): Within {
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
  if (limit !== undefined && bound > limit) return { machines: undefined, cost: Infinity, bound, proved: true };
  const isEnough = (label: Label) => label.cost <= (limit ?? bound);
  const mayPay = (penalty: number) =>
    atLeast(lagrangian + penalty) < (best?.cost ?? (limit === undefined ? Infinity : limit + 1));
  let best: Label | undefined;
  let root: Label = { shear: 0, waterjet: 0, cost: 0, penalty: 0, moved: -1, from: undefined };
  for (const { choice, machine } of moves) {
    const cut = choice[machine];
    root = { ...root, [machine]: root[machine] + cut.time, cost: root.cost + cut.cost };
  }
  const fits = (label: Label) => label.shear <= capacity.shear && label.waterjet <= capacity.waterjet;
  const consider = (label: Label) => {
    if (fits(label) && (best === undefined || label.cost < best.cost)) best = label;
  };
  // What the moves from here on can still take off each machine, and what they can add to it.
  const relief: Prices[] = [];
  const growth: Prices[] = [];
  for (let i = moves.length - 1, off = NOTHING, on = NOTHING; i >= 0; i--) {
    const { choice, machine } = moves[i]!;
    growth[i] = on;
    const other: Machine = machine === "shear" ? "waterjet" : "shear";
    off = { ...off, [machine]: off[machine] + choice[machine].time };
    on = { ...on, [other]: on[other] + choice[other].time };
    relief[i] = off;
  }
  let complete = true;
  let labels: Label[] = [root];
  consider(root);
  consider(repaired(root, moves, capacity) ?? root);
  for (let i = 0; i < moves.length && labels.length > 0; i++) {
    if (best !== undefined && (isEnough(best) || best.cost <= bound)) break;
    const { choice, machine, penalty } = moves[i]!;
    const other: Machine = machine === "shear" ? "waterjet" : "shear";
    const left = relief[i]!;
    const alive = (label: Label) =>
      mayPay(label.penalty) &&
      label.shear - left.shear <= capacity.shear &&
      label.waterjet - left.waterjet <= capacity.waterjet;
    const kept = labels.filter(alive);
    if (!mayPay(penalty)) {
      // No move from here on can pay, and every label kept was considered as it stands.
      labels = [];
      break;
    }
    const moved = kept.map(
      (label): Label => ({
        shear: label.shear + (other === "shear" ? choice.shear.time : -choice.shear.time),
        waterjet: label.waterjet + (other === "waterjet" ? choice.waterjet.time : -choice.waterjet.time),
        cost: label.cost + choice[other].cost - choice[machine].cost,
        penalty: label.penalty + penalty,
        moved: i,
        from: label,
      }),
    );
    for (const label of moved) consider(label);
    labels = undominated([...kept, ...moved], {
      shear: capacity.shear - growth[i]!.shear,
      waterjet: capacity.waterjet - growth[i]!.waterjet,
    });
    if (labels.length > MOST_LABELS) {
      complete = false;
      labels = labels.sort((a, b) => a.penalty - b.penalty).slice(0, MOST_LABELS);
    }
  }
  const reached = best !== undefined && (best.cost <= bound || isEnough(best));
  return {
    machines: best === undefined ? undefined : machinesOf(best, moves),
    cost: best?.cost ?? Infinity,
    bound: complete && limit === undefined ? (best?.cost ?? Infinity) : bound,
    proved: complete || reached,
  };
}

interface Move {
  readonly index: number;
  readonly choice: Choice;
  readonly machine: Machine;
  readonly penalty: number;
}

function machinesOf(label: Label, moves: readonly Move[]): Machine[] {
  const machines: Machine[] = [];
  for (const { index, machine } of moves) machines[index] = machine;
  for (let at: Label | undefined = label; at && at.moved >= 0; at = at.from) {
    const { index, machine } = moves[at.moved]!;
    machines[index] = machine === "shear" ? "waterjet" : "shear";
  }
  return machines;
}

/** A first plan: moves with the least penalty for the relief they bring, until both loads fit. */
function repaired(root: Label, moves: readonly Move[], capacity: Prices): Label | undefined {
  let label = root;
  const open = new Set(moves.keys());
  const over = (l: { shear: number; waterjet: number }) =>
    Math.max(0, l.shear - capacity.shear) + Math.max(0, l.waterjet - capacity.waterjet);
  while (over(label) > 0) {
    let next: { label: Label; key: number; worth: number } | undefined;
    for (const key of open) {
      const moved = applied(label, moves[key]!, key);
      const gained = over(label) - over(moved);
      if (gained <= 0) continue;
      const worth = moves[key]!.penalty / gained;
      if (!next || worth < next.worth) next = { label: moved, key, worth };
    }
    if (!next) return undefined;
    label = next.label;
    open.delete(next.key);
  }
  return label;
}

function applied(label: Label, { choice, machine, penalty }: Move, key: number): Label {
  const toShear = machine === "waterjet";
  return {
    shear: label.shear + (toShear ? choice.shear.time : -choice.shear.time),
    waterjet: label.waterjet + (toShear ? -choice.waterjet.time : choice.waterjet.time),
    cost: label.cost + (toShear ? choice.shear.cost - choice.waterjet.cost : choice.waterjet.cost - choice.shear.cost),
    penalty: label.penalty + penalty,
    moved: key,
    from: label,
  };
}

/**
 * Labels that no other beats in both loads and cost. Loads up to `free` are all alike: whatever is still added, they fit.
 */
function undominated(labels: Label[], free: Prices): Label[] {
  const shear = (label: Label) => Math.max(label.shear, free.shear);
  const waterjet = (label: Label) => Math.max(label.waterjet, free.waterjet);
  labels.sort((a, b) => shear(a) - shear(b) || waterjet(a) - waterjet(b) || a.cost - b.cost);
  const kept: Label[] = [];
  // Waterjet rising, cost falling, over all labels so far: none of them has more shear than the one that comes.
  const stairs: Label[] = [];
  for (const label of labels) {
    let low = 0;
    let high = stairs.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (waterjet(stairs[middle]!) <= waterjet(label)) low = middle + 1;
      else high = middle;
    }
    if (low > 0 && stairs[low - 1]!.cost <= label.cost) continue;
    kept.push(label);
    const start = low > 0 && waterjet(stairs[low - 1]!) === waterjet(label) ? low - 1 : low;
    let end = low;
    while (end < stairs.length && stairs[end]!.cost >= label.cost) end++;
    stairs.splice(start, end - start, label);
  }
  return kept;
}

const NOTHING: Prices = { shear: 0, waterjet: 0 };
