import { missing } from "../../../units/certain.ts";
import type { Clock, FloorPlan, FloorProblem, Operation, Worth } from "./problem.ts";
import { steadyClock } from "./work-clock.ts";

const NONE = -1;

/** The problem laid out in flat arrays, once for every schedule of it. */
export class Floor {
  readonly count: number;
  readonly operations: readonly Operation[];
  readonly clocks: readonly Clock[];
  /** The station's first machine; NONE where its operations occupy none. */
  readonly firstMachine: Int32Array;
  readonly machinesOf: Int32Array;
  readonly machines: number;
  /** Successors of operation i stand at next[nextAt[i]..nextAt[i + 1]]. */
  readonly nextAt: Int32Array;
  readonly next: Int32Array;
  readonly hasSetUps: boolean;
  /** What every step of a search asks of each operation. */
  readonly run: Float64Array;
  readonly release: Float64Array;
  readonly parts: Int32Array;
  readonly isSteady: boolean;

  constructor(readonly problem: FloorProblem) {
    const { operations, stations } = problem;
    this.operations = operations;
    this.count = operations.length;
    this.clocks = operations.map(({ station, clock }) => clock ?? (stations[station] ?? missing()).clock);
    let machines = 0;
    const first = stations.map(({ machines: own }) => {
      if (own === Infinity) return NONE;
      machines += own;
      return machines - own;
    });
    this.machines = machines;
    this.firstMachine = Int32Array.from(operations, ({ station }) => first[station] ?? missing());
    this.machinesOf = Int32Array.from(operations, ({ station }) => {
      const { machines: own } = stations[station] ?? missing();
      return own === Infinity ? 0 : own;
    });
    const successors = operations.map((): number[] => []);
    operations.forEach(({ after }, i) => {
      for (const before of after) (successors[before] ?? missing()).push(i);
    });
    this.nextAt = new Int32Array(this.count + 1);
    successors.forEach((own, i) => {
      this.nextAt[i + 1] = (this.nextAt[i] ?? missing()) + own.length;
    });
    this.next = Int32Array.from(successors.flat());
    this.run = Float64Array.from(operations, ({ run }) => run);
    this.release = Float64Array.from(operations, ({ release }) => release);
    this.parts = Int32Array.from(operations, ({ after }) => after.length);
    this.isSteady = stations.every(({ clock }) => clock === steadyClock);
    this.hasSetUps = operations.some(({ own, change }) => own > 0 || change > 0);
  }

  /** Seconds of set-up of an operation behind another one on its machine, or behind none. */
  setUp(before: number, operation: number): number {
    const { own, lot, change, key } = this.operations[operation] ?? missing();
    if (before === NONE) return own + change;
    const last = this.operations[before] ?? missing();
    return (last.lot === lot ? 0 : own) + (last.key === key ? 0 : change);
  }
}

/** A saved schedule: which machine, and which operation comes before on it. */
export interface Saved {
  readonly machine: Int32Array;
  readonly before: Int32Array;
  readonly behind: Int32Array;
  readonly first: Int32Array;
}

/**
 * One schedule: the order of the operations on every machine, and what follows from it. Everything begins as early as its
 * order allows (semi-active). A cell per operation, so that an order is changed and worked out in a few microseconds.
 */
export class Orders {
  readonly machine: Int32Array;
  readonly before: Int32Array;
  readonly behind: Int32Array;
  readonly first: Int32Array;
  /** When its machine is free and set up for it. */
  readonly prepared: Float64Array;
  /** When all that its run waits for is there: its machine, its parts, its release. */
  readonly ready: Float64Array;
  readonly finish: Float64Array;
  readonly setUp: Float64Array;
  /** From its being ready to the end of the delivery last asked for; below 0 where it is not part of it. */
  readonly tail: Float64Array;
  /** Operations as they follow from each other. */
  readonly sequence: Int32Array;
  readonly #waits: Int32Array;
  worth: Worth = { late: Infinity, setUp: Infinity, finishes: Infinity };

  constructor(readonly floor: Floor) {
    const { count, machines } = floor;
    this.machine = new Int32Array(count).fill(NONE);
    this.before = new Int32Array(count).fill(NONE);
    this.behind = new Int32Array(count).fill(NONE);
    this.first = new Int32Array(machines).fill(NONE);
    this.prepared = new Float64Array(count);
    this.ready = new Float64Array(count);
    this.finish = new Float64Array(count);
    this.setUp = new Float64Array(count);
    this.tail = new Float64Array(count);
    this.sequence = new Int32Array(count);
    this.#waits = new Int32Array(count);
  }

  save = (): Saved => ({
    machine: this.machine.slice(),
    before: this.before.slice(),
    behind: this.behind.slice(),
    first: this.first.slice(),
  });

  restore({ machine, before, behind, first }: Saved): void {
    this.machine.set(machine);
    this.before.set(before);
    this.behind.set(behind);
    this.first.set(first);
  }

  unlink(operation: number): void {
    const [before, behind] = [this.before[operation] ?? missing(), this.behind[operation] ?? missing()];
    if (before === NONE) this.first[this.machine[operation] ?? missing()] = behind;
    else this.behind[before] = behind;
    if (behind !== NONE) this.before[behind] = before;
  }

  /** Puts an operation that stands nowhere behind another one of the machine; behind NONE it is the first. */
  insert(operation: number, machine: number, before: number): void {
    const behind = before === NONE ? (this.first[machine] ?? missing()) : (this.behind[before] ?? missing());
    this.machine[operation] = machine;
    this.before[operation] = before;
    this.behind[operation] = behind;
    if (before === NONE) this.first[machine] = operation;
    else this.behind[before] = operation;
    if (behind !== NONE) this.before[behind] = operation;
  }

  /** Works the schedule out. False where the orders wait for each other in a circle; then nothing of it is true. */
  evaluate(): boolean {
    const { floor, prepared, ready, finish, setUp, before, behind, sequence } = this;
    const { count, run, release, parts, clocks, next, nextAt, isSteady, hasSetUps } = floor;
    const { start } = floor.problem;
    const waits = this.#waits;
    let filled = 0;
    for (let i = 0; i < count; i++) {
      ready[i] = release[i] ?? missing();
      waits[i] = (parts[i] ?? missing()) + (before[i] === NONE ? 0 : 1);
      if (waits[i] === 0) sequence[filled++] = i;
    }
    for (let at = 0; at < filled; at++) {
      const i = sequence[at] ?? missing();
      const previous = before[i] ?? missing();
      const free = previous === NONE ? start : (finish[previous] ?? missing());
      const setup = hasSetUps && (floor.machinesOf[i] ?? missing()) > 0 ? floor.setUp(previous, i) : 0;
      const isSet = setup > 0 ? (clocks[i] ?? missing()).finish(free, setup) : free;
      // What no machine does may have begun before now.
      if (isSet > (ready[i] ?? missing()) && (floor.machinesOf[i] ?? missing()) > 0) ready[i] = isSet;
      const done = isSteady
        ? (ready[i] ?? missing()) + (run[i] ?? missing())
        : (clocks[i] ?? missing()).finish(ready[i] ?? missing(), run[i] ?? missing());
      setUp[i] = setup;
      prepared[i] = isSet;
      finish[i] = done;
      for (let k = nextAt[i] ?? missing(); k < (nextAt[i + 1] ?? missing()); k++) {
        const after = next[k] ?? missing();
        if (done > (ready[after] ?? missing())) ready[after] = done;
        if (--waits[after]! === 0) sequence[filled++] = after;
      }
      const after = behind[i] ?? missing();
      if (after !== NONE && --waits[after]! === 0) sequence[filled++] = after;
    }
    if (filled < count) return false;
    this.worth = this.weigh();
    return true;
  }

  finishOf(delivery: number): number {
    let last = -Infinity;
    for (const operation of (this.floor.problem.deliveries[delivery] ?? missing()).operations)
      if ((this.finish[operation] ?? missing()) > last) last = this.finish[operation] ?? missing();
    return last;
  }

  /** What the finishes and set-ups are worth, as they stand. */
  weigh(): Worth {
    let [late, finishes, setUp] = [0, 0, 0];
    const { deliveries } = this.floor.problem;
    for (let d = 0; d < deliveries.length; d++) {
      const { due, weight } = deliveries[d] ?? missing();
      const done = this.finishOf(d);
      if (done > due) late += weight * (done - due);
      finishes += weight * done;
    }
    if (this.floor.hasSetUps) for (let i = 0; i < this.floor.count; i++) setUp += this.setUp[i] ?? missing();
    return { late, setUp, finishes };
  }

  /** How long from each operation's being ready to the end of a delivery, as the schedule stands. */
  measureTails(delivery: number): void {
    const { tail, floor, sequence, behind, prepared, ready, finish } = this;
    const { count, next, nextAt } = floor;
    tail.fill(-1);
    for (const operation of (floor.problem.deliveries[delivery] ?? missing()).operations) tail[operation] = 0;
    for (let at = count - 1; at >= 0; at--) {
      const i = sequence[at] ?? missing();
      let longest = tail[i] ?? missing();
      for (let k = nextAt[i] ?? missing(); k < (nextAt[i + 1] ?? missing()); k++)
        if ((tail[next[k] ?? missing()] ?? missing()) > longest) longest = tail[next[k] ?? missing()] ?? missing();
      const after = behind[i] ?? missing();
      if (after !== NONE && (tail[after] ?? missing()) >= 0)
        longest = Math.max(
          longest,
          (tail[after] ?? missing()) + (prepared[after] ?? missing()) - (finish[i] ?? missing()),
        );
      tail[i] = longest < 0 ? -1 : longest + (finish[i] ?? missing()) - (ready[i] ?? missing());
    }
  }

  plan(): FloorPlan {
    const machines = Array.from(this.first, (first) => {
      const own: number[] = [];
      for (let i = first; i !== NONE; i = this.behind[i] ?? missing()) own.push(i);
      return own;
    });
    const { ready, finish, setUp, worth } = this;
    return { machines, ready: [...ready], finish: [...finish], setUp: [...setUp], worth };
  }

  /** The orders of a plan, of this problem or of one that has these operations. */
  follow(machines: FloorPlan["machines"]): void {
    this.first.fill(NONE);
    machines.forEach((own, machine) => {
      own.forEach((operation, i) => {
        this.insert(operation, machine, i === 0 ? NONE : (own[i - 1] ?? missing()));
      });
    });
  }
}
