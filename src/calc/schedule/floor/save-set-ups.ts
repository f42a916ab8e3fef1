import type { Orders } from "./orders.ts";
import { compareWorth } from "./problem.ts";
import type { Effort } from "./tabu.ts";

/**
 * Brings operations of one key together where that costs no delivery: each one that is set up anew is put behind every
 * other of its key, lot or not, and stays where the whole is better.
 */
export function saveSetUps(orders: Orders, effort: Effort): void {
  const { floor, machine, before } = orders;
  if (!floor.hasSetUps) return;
  const { operations, count } = floor;
  const byKey = new Map<string, number[]>();
  operations.forEach(({ station, key, frozen }, i) => {
    if (floor.machinesOf[i] === 0 || frozen !== undefined) return;
    byKey.set(`${station} ${key}`, [...(byKey.get(`${station} ${key}`) ?? []), i]);
  });
  for (let isBetter = true; isBetter && effort.isLeft; ) {
    isBetter = false;
    for (let i = 0; i < count && effort.isLeft; i++) {
      if (orders.setUp[i] === 0 || operations[i]!.frozen !== undefined) continue;
      for (const other of byKey.get(`${operations[i]!.station} ${operations[i]!.key}`) ?? []) {
        if (other === i || before[i] === other || floor.setUp(other, i) >= orders.setUp[i]!) continue;
        const [now, was, previous] = [orders.worth, machine[i]!, before[i]!];
        orders.unlink(i);
        orders.insert(i, machine[other]!, other);
        effort.spend(count);
        if (orders.evaluate() && compareWorth(orders.worth, now) < 0) {
          isBetter = true;
          break;
        }
        orders.unlink(i);
        orders.insert(i, was, previous);
        orders.evaluate();
      }
    }
  }
}
