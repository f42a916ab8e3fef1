/** Lists of runs and set-ups: what takes its people first, and what that list is worth. */
import { missing } from "../../../units/certain.ts";
import { type Floor, Orders } from "./orders.ts";
import type { CrewSpan, FloorPlan, Worth } from "./problem.ts";
import { Staff } from "./staff.ts";

const NONE = -1;

/** Runs and set-ups in the order in which they take their people: the run of i is i, its set-up ~i. */
export type List = readonly number[];

export interface Listed {
  readonly list: List;
  /** The machine of each operation; NONE where it occupies none. */
  readonly machine: Int32Array;
}

/** One list worked out: each run and set-up in turn at the first moment at which machine, parts and people are there. */
export class Listing {
  readonly orders: Orders;
  readonly begins: Float64Array;
  readonly #staff: Staff;
  readonly #isSet: Uint8Array;
  readonly #isDone: Uint8Array;

  constructor(
    readonly floor: Floor,
    crew: () => Iterator<CrewSpan>,
  ) {
    this.orders = new Orders(floor);
    this.#staff = new Staff(crew);
    this.begins = new Float64Array(floor.count);
    this.#isSet = new Uint8Array(floor.count);
    this.#isDone = new Uint8Array(floor.count);
  }

  work({ list, machine }: Listed): Worth {
    const { orders, floor } = this;
    this.#staff.clear();
    this.#isSet.fill(0);
    this.#isDone.fill(0);
    orders.first.fill(NONE);
    const last = new Int32Array(floor.machines).fill(NONE);
    for (const i of list) {
      const own = i < 0 ? NONE : (machine[i] ?? missing());
      if (own === NONE) continue;
      orders.insert(i, own, last[own] ?? missing());
      last[own] = i;
    }
    for (const code of list) {
      if (code < 0) this.#setUp(~code);
      else this.#run(code);
    }
    orders.worth = orders.weigh();
    return orders.worth;
  }

  #setUp(i: number): void {
    const { orders, floor } = this;
    if (this.#isSet[i] || floor.machinesOf[i] === 0) return;
    const before = orders.before[i] ?? missing();
    // What goes before on its machine is later in the list: it is set up when its run is due.
    if (before !== NONE && !this.#isDone[before]) return;
    const { people, frozen } = floor.operations[i] ?? missing();
    const clock = floor.clocks[i] ?? missing();
    const free = before === NONE ? floor.problem.start : (orders.finish[before] ?? missing());
    const setUp = floor.setUp(before, i);
    const begin = frozen !== undefined && frozen < 0 ? free : this.#staff.take(clock, free, setUp, people);
    this.begins[i] = begin;
    orders.setUp[i] = setUp;
    orders.prepared[i] = setUp > 0 ? clock.finish(begin, setUp) : begin;
    this.#isSet[i] = 1;
  }

  #run(i: number): void {
    const { orders, floor } = this;
    const { after, release, run, people, frozen } = floor.operations[i] ?? missing();
    const clock = floor.clocks[i] ?? missing();
    this.#setUp(i);
    let ready = release;
    if ((floor.machinesOf[i] ?? missing()) > 0) ready = Math.max(ready, orders.prepared[i] ?? missing());
    for (const part of after) if ((orders.finish[part] ?? missing()) > ready) ready = orders.finish[part] ?? missing();
    // Who is at work already needs nobody's leave, and what a vendor does takes none of the people here.
    if (frozen !== undefined && frozen < 0) this.#staff.occupy(clock, ready, run, people);
    else if ((floor.machinesOf[i] ?? missing()) > 0) ready = this.#staff.take(clock, ready, run, people);
    orders.ready[i] = ready;
    orders.finish[i] = clock.finish(ready, run);
    this.#isDone[i] = 1;
  }

  /**
   * The list in the order of its own beginnings, again until nothing begins sooner: worked out anew it is nowhere later,
   * and with more people, machines or hours neither.
   */
  settled(given: Listed): Listed {
    let listed = given;
    for (let before = Infinity; ; ) {
      this.work(listed);
      const at = (code: number): number =>
        code < 0 ? (this.begins[~code] ?? missing()) : (this.orders.ready[code] ?? missing());
      const sum = listed.list.reduce((all, code) => all + at(code), 0);
      if (sum >= before) return listed;
      before = sum;
      listed = { ...listed, list: [...listed.list].sort((a, b) => at(a) - at(b)) };
    }
  }

  /** As it was worked out last, each set-up as near before its run as people allow. */
  plan({ list }: Listed): FloorPlan {
    const { orders, floor, begins } = this;
    const runs = list
      .filter((code) => code >= 0)
      .sort((a, b) => (orders.ready[b] ?? missing()) - (orders.ready[a] ?? missing()));
    for (const i of runs) {
      const setUp = orders.setUp[i] ?? missing();
      if (floor.machinesOf[i] === 0 || setUp === 0) {
        begins[i] = orders.ready[i] ?? missing();
        continue;
      }
      const { people } = floor.operations[i] ?? missing();
      const clock = floor.clocks[i] ?? missing();
      const late = clock.latest(orders.ready[i] ?? missing(), setUp);
      if (late <= (begins[i] ?? missing())) continue;
      this.#staff.occupy(clock, begins[i] ?? missing(), setUp, -people);
      if (this.#staff.isFree(clock, late, setUp, people)) begins[i] = late;
      this.#staff.occupy(clock, begins[i] ?? missing(), setUp, people);
    }
    return { ...orders.plan(), begins: [...begins], list };
  }
}
