/** Sets of moves while the cheapest assignment is searched, and which of them are worth keeping. */
import { itemAt } from "../../units/certain.ts";
import { beginCount } from "./begin-count.ts";
import type { Prices } from "./multipliers.ts";
import type { Choice, Machine } from "./problem.ts";

/** Taking a line off the machine that the prices chose costs its penalty on top of the bound. */
export interface Move {
  readonly index: number;
  readonly choice: Choice;
  readonly machine: Machine;
  readonly penalty: number;
}

/** Loads, cost and penalty of a set of moves; its last move and the set before it. */
export interface Label {
  readonly shear: number;
  readonly waterjet: number;
  readonly cost: number;
  readonly penalty: number;
  readonly moved: number;
  readonly from: Label | undefined;
}

export const otherThan = (machine: Machine): Machine => (machine === "shear" ? "waterjet" : "shear");

/** Every line where the prices put it. */
export function unmoved(moves: readonly Move[]): Label {
  let [shear, waterjet, cost] = [0, 0, 0];
  for (const { choice, machine } of moves) {
    if (machine === "shear") shear += choice.shear.time;
    else waterjet += choice.waterjet.time;
    cost += choice[machine].cost;
  }
  return { shear, waterjet, cost, penalty: 0, moved: -1, from: undefined };
}

export function withMove(label: Label, { choice, machine, penalty }: Move, moved: number): Label {
  const toShear = machine === "waterjet";
  return {
    shear: label.shear + (toShear ? choice.shear.time : -choice.shear.time),
    waterjet: label.waterjet + (toShear ? -choice.waterjet.time : choice.waterjet.time),
    cost: label.cost + choice[otherThan(machine)].cost - choice[machine].cost,
    penalty: label.penalty + penalty,
    moved,
    from: label,
  };
}

export function machinesOf(label: Label, moves: readonly Move[]): Machine[] {
  const machines: Machine[] = [];
  for (const { index, machine } of moves) machines[index] = machine;
  for (let at: Label | undefined = label; at && at.moved >= 0; at = at.from) {
    const { index, machine } = itemAt(moves, at.moved);
    machines[index] = otherThan(machine);
  }
  return machines;
}

/**
 * Labels that no other beats in both loads and cost. Loads up to `free` are all alike: whatever is still added, they fit.
 */
export function undominated(labels: Label[], free: Prices): Label[] {
  const shear = (label: Label) => Math.max(label.shear, free.shear);
  const waterjet = (label: Label) => Math.max(label.waterjet, free.waterjet);
  labels.sort((a, b) => shear(a) - shear(b) || waterjet(a) - waterjet(b) || a.cost - b.cost);
  const kept: Label[] = [];
  // Waterjet rising, cost falling, over all labels so far: none of them has more shear than the one that comes.
  const stairs: Label[] = [];
  for (const label of labels) {
    const low = beginCount(stairs, (stair) => waterjet(stair) <= waterjet(label));
    const below = stairs[low - 1];
    if (below && below.cost <= label.cost) continue;
    kept.push(label);
    const start = below && waterjet(below) === waterjet(label) ? low - 1 : low;
    const end = beginCount(stairs, (stair) => stair.cost >= label.cost);
    stairs.splice(start, Math.max(low, end) - start, label);
  }
  return kept;
}
