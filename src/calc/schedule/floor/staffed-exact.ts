import { missing } from "../../../units/certain.ts";
import type { Floor } from "./orders.ts";
import type { CrewSpan, Worth } from "./problem.ts";
import { Staff } from "./staff.ts";
import type { Effort } from "./tabu.ts";

const NONE = -1;

/**
 * All lists of a small floor with people, each run and set-up at the first moment that is possible, in the order of their
 * beginnings: of any schedule that order, worked out again, is nowhere later, so that the best one is among them.
 */
export class StaffedExact {
  /** Better than what was known; undefined: nothing is. */
  best: { readonly list: readonly number[]; readonly machine: Int32Array } | undefined;
  #worth: Pick<Worth, "late" | "setUp">;
  readonly #list: number[] = [];
  readonly #machine: Int32Array;
  readonly #last: Int32Array;
  readonly #free: Float64Array;
  /** Whose set-up the machine is ready for, and since when. */
  readonly #setFor: Int32Array;
  readonly #setAt: Float64Array;
  readonly #finish: Float64Array;
  readonly #isDone: Uint8Array;
  readonly #staff: Staff;
  /** What stands, for a staff that can only be filled: begun, work, operation. */
  readonly #taken: { readonly i: number; readonly begin: number; readonly work: number }[] = [];
  #setUps = 0;
  #left: number;

  constructor(
    readonly floor: Floor,
    crew: () => Iterator<CrewSpan>,
    known: Worth,
    readonly effort: Effort,
  ) {
    const { count, machines, problem } = floor;
    this.#worth = known;
    this.#staff = new Staff(crew);
    this.#machine = new Int32Array(count).fill(NONE);
    this.#last = new Int32Array(machines).fill(NONE);
    this.#free = new Float64Array(machines).fill(problem.start);
    this.#setFor = new Int32Array(machines).fill(NONE);
    this.#setAt = new Float64Array(machines);
    this.#finish = new Float64Array(count);
    this.#isDone = new Uint8Array(count);
    this.#left = count;
  }

  /** True where all were looked at. */
  look(): boolean {
    this.#goOn(Number.NEGATIVE_INFINITY);
    return this.effort.isLeft;
  }

  #goOn(from: number): void {
    const { floor, effort } = this;
    effort.spend(4 * floor.count);
    if (!effort.isLeft || this.#isNoBetter()) return;
    if (this.#left === 0) {
      this.best = { list: [...this.#list], machine: this.#machine.slice() };
      this.#worth = { late: this.#late(), setUp: this.#setUps };
      return;
    }
    for (let i = 0; i < floor.count; i++) {
      if (this.#isDone[i] || this.#isHeld(i)) continue;
      const first = floor.firstMachine[i] ?? missing();
      if (first === NONE) this.#tryRun(i, NONE, from);
      for (let m = first; m < first + (floor.machinesOf[i] ?? missing()); m++) {
        if (this.#setFor[m] === i) this.#tryRun(i, m, from);
        else if (this.#setFor[m] === NONE && !this.#isSetElsewhere(i, m)) this.#trySetUp(i, m, from);
      }
    }
  }

  #isSetElsewhere(i: number, machine: number): boolean {
    const first = this.floor.firstMachine[i] ?? missing();
    for (let m = first; m < first + (this.floor.machinesOf[i] ?? missing()); m++)
      if (m !== machine && this.#setFor[m] === i) return true;
    return false;
  }

  #isHeld(i: number): boolean {
    const { operations } = this.floor;
    const { station, frozen = Infinity } = operations[i] ?? missing();
    return operations.some(
      (other, k) => !this.#isDone[k] && k !== i && other.station === station && (other.frozen ?? Infinity) < frozen,
    );
  }

  #place(i: number, from: number, work: number): number {
    const { people, frozen } = this.floor.operations[i] ?? missing();
    this.#staff.clear();
    for (const each of this.#taken)
      this.#staff.occupy(
        this.floor.clocks[each.i] ?? missing(),
        each.begin,
        each.work,
        (this.floor.operations[each.i] ?? missing()).people,
      );
    return frozen !== undefined && frozen < 0
      ? from
      : this.#staff.take(this.floor.clocks[i] ?? missing(), from, work, people);
  }

  /** A set-up of no length is no step of its own. */
  #trySetUp(i: number, machine: number, from: number): void {
    const setUp = this.floor.setUp(this.#last[machine] ?? missing(), i);
    const begin =
      setUp > 0 ? this.#place(i, this.#free[machine] ?? missing(), setUp) : (this.#free[machine] ?? missing());
    if (setUp > 0 && begin < from) return;
    this.#setFor[machine] = i;
    this.#setAt[machine] = setUp > 0 ? (this.floor.clocks[i] ?? missing()).finish(begin, setUp) : begin;
    this.#setUps += setUp;
    this.#list.push(~i);
    if (setUp > 0) {
      this.#taken.push({ i, begin, work: setUp });
      this.#goOn(begin);
      this.#taken.pop();
    } else this.#tryRun(i, machine, from);
    this.#list.pop();
    this.#setUps -= setUp;
    this.#setFor[machine] = NONE;
  }

  #tryRun(i: number, machine: number, from: number): void {
    const { operations, clocks } = this.floor;
    const { after, release, run } = operations[i] ?? missing();
    if (after.some((part) => !this.#isDone[part])) return;
    let ready = machine === NONE ? release : Math.max(release, this.#setAt[machine] ?? missing());
    for (const part of after) ready = Math.max(ready, this.#finish[part] ?? missing());
    const begin = machine === NONE ? ready : this.#place(i, ready, run);
    // What takes nobody stands in nobody's order.
    if (machine !== NONE && begin < from) return;
    const [last, free] =
      machine === NONE ? [NONE, 0] : [this.#last[machine] ?? missing(), this.#free[machine] ?? missing()];
    this.#finish[i] = (clocks[i] ?? missing()).finish(begin, run);
    this.#isDone[i] = 1;
    this.#left--;
    this.#list.push(i);
    if (machine !== NONE) {
      this.#machine[i] = machine;
      this.#last[machine] = i;
      this.#free[machine] = this.#finish[i] ?? missing();
      this.#setFor[machine] = NONE;
      this.#taken.push({ i, begin, work: run });
    }
    this.#goOn(machine === NONE ? from : begin);
    if (machine !== NONE) {
      this.#taken.pop();
      this.#setFor[machine] = i;
      this.#last[machine] = last;
      this.#free[machine] = free;
    }
    this.#list.pop();
    this.#left++;
    this.#isDone[i] = 0;
  }

  /** By what is done so far, the rest with every machine to itself. */
  #isNoBetter(): boolean {
    const late = this.#late();
    return late > this.#worth.late || (late === this.#worth.late && this.#setUps >= this.#worth.setUp);
  }

  #late(): number {
    const { operations, clocks, count, problem } = this.floor;
    for (let i = 0; i < count; i++) {
      if (this.#isDone[i]) continue;
      let head = (operations[i] ?? missing()).release;
      for (const part of (operations[i] ?? missing()).after) head = Math.max(head, this.#finish[part] ?? missing());
      this.#finish[i] = (clocks[i] ?? missing()).finish(head, (operations[i] ?? missing()).run);
    }
    return problem.deliveries.reduce(
      (sum, { due, weight, operations: last }) =>
        sum + weight * Math.max(0, Math.max(...last.map((i) => this.#finish[i] ?? missing())) - due),
      0,
    );
  }
}
