import { entryOf, itemAt, lastOf } from "../../../units/certain.ts";
import type { Floor } from "./orders.ts";

/** Deliveries whose orders are all looked at: 2 to that power of sets (chosen: a few milliseconds). */
const MOST = 10;

/** A delivery at one station: its operations there, and what must still follow them. */
export interface AtStation {
  readonly weight: number;
  readonly due: number;
  /** With every machine to itself it leaves no sooner. */
  readonly least: number;
  readonly operations: readonly number[];
  /** The ways on from here, as work at one station after the other: one of them follows the last operation. */
  readonly tails: readonly (readonly (readonly [station: number, run: number])[])[];
}

/**
 * Weighted lateness of these deliveries that no order of one station is below: all of a delivery's work there as one block
 * that may be interrupted, the station's machines as one that is so many times as fast, nothing waited for elsewhere. The
 * best order of the blocks by dynamic programming over sets (Held and Karp, Journal of SIAM 10, 1962; memory, unverified):
 * the last of a set is done no sooner than all of the set's work. What is more than can be looked at is taken as alone.
 */
export function stationBound(floor: Floor, station: number, given: readonly AtStation[], ready: Float64Array): number {
  const { operations, problem } = floor;
  const { machines, clock } = itemAt(problem.stations, station);
  const work = (own: AtStation) => own.operations.reduce((sum, i) => sum + itemAt(operations, i).run, 0);
  const ranked = disjoint([...given].sort((a, b) => b.weight * work(b) - a.weight * work(a)));
  const shown = ranked.slice(0, MOST);
  const count = shown.length;
  const works = shown.map(work);
  const heads = shown.map((own) => Math.min(...own.operations.map((i) => itemAt(ready, i))));
  const setUps = setUpsOf(floor, station, shown);
  const best = new Float64Array(1 << count).fill(Infinity);
  best[0] = 0;
  for (let set = 1; set < 1 << count; set++) {
    let [run, head, setUp] = [0, Infinity, 0];
    for (let d = 0; d < count; d++)
      if (set & (1 << d)) {
        run += itemAt(works, d);
        head = Math.min(head, itemAt(heads, d));
      }
    for (const { users, time } of setUps) if (set & users) setUp += time;
    // What is set up may be so before any part is there.
    const done = Math.max(clock.finish(head, run / machines), clock.finish(problem.start, (run + setUp) / machines));
    for (let d = 0; d < count; d++) {
      if (!(set & (1 << d))) continue;
      const late = itemAt(best, set & ~(1 << d)) + lateFrom(floor, itemAt(shown, d), done);
      if (late < itemAt(best, set)) best[set] = late;
    }
  }
  return lastOf(best) + given.reduce((sum, own) => sum + (shown.includes(own) ? 0 : lateAlone(own)), 0);
}

export const lateAlone = ({ weight, due, least }: Pick<AtStation, "weight" | "due" | "least">): number =>
  weight * Math.max(0, least - due);

/** Where two share an operation, its work counts once: the first one has it. */
function disjoint(given: readonly AtStation[]): AtStation[] {
  const taken = new Set<number>();
  return given.filter(({ operations }) => {
    if (operations.some((i) => taken.has(i))) return false;
    for (const i of operations) taken.add(i);
    return true;
  });
}

/** Its lateness by weight where the last of its work here is done then. */
function lateFrom({ problem }: Floor, { weight, due, least, tails }: AtStation, done: number): number {
  let leaves = Infinity;
  for (const tail of tails) {
    let at = done;
    for (const [station, run] of tail) at = itemAt(problem.stations, station).clock.finish(at, run);
    leaves = Math.min(leaves, at);
  }
  return weight * Math.max(0, Math.max(least, leaves) - due);
}

/** By the stations on the longest way on from each operation within these, the least work at each. */
export function tailsOf(
  { operations, next, nextAt, count }: Floor,
  own: readonly number[],
  members: ReadonlySet<number>,
): AtStation["tails"] {
  const chain = new Float64Array(count);
  const on = new Int32Array(count).fill(-1);
  for (let i = count - 1; i >= 0; i--) {
    for (let k = itemAt(nextAt, i); k < itemAt(nextAt, i + 1); k++) {
      const after = itemAt(next, k);
      if (!members.has(after) || (itemAt(on, i) >= 0 && itemAt(chain, after) <= itemAt(chain, itemAt(on, i)))) continue;
      on[i] = after;
    }
    chain[i] = itemAt(operations, i).run + (itemAt(on, i) < 0 ? 0 : itemAt(chain, itemAt(on, i)));
  }
  const found = new Map<string, (readonly [number, number])[]>();
  for (const i of own) {
    const tail: (readonly [number, number])[] = [];
    for (let at = itemAt(on, i); at >= 0; at = itemAt(on, at))
      tail.push([itemAt(operations, at).station, itemAt(operations, at).run]);
    const key = tail.map(([station]) => station).join(" ");
    const known = found.get(key) ?? tail;
    found.set(
      key,
      tail.map(([station, run], k) => [station, Math.min(run, itemAt(known, k)[1])] as const),
    );
  }
  return found.has("") ? [[]] : [...found.values()];
}

/** Set-ups that happen at least once where one of their users is done: of every lot, and of every key. */
function setUpsOf({ operations }: Floor, station: number, given: readonly AtStation[]) {
  const users = new Map<string, number>();
  const least = new Map<string, number>();
  const all = operations.map(({ lot, key }) => [`lot ${lot}`, `key ${key}`] as const);
  given.forEach((own, d) => {
    for (const i of own.operations)
      for (const name of itemAt(all, i)) users.set(name, (users.get(name) ?? 0) | (1 << d));
  });
  operations.forEach(({ own, change, ...operation }, i) => {
    if (operation.station !== station) return;
    const [lot, key] = itemAt(all, i);
    least.set(lot, Math.min(own, least.get(lot) ?? Infinity));
    least.set(key, Math.min(change, least.get(key) ?? Infinity));
  });
  return [...users].map(([name, of]) => ({ users: of, time: entryOf(least, name) })).filter(({ time }) => time > 0);
}
