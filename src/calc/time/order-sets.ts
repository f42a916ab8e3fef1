/** A die with a punch, as it stands in the brake. */
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
  return (sets.length <= EXACT_UP_TO ? exactOrder(sets, changes) : nearestOrder(sets, changes)).map(
    (i) => sets[i]!.key,
  );
}

type Changes = (a: ToolSet, b: ToolSet) => number;

function exactOrder(sets: readonly ToolSet[], changes: Changes): number[] {
  const count = sets.length;
  const cost = new Float64Array(count << count).fill(Infinity);
  const before = new Int8Array(count << count).fill(-1);
  for (let i = 0; i < count; i++) cost[(1 << i) * count + i] = 0;
  for (let done = 1; done < 1 << count; done++)
    for (let last = 0; last < count; last++) {
      const here = cost[done * count + last]!;
      if (here === Infinity) continue;
      for (let next = 0; next < count; next++) {
        if (done & (1 << next)) continue;
        const to = (done | (1 << next)) * count + next;
        const total = here + changes(sets[last]!, sets[next]!);
        if (total < cost[to]!) {
          cost[to] = total;
          before[to] = last;
        }
      }
    }
  let done = (1 << count) - 1;
  const ends = cost.subarray(done * count); // all sets done, by the one that is last
  let last = ends.indexOf(Math.min(...ends));
  const order: number[] = [];
  while (last >= 0) {
    order.unshift(last);
    const previous = before[done * count + last]!;
    done &= ~(1 << last);
    last = previous;
  }
  return order;
}

function nearestOrder(sets: readonly ToolSet[], changes: Changes): number[] {
  const left = new Set(sets.keys());
  const order = [0];
  left.delete(0);
  while (left.size > 0) {
    const last = sets[order.at(-1)!]!;
    let best = -1;
    for (const i of left) if (best < 0 || changes(last, sets[i]!) < changes(last, sets[best]!)) best = i;
    order.push(best);
    left.delete(best);
  }
  return order;
}
