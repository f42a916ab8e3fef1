import { missing } from "../../../units/certain.ts";
import type { Random } from "../../cutting/random.ts";
import type { Orders } from "./orders.ts";

const NONE = -1;

/** One operation taken from its place and put behind another one (NONE: first) of a machine. */
export interface Move {
  readonly operation: number;
  readonly machine: number;
  readonly before: number;
  /** When the delivery would be done, as estimated. */
  readonly estimate: number;
  /** Operations of its machine that it jumps over, to the back or to the front; none where it changes the machine. */
  readonly over: readonly number[];
  readonly isForward: boolean;
}

/**
 * Operations on a longest path to the end of a delivery, in order: nothing is done sooner unless one of them moves. Of
 * several paths chance takes one.
 */
export function criticalPath(orders: Orders, delivery: number, random: Random): number[] {
  const { floor, prepared, ready, finish, before } = orders;
  let at = NONE;
  for (const operation of (floor.problem.deliveries[delivery] ?? missing()).operations)
    if (at === NONE || (finish[operation] ?? missing()) > (finish[at] ?? missing())) at = operation;
  const path: number[] = [];
  while (at !== NONE) {
    path.push(at);
    let [from, ways] = [NONE, 0];
    const meet = (operation: number, arrives: number) => {
      if (arrives === ready[at] && random.below(++ways) === 0) from = operation;
    };
    if (before[at] !== NONE) meet(before[at] ?? missing(), prepared[at] ?? missing());
    for (const operation of (floor.operations[at] ?? missing()).after) meet(operation, finish[operation] ?? missing());
    at = from;
  }
  return path.reverse();
}

/**
 * Moves on a critical path: within a block, which is a run of operations on one machine, each to the block's front or back
 * (the neighborhood N6 of Balas and Vazacopoulos, Management Science 44, 1998, after Nowicki and Smutnicki, Management
 * Science 42, 1996; memory, unverified); where a station has several machines, to another of them (Mastrolilli and
 * Gambardella, Journal of Scheduling 3, 2000; memory, unverified). What could wait for itself in a circle is left out.
 * Needs the tails of the delivery.
 */
export class Moves {
  readonly #head: Float64Array;
  readonly #done: Float64Array;
  readonly #gap: Float64Array;
  readonly #segment: number[] = [];
  readonly #hasReleases: boolean;
  /** Operations looked at: the unit of work of the search. */
  looked = 0;

  constructor(readonly orders: Orders) {
    this.#head = new Float64Array(orders.floor.count + 1);
    this.#done = new Float64Array(orders.floor.count + 1);
    this.#gap = new Float64Array(orders.floor.count + 1);
    const { operations } = orders.floor;
    this.#hasReleases = operations.some(({ release }) => release !== (operations[0] ?? missing()).release);
  }

  of(path: readonly number[]): Move[] {
    const { machine, before, floor } = this.orders;
    const found: Move[] = [];
    for (let from = 0, to = 0; from < path.length; from = to) {
      to = from + 1;
      while (
        to < path.length &&
        before[path[to] ?? missing()] === path[to - 1] &&
        machine[path[to] ?? missing()] === machine[path[from] ?? missing()]
      )
        to++;
      if (to - from > 1) this.#inBlock(path, from, to, found);
    }
    for (const operation of path) if ((floor.machinesOf[operation] ?? missing()) > 1) this.#toOthers(operation, found);
    return found;
  }

  #inBlock(path: readonly number[], from: number, to: number, found: Move[]): void {
    // Without set-ups and releases nothing is won at the front of the first block or at the back of the last one.
    const isPlain = !this.#hasReleases && !this.orders.floor.hasSetUps;
    const toBack = !(isPlain && to === path.length);
    const toFront = !(isPlain && from === 0);
    const block = path.slice(from, to);
    const [first, last] = [block[0] ?? missing(), block.at(-1)!];
    if (toBack)
      for (let i = block.length - 2; i >= 0; i--)
        if (!this.#isFrozen(block[i] ?? missing()) && this.#mayFollow(block[i] ?? missing(), last)) {
          const over = block.slice(i + 1);
          found.push(this.#within(block[i] ?? missing(), over, true));
        }
    if (toFront && !this.#isFrozen(first))
      for (let i = block.length === 2 && toBack ? 2 : 1; i < block.length; i++)
        if (!this.#isFrozen(block[i] ?? missing()) && this.#mayLead(block[i] ?? missing(), first)) {
          const over = block.slice(0, i);
          found.push(this.#within(block[i] ?? missing(), over, false));
        }
  }

  #isFrozen = (operation: number): boolean =>
    (this.orders.floor.operations[operation] ?? missing()).frozen !== undefined;

  /** No path leads from what follows the operation to the one it shall come behind. */
  #mayFollow(operation: number, last: number): boolean {
    const { floor, ready, finish, tail } = this.orders;
    for (let k = floor.nextAt[operation] ?? missing(); k < (floor.nextAt[operation + 1] ?? missing()); k++) {
      const after = floor.next[k] ?? missing();
      const leads =
        (ready[last] ?? missing()) >= (finish[after] ?? missing()) &&
        (tail[after] ?? missing()) - (finish[after] ?? missing()) + (ready[after] ?? missing()) >=
          (tail[last] ?? missing());
      if (leads) return false;
    }
    return true;
  }

  #mayLead(operation: number, first: number): boolean {
    const { floor, ready, finish, tail } = this.orders;
    for (const part of (floor.operations[operation] ?? missing()).after) {
      const leads =
        (ready[part] ?? missing()) >= (finish[first] ?? missing()) &&
        (tail[first] ?? missing()) - (finish[first] ?? missing()) + (ready[first] ?? missing()) >=
          (tail[part] ?? missing());
      if (leads) return false;
    }
    return true;
  }

  #within(operation: number, over: number[], isForward: boolean): Move {
    const { machine, before, behind } = this.orders;
    const segment = this.#segment;
    segment.length = 0;
    if (!isForward) segment.push(operation);
    for (const each of over) segment.push(each);
    if (isForward) segment.push(operation);
    const previous = before[isForward ? operation : (over[0] ?? missing())] ?? missing();
    const next = behind[isForward ? over.at(-1)! : operation] ?? missing();
    return {
      operation,
      machine: machine[operation] ?? missing(),
      before: isForward ? over.at(-1)! : previous,
      estimate: this.#estimate(segment, previous, next),
      over,
      isForward,
    };
  }

  /** Around the place on each other machine where it would be reached when its parts are there. */
  #toOthers(operation: number, found: Move[]): void {
    const { floor, machine, first, behind, ready, finish } = this.orders;
    if (this.#isFrozen(operation)) return;
    const from = floor.firstMachine[operation] ?? missing();
    let parts = (floor.operations[operation] ?? missing()).release;
    for (const part of (floor.operations[operation] ?? missing()).after)
      parts = Math.max(parts, finish[part] ?? missing());
    for (let m = from; m < from + (floor.machinesOf[operation] ?? missing()); m++) {
      if (m === machine[operation]) continue;
      let previous = NONE;
      let next = first[m] ?? missing();
      const offer = () => {
        this.#segment.length = 0;
        this.#segment.push(operation);
        const estimate = this.#estimate(this.#segment, previous, next);
        found.push({ operation, machine: m, before: previous, estimate, over: [], isForward: true });
      };
      while (next !== NONE && (this.#isFrozen(next) || (finish[next] ?? missing()) <= parts)) {
        previous = next;
        next = behind[next] ?? missing();
        this.looked++;
      }
      offer();
      for (
        let more = 0;
        more < PLACES && next !== NONE && (ready[next] ?? missing()) <= (ready[operation] ?? missing());
        more++
      ) {
        previous = next;
        next = behind[next] ?? missing();
        offer();
      }
    }
  }

  #freed(operation: number): number {
    const previous = this.orders.before[operation] ?? missing();
    return previous === NONE ? this.orders.floor.problem.start : (this.orders.finish[previous] ?? missing());
  }

  /**
   * When the delivery would be done with these operations in this order between two others: the longest path through one
   * of them, its beginning worked out anew and its end as long as it is now (Taillard, ORSA Journal on Computing 6, 1994;
   * memory, unverified). Paths beside them are not looked at.
   */
  #estimate(segment: readonly number[], previous: number, next: number): number {
    const { floor, finish, prepared, tail } = this.orders;
    const { operations, clocks, nextAt } = floor;
    const [head, done, gap] = [this.#head, this.#done, this.#gap];
    this.looked += 2 * segment.length;
    let last = previous;
    let free = previous === NONE ? floor.problem.start : (finish[previous] ?? missing());
    for (let i = 0; i < segment.length; i++) {
      const own = segment[i] ?? missing();
      const { after, release, run } = operations[own] ?? missing();
      const setUp = floor.hasSetUps ? floor.setUp(last, own) : 0;
      const isSet = setUp > 0 ? (clocks[own] ?? missing()).finish(free, setUp) : free;
      gap[i] = isSet - free;
      let start = Math.max(isSet, release);
      for (const part of after) if ((finish[part] ?? missing()) > start) start = finish[part] ?? missing();
      head[i] = start;
      free = (clocks[own] ?? missing()).finish(start, run);
      done[i] = free;
      last = own;
    }
    const set = next === NONE || !floor.hasSetUps ? 0 : (prepared[next] ?? missing()) - this.#freed(next);
    let longest = next === NONE || (tail[next] ?? missing()) < 0 ? 0 : (tail[next] ?? missing()) + set;
    let latest = -Infinity;
    for (let i = segment.length - 1; i >= 0; i--) {
      const own = segment[i] ?? missing();
      for (let k = nextAt[own] ?? missing(); k < (nextAt[own + 1] ?? missing()); k++)
        if ((tail[floor.next[k] ?? missing()] ?? missing()) > longest)
          longest = tail[floor.next[k] ?? missing()] ?? missing();
      longest += (done[i] ?? missing()) - (head[i] ?? missing());
      if ((head[i] ?? missing()) + longest > latest) latest = (head[i] ?? missing()) + longest;
      longest += gap[i] ?? missing();
    }
    return latest;
  }
}

const PLACES = 3; // chosen: further places on another machine that are looked at
