import { itemAt } from "../../../units/certain.ts";
import type { Orders } from "./orders.ts";
import { compareWorth } from "./problem.ts";
import type { Effort } from "./tabu.ts";

const NONE = -1;

/**
 * Brings operations of one key together where that costs no delivery: each one that is set up anew, alone and with all of
 * its key that stand behind it, is put behind every other of its key, lot or not, and stays where the whole is better.
 */
export function saveSetUps(orders: Orders, effort: Effort): void {
  const { floor, machine, before, behind } = orders;
  if (!floor.hasSetUps) return;
  const { operations, count } = floor;
  const byKey = new Map<string, number[]>();
  const keyOf = (i: number): string => `${itemAt(operations, i).station} ${itemAt(operations, i).key}`;
  const isFrozen = (i: number): boolean => itemAt(operations, i).frozen !== undefined;
  operations.forEach((_, i) => {
    if (floor.machinesOf[i] === 0 || isFrozen(i)) return;
    byKey.set(keyOf(i), [...(byKey.get(keyOf(i)) ?? []), i]);
  });
  const put = (own: readonly number[], onMachine: number, first: number): void => {
    for (const i of own) orders.unlink(i);
    own.forEach((i, at) => {
      orders.insert(i, onMachine, at === 0 ? first : itemAt(own, at - 1));
    });
  };
  /** True where they stand better behind the other one, and stay there. */
  const isBetterBehind = (own: readonly number[], other: number): boolean => {
    const i = itemAt(own, 0);
    const [now, was, previous] = [orders.worth, machine[i] ?? NONE, before[i] ?? NONE];
    put(own, machine[other] ?? NONE, other);
    effort.spend(count);
    if (orders.evaluate() && compareWorth(orders.worth, now) < 0) return true;
    put(own, was, previous);
    orders.evaluate();
    return false;
  };
  const blockFrom = (i: number): number[] => {
    const block = [i];
    for (let next = behind[i] ?? NONE; next !== NONE && keyOf(next) === keyOf(i); next = behind[next] ?? NONE)
      block.push(next);
    return block;
  };
  /** The last of those that stand together with it: who comes behind them parts none of them. */
  const endOf = (i: number): number => blockFrom(i).at(-1) ?? i;
  const betters = (i: number): boolean => {
    const block = blockFrom(i);
    const others = byKey.get(keyOf(i)) ?? [];
    for (const other of others)
      if (other !== i && before[i] !== other && floor.setUp(other, i) < (orders.setUp[i] ?? 0))
        if (isBetterBehind([i], other)) return true;
    if (block.length === 1) return false;
    const ends = new Set(others.filter((other) => !block.includes(other)).map(endOf));
    return [...ends].some((end) => !block.includes(end) && isBetterBehind(block, end));
  };
  for (let isBetter = true; isBetter && effort.isLeft; ) {
    isBetter = false;
    for (let i = 0; i < count && effort.isLeft; i++)
      if ((orders.setUp[i] ?? 0) > 0 && !isFrozen(i) && betters(i)) isBetter = true;
  }
}
