import { missing } from "../../../units/certain.ts";
import { preemptiveBound, steadyTails } from "./bound.ts";
import { type Floor, Orders } from "./orders.ts";
import type { FloorPlan, Worth } from "./problem.ts";
import type { Effort } from "./tabu.ts";

const NONE = -1;

/** Beyond that nothing is proved in a time that anybody waits (chosen). */
export const MOST_EXACT = 60;

/**
 * The schedule of least lateness and then least set-up, which is the given one where nothing is better; undefined where
 * the effort did not suffice. Branch and bound: operations are taken in the order of their beginnings, so that every
 * semi-active schedule is met once. Without set-ups only active ones are (Giffler and Thompson 1960, see dispatch), and
 * each machine's open work is bounded by Jackson's preemptive schedule (Carlier and Pinson, Management Science 35, 1989;
 * memory, unverified).
 */
export function exactPlan(floor: Floor, best: FloorPlan, effort: Effort): FloorPlan | undefined {
  const branch = new Branching(floor, best, effort);
  branch.descend(0, NONE);
  return effort.isLeft ? branch.best : undefined;
}

class Branching {
  best: FloorPlan;
  readonly #orders: Orders;
  /** Last operation of every machine, and when it is done. */
  readonly #last: Int32Array;
  readonly #free: Float64Array;
  readonly #finish: Float64Array;
  readonly #waits: Int32Array;
  readonly #isDone: Uint8Array;
  readonly #head: Float64Array;
  readonly #members: readonly (readonly [delivery: number, station: number, own: readonly number[]])[];
  readonly #tails: readonly Float64Array[];
  #setUp = 0;
  #left: number;

  constructor(
    readonly floor: Floor,
    best: FloorPlan,
    readonly effort: Effort,
  ) {
    const { count, machines, operations, problem } = floor;
    this.best = best;
    this.#orders = new Orders(floor);
    this.#last = new Int32Array(machines).fill(NONE);
    this.#free = new Float64Array(machines).fill(problem.start);
    this.#finish = new Float64Array(count);
    this.#waits = Int32Array.from(operations, ({ after }) => after.length);
    this.#isDone = new Uint8Array(count);
    this.#head = new Float64Array(count);
    this.#left = count;
    this.#tails = problem.deliveries.map(({ operations: last }) => steadyTails(floor, last));
    this.#members = problem.deliveries.flatMap((_, delivery) =>
      problem.stations.flatMap(({ machines: own }, station) => {
        const members = operations.flatMap((operation, i) =>
          operation.station === station && (this.#tails[delivery] ?? missing())[i]! >= 0 ? [i] : [],
        );
        return own === Infinity || members.length === 0 ? [] : [[delivery, station, members] as const];
      }),
    );
  }

  /** Goes through all ways to go on; the operation taken last began at `from`. */
  descend(from: number, previous: number): void {
    const { floor, effort } = this;
    if (!effort.isLeft) return;
    const { operations, firstMachine, clocks, count } = floor;
    for (let i = 0; i < count; i++)
      if (this.#waits[i] === 0 && !this.#isDone[i] && firstMachine[i] === NONE) {
        const finish = (clocks[i] ?? missing()).finish(this.#parts(i), (operations[i] ?? missing()).run);
        this.#take(i, finish, () => this.descend(from, previous));
        return;
      }
    if (this.#left === 0) {
      this.#keep();
      return;
    }
    effort.spend(4 * count);
    const bound = this.#bound(from);
    const { late, setUp } = this.best.worth;
    if (bound.late > late || (bound.late === late && bound.setUp >= setUp)) return;
    for (const { operation, machine, start, finish } of this.#choices(from, previous)) {
      const setUpHere = floor.setUp(this.#last[machine] ?? missing(), operation);
      const [last, free] = [this.#last[machine] ?? missing(), this.#free[machine] ?? missing()];
      this.#orders.insert(operation, machine, last);
      this.#last[machine] = operation;
      this.#free[machine] = finish;
      this.#setUp += setUpHere;
      this.#take(operation, finish, () => this.descend(start, operation));
      this.#setUp -= setUpHere;
      this.#last[machine] = last;
      this.#free[machine] = free;
      this.#orders.unlink(operation);
    }
  }

  #take(operation: number, finish: number, goOn: () => void): void {
    const { next, nextAt } = this.floor;
    this.#finish[operation] = finish;
    this.#isDone[operation] = 1;
    this.#left--;
    for (let k = nextAt[operation] ?? missing(); k < (nextAt[operation + 1] ?? missing()); k++)
      this.#waits[next[k] ?? missing()]!--;
    goOn();
    for (let k = nextAt[operation] ?? missing(); k < (nextAt[operation + 1] ?? missing()); k++)
      this.#waits[next[k] ?? missing()]!++;
    this.#left++;
    this.#isDone[operation] = 0;
  }

  #parts(operation: number): number {
    const { after, release } = this.floor.operations[operation] ?? missing();
    let parts = release;
    for (const part of after) if ((this.#finish[part] ?? missing()) > parts) parts = this.#finish[part] ?? missing();
    return parts;
  }

  #choices(from: number, previous: number) {
    const { operations, count, firstMachine, machinesOf, clocks, hasSetUps, machines } = this.floor;
    const soonest = new Float64Array(machines).fill(Infinity);
    const found: { operation: number; machine: number; start: number; finish: number }[] = [];
    for (let i = 0; i < count; i++) {
      if (this.#waits[i] !== 0 || this.#isDone[i] || this.#isHeld(i)) continue;
      const parts = this.#parts(i);
      let hasEmpty = false;
      for (
        let m = firstMachine[i] ?? missing();
        m < (firstMachine[i] ?? missing()) + (machinesOf[i] ?? missing());
        m++
      ) {
        // Of several machines that are all empty one is as good as the other.
        if (this.#last[m] === NONE && hasEmpty) continue;
        hasEmpty ||= this.#last[m] === NONE;
        const isSet = (clocks[i] ?? missing()).finish(
          this.#free[m] ?? missing(),
          this.floor.setUp(this.#last[m] ?? missing(), i),
        );
        const start = Math.max(parts, isSet);
        const finish = (clocks[i] ?? missing()).finish(start, (operations[i] ?? missing()).run);
        soonest[m] = Math.min(soonest[m] ?? missing(), finish);
        found.push({ operation: i, machine: m, start, finish });
      }
    }
    const isInOrder = ({ operation, machine, start }: (typeof found)[number]): boolean =>
      start > from ||
      (start === from &&
        (operation > previous ||
          this.#last[machine] === previous ||
          (operations[operation] ?? missing()).after.includes(previous)));
    return found
      .filter(
        (choice) =>
          isInOrder(choice) &&
          (hasSetUps ||
            choice.start < (soonest[choice.machine] ?? missing()) ||
            choice.finish === soonest[choice.machine]),
      )
      .sort((a, b) => a.start - b.start || a.operation - b.operation);
  }

  #isHeld(operation: number): boolean {
    const { operations, count } = this.floor;
    const { station, frozen } = operations[operation] ?? missing();
    for (let i = 0; i < count; i++) {
      const other = operations[i] ?? missing();
      if (i === operation || this.#isDone[i] || other.station !== station || other.frozen === undefined) continue;
      if (frozen === undefined || other.frozen < frozen) return true;
    }
    return false;
  }

  /** Nothing that is still open begins before `from`. */
  #bound(from: number): Worth {
    const { operations, count, clocks, problem, firstMachine, machinesOf } = this.floor;
    const done = (i: number) =>
      this.#isDone[i]
        ? (this.#finish[i] ?? missing())
        : (clocks[i] ?? missing()).finish(this.#head[i] ?? missing(), (operations[i] ?? missing()).run);
    for (let i = 0; i < count; i++) {
      if (this.#isDone[i]) continue;
      const { after, release } = operations[i] ?? missing();
      let head = release;
      for (const part of after) head = Math.max(head, done(part));
      let free = Infinity;
      for (let m = firstMachine[i] ?? missing(); m < (firstMachine[i] ?? missing()) + (machinesOf[i] ?? missing()); m++)
        free = Math.min(free, this.#free[m] ?? missing());
      if (free < Infinity) head = Math.max(head, free, from);
      this.#head[i] = head;
    }
    const least = problem.deliveries.map(({ operations: last }) => Math.max(...last.map(done)));
    for (const [delivery, station, own] of this.#members) {
      const open = own.filter((i) => !this.#isDone[i]);
      if (open.length === 0) continue;
      const { machines, clock } = problem.stations[station] ?? missing();
      const bound =
        this.floor.isSteady && machines === 1
          ? preemptiveBound(
              open.map((i) => ({
                head: this.#head[i] ?? missing(),
                run: (operations[i] ?? missing()).run,
                tail: (this.#tails[delivery] ?? missing())[i]!,
              })),
            )
          : clock.finish(
              Math.min(...open.map((i) => this.#head[i] ?? missing())),
              open.reduce((sum, i) => sum + (operations[i] ?? missing()).run, 0) / machines,
            );
      least[delivery] = Math.max(least[delivery] ?? missing(), bound);
    }
    const late = problem.deliveries.reduce(
      (sum, { due, weight }, d) => sum + weight * Math.max(0, (least[d] ?? missing()) - due),
      0,
    );
    return { late, setUp: this.#setUp, finishes: 0 };
  }

  #keep(): void {
    if (!this.#orders.evaluate()) return;
    const { worth } = this.#orders;
    const { late, setUp } = this.best.worth;
    if (worth.late < late || (worth.late === late && worth.setUp < setUp)) this.best = this.#orders.plan();
  }
}
