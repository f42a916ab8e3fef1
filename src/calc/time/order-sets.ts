/** A die with a punch, as it stands in the brake. */
import { itemAt, lastOf } from "../../units/certain.ts";
export interface ToolSet {
  readonly key: string;
  readonly die: string;
  readonly punch: string;
}

const EXACT_UP_TO = 12; // chosen: Held-Karp's table stays small; more sets are ordered by the nearest next one

/**
 * The order in which sets follow each other with the fewest tools changed: a set that keeps the die or the punch of the
 * one before costs one change, else two. Exact up to 12 sets (Held & Karp's recursion, memory), nearest next beyond.
 */
export function orderSets(sets: readonly ToolSet[]): string[] {
  if (sets.length <= 2) return sets.map(({ key }) => key);
  const changes = (a: ToolSet, b: ToolSet) => (a.die === b.die ? 0 : 1) + (a.punch === b.punch ? 0 : 1);
  return (sets.length <= EXACT_UP_TO ? exactOrder(sets, changes) : nearestOrder(sets, changes)).map(({ key }) => key);
}

type Changes = (a: ToolSet, b: ToolSet) => number;

function exactOrder(sets: readonly ToolSet[], changes: Changes): ToolSet[] {
  const count = sets.length;
  const cost = new Float64Array(count << count).fill(Infinity);
  const comesAfter = new Int8Array(count << count).fill(-1);
  const reached = (state: number) => cost[state] ?? Infinity;
  for (let i = 0; i < count; i++) cost[(1 << i) * count + i] = 0;
  for (let done = 1; done < 1 << count; done++)
    for (const [last, before] of sets.entries()) {
      const here = reached(done * count + last);
      if (here === Infinity) continue;
      for (const [next, after] of sets.entries()) {
        if (done & (1 << next)) continue;
        const to = (done | (1 << next)) * count + next;
        const total = here + changes(before, after);
        if (total < reached(to)) {
          cost[to] = total;
          comesAfter[to] = last;
        }
      }
    }
  let done = (1 << count) - 1;
  const ends = cost.subarray(done * count); // all sets done, by the one that is last
  let last = ends.indexOf(Math.min(...ends));
  const order: ToolSet[] = [];
  while (last >= 0) {
    order.unshift(itemAt(sets, last));
    const previous = itemAt(comesAfter, done * count + last);
    done &= ~(1 << last);
    last = previous;
  }
  return order;
}

function nearestOrder(sets: readonly ToolSet[], changes: Changes): ToolSet[] {
  const order: ToolSet[] = [];
  const left = [...sets];
  for (let last = left.shift(); last; ) {
    order.push(last);
    const fewest = Math.min(...left.map((set) => changes(lastOf(order), set)));
    const next = left.findIndex((set) => changes(lastOf(order), set) === fewest);
    last = next < 0 ? undefined : left.splice(next, 1)[0];
  }
  return order;
}
