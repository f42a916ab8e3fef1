import { missing } from "../../../units/certain.ts";
import type { Random } from "../../cutting/random.ts";
import { criticalPath, type Move, Moves } from "./moves.ts";
import type { Orders, Saved } from "./orders.ts";
import { compareWorth, type Worth } from "./problem.ts";

const EVERY = 16; // chosen

/** What a search may still do, in operations looked at: the same on every machine. */
export class Effort {
  #left: number;
  #asked = 0;
  #isStopped = false;

  constructor(
    units: number,
    private readonly stop: () => boolean = () => false,
  ) {
    this.#left = units;
  }

  spend(units: number): void {
    this.#left -= units;
  }

  /** A clock is looked at now and then: to ask it takes longer than a step. */
  get isLeft(): boolean {
    if (this.#asked++ % EVERY === 0) this.#isStopped ||= this.stop();
    return this.#left > 0 && !this.#isStopped;
  }
}

const TABLE = 2 ** 16; // chosen; two orders that share a cell are at worst forbidden together
const SHORTEST = 7; // chosen on published job shops: steps for which an order that was left stays forbidden, and as many again by chance
const TRIED = 4; // chosen: moves worked out in full where several deliveries have a say

/** Tabu search on the critical path of one delivery after another (Nowicki and Smutnicki 1996, see moves). */
export class TabuSearch {
  readonly #forbidden = new Int32Array(TABLE);
  readonly #moves: Moves;
  #step = 0;

  constructor(
    readonly orders: Orders,
    readonly random: Random,
    readonly effort: Effort,
  ) {
    this.#moves = new Moves(orders);
  }

  /** From the schedule as it stands, until so many steps bring nothing better. Leaves the best one standing. */
  improve(patience: number, isEnough: (worth: Worth) => boolean): void {
    const { orders, effort } = this;
    orders.evaluate();
    let best = orders.worth;
    let saved = orders.save();
    this.#forbidden.fill(0);
    this.#step = 1;
    for (let idle = 0; idle < patience && effort.isLeft && !isEnough(best); idle++) {
      if (!this.#takeStep(best)) break;
      if (compareWorth(orders.worth, best) >= 0) continue;
      best = orders.worth;
      saved = orders.save();
      idle = 0;
    }
    orders.restore(saved);
    orders.evaluate();
  }

  /** False where no delivery can be moved. */
  #takeStep(best: Worth): boolean {
    const { orders, random } = this;
    const { count, problem } = orders.floor;
    this.#step++;
    for (const delivery of this.#inTurn()) {
      orders.measureTails(delivery);
      this.effort.spend(count);
      const path = criticalPath(orders, delivery, random);
      const moves = this.#moves.of(path);
      this.effort.spend(this.#moves.looked);
      this.#moves.looked = 0;
      if (moves.length === 0) continue;
      const taken =
        problem.deliveries.length === 1 ? this.#byEstimate(moves, delivery, best) : this.#byWorth(moves, best);
      if (taken !== undefined) {
        this.#take(taken);
        this.effort.spend(count);
        if (orders.evaluate()) return true;
        this.#undo();
      }
      orders.evaluate();
    }
    return false;
  }

  /** Late deliveries first, by chance and weight; then the others. */
  #inTurn(): number[] {
    const { orders, random } = this;
    const { deliveries } = orders.floor.problem;
    if (deliveries.length === 1) return [0];
    const drawn = deliveries.map(({ due, weight }, d) => {
      const late = weight * Math.max(0, orders.finishOf(d) - due);
      return { d, figure: (late > 0 ? 1 + late : 1e-9) * random.unit() };
    });
    return drawn.sort((a, b) => b.figure - a.figure || a.d - b.d).map(({ d }) => d);
  }

  #byEstimate(moves: readonly Move[], delivery: number, best: Worth): Move {
    const { due, weight } = this.orders.floor.problem.deliveries[delivery] ?? missing();
    let taken: Move | undefined;
    let ways = 0;
    for (const move of moves) {
      if (this.#isForbidden(move) && weight * (move.estimate - due) >= best.late) continue;
      if (taken && move.estimate > taken.estimate) continue;
      if (taken && move.estimate === taken.estimate && this.random.below(++ways) > 0) continue;
      if (!taken || move.estimate < taken.estimate) ways = 1;
      taken = move;
    }
    return taken ?? moves[this.random.below(moves.length)] ?? missing();
  }

  /** The most promising ones worked out in full. */
  #byWorth(moves: readonly Move[], best: Worth): Move | undefined {
    const { orders, effort } = this;
    const promising = [...moves].sort((a, b) => a.estimate - b.estimate);
    let [taken, worth]: [Move | undefined, Worth] = [undefined, orders.worth];
    let tried = 0;
    for (const move of promising) {
      if (tried === TRIED) break;
      const forbidden = this.#isForbidden(move);
      if (forbidden && tried > 0 && taken) continue;
      this.#put(move);
      effort.spend(orders.floor.count);
      const isPossible = orders.evaluate();
      const found = orders.worth;
      this.#undo();
      if (!isPossible || (forbidden && compareWorth(found, best) >= 0)) continue;
      tried++;
      if (taken && compareWorth(found, worth) >= 0) continue;
      taken = move;
      worth = found;
    }
    return taken;
  }

  #last: { operation: number; machine: number; before: number } | undefined;
  #put({ operation, machine, before }: Move): void {
    const { orders } = this;
    this.#last = {
      operation,
      machine: orders.machine[operation] ?? missing(),
      before: orders.before[operation] ?? missing(),
    };
    orders.unlink(operation);
    orders.insert(operation, machine, before);
  }
  #undo(): void {
    const { operation, machine, before } = this.#last!;
    this.orders.unlink(operation);
    this.orders.insert(operation, machine, before);
  }

  #take(move: Move): void {
    const { operation, over, isForward } = move;
    const until = this.#step + SHORTEST + this.random.below(SHORTEST);
    if (over.length === 0)
      this.#forbidden[this.#cell(operation, ~(this.orders.machine[operation] ?? missing()))] = until;
    // What stood before what shall not do so again for a while.
    for (const each of over)
      this.#forbidden[isForward ? this.#cell(operation, each) : this.#cell(each, operation)] = until;
    this.#put(move);
  }

  /** Only what would bring back every order that was left. */
  #isForbidden({ operation, over, isForward, machine }: Move): boolean {
    const until = (a: number, b: number) => (this.#forbidden[this.#cell(a, b)] ?? missing()) > this.#step;
    if (over.length === 0) return until(operation, ~machine);
    return over.every((each) => (isForward ? until(each, operation) : until(operation, each)));
  }

  #cell = (a: number, b: number): number => (Math.imul(a, 40503) + Math.imul(b, 30011)) & (TABLE - 1); // chosen primes
}

/** A place to go on from: a schedule and what it is worth. */
export interface Elite {
  readonly saved: Saved;
  readonly worth: Worth;
}
