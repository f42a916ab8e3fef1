import { itemAt } from "../../../units/certain.ts";
import { Random } from "../../cutting/random.ts";
import type { Orders } from "./orders.ts";
import { compareWorth, type Worth } from "./problem.ts";
import { saveSetUps } from "./save-set-ups.ts";
import { type Effort, type Elite, TabuSearch } from "./tabu.ts";

// Chosen on published job shops: how many schedules are kept to go on from, and steps without success before the next.
const ELITES = 12;
const PATIENCE = 2500;
const SEED = 1;
const SHAKEN = 10; // one swap for so many operations

/**
 * Betters a schedule until the effort is spent or it is good enough. Tabu search from the schedule given and from
 * others shaken out of the best one; then again and again from one on the way between two of the best (path relinking: Nowicki and
 * Smutnicki, Journal of Scheduling 8, 2005; Peng, Lu and Cheng, Computers and Operations Research 53, 2015; memory,
 * unverified). Never leaves a worse schedule than it was given.
 */
export function search(orders: Orders, effort: Effort, isEnough: (worth: Worth) => boolean): void {
  const random = new Random(SEED);
  const tabu = new TabuSearch(orders, random, effort);
  const elites: Elite[] = [];
  let best: Elite | undefined;
  const better = () => {
    effort.spend(orders.floor.count + 1);
    tabu.improve(PATIENCE, isEnough);
    saveSetUps(orders, effort);
    const found: Elite = { saved: orders.save(), worth: orders.worth };
    if (!best || compareWorth(found.worth, best.worth) < 0) best = found;
    return found;
  };
  elites.push(better());
  while (effort.isLeft && !isEnough(best!.worth) && elites.length < ELITES) {
    orders.restore(best!.saved);
    shake(orders, random, Math.ceil(orders.floor.count / SHAKEN));
    elites.push(better());
  }
  while (effort.isLeft && !isEnough(best!.worth)) {
    const from = random.below(elites.length);
    const to = (from + 1 + random.below(elites.length - 1)) % elites.length;
    orders.restore(itemAt(elites, from).saved);
    walk(orders, itemAt(elites, to), random);
    const found = better();
    const isKnown = elites.some(({ worth }) => compareWorth(worth, found.worth) === 0);
    const worst = elites.reduce((a, b, i) => (compareWorth(b.worth, itemAt(elites, a).worth) > 0 ? i : a), 0);
    if (!isKnown && compareWorth(found.worth, itemAt(elites, worst).worth) < 0) elites[worst] = found;
  }
  orders.restore(best!.saved);
  orders.evaluate();
}

/** Neighbors on machines change places by chance. */
function shake(orders: Orders, random: Random, times: number): void {
  orders.evaluate();
  for (let i = 0; i < times; i++) {
    const first = random.below(orders.floor.count);
    if (swap(orders, first)) orders.evaluate();
  }
}

/** Half of the way to another schedule: neighbors that stand there the other way round change places. */
function walk(orders: Orders, { saved }: Elite, random: Random): void {
  const { count, operations } = orders.floor;
  const place = new Int32Array(count);
  for (const first of saved.first) for (let i = first, at = 0; i >= 0; i = itemAt(saved.behind, i)) place[i] = at++;
  orders.evaluate();
  const wrong = () =>
    operations.flatMap((_, i) => {
      const next = itemAt(orders.behind, i);
      return next >= 0 && saved.machine[i] === saved.machine[next] && itemAt(place, i) > itemAt(place, next) ? [i] : [];
    });
  let steps = -1;
  for (let left = wrong(), i = 0; left.length > 0 && i !== steps; left = wrong(), i++) {
    if (steps < 0) steps = Math.max(1, Math.floor(distance(orders, place, saved.machine) / 2));
    if (swap(orders, itemAt(left, random.below(left.length)))) orders.evaluate();
  }
}

/** Pairs on one machine that stand the other way round. */
function distance(orders: Orders, place: Int32Array, machine: Int32Array): number {
  let pairs = 0;
  for (const first of orders.first)
    for (let a = first; a >= 0; a = itemAt(orders.behind, a))
      for (let b = itemAt(orders.behind, a); b >= 0; b = itemAt(orders.behind, b))
        if (machine[a] === machine[b] && itemAt(place, a) > itemAt(place, b)) pairs++;
  return pairs;
}

/** An operation and the next one on its machine change places, where neither is frozen and nothing waits in a circle. */
function swap(orders: Orders, first: number): boolean {
  const { floor, before, behind, machine } = orders;
  const second = itemAt(behind, first);
  if (
    second < 0 ||
    itemAt(floor.operations, first).frozen !== undefined ||
    itemAt(floor.operations, second).frozen !== undefined
  )
    return false;
  const previous = itemAt(before, first);
  orders.unlink(second);
  orders.insert(second, itemAt(machine, first), previous);
  if (orders.evaluate()) return true;
  orders.unlink(second);
  orders.insert(second, itemAt(machine, first), first);
  orders.evaluate();
  return false;
}
