/**
 * One way to cut the sheets of a pattern: what was begun is finished, at the gauge's present setting first. What is heavy is
 * not set down before its parallel cuts are done; of light pieces in many copies all are cut at one setting before the next.
 * Nothing is cut for which the floor has no room. Rules of a shop floor (common practice). With a random stream the choices
 * between equals, and now and then others, are left to it, so that tries differ.
 */
import { entryOf, firstOf, itemAt } from "../../units/certain.ts";
import { type Part, partsOf, type Size, type Task, withSize } from "./cut-tasks.ts";
import { areaFromGrid } from "./grid.ts";
import type { Random } from "./random.ts";
import type { Bench, Open } from "./shear-bench.ts";
import {
  type Count,
  canBeFinished,
  countOf,
  greater,
  isWithin,
  leftOf,
  mayWorkOff,
  NONE,
  type Stack,
  type StackLimit,
  stacksOf,
  standingAfter,
  standingOf,
} from "./stacks.ts";
import type { FloorPace } from "./types.ts";

export interface Floor {
  readonly limit: StackLimit;
  readonly weightPerArea: number;
  readonly pace: FloorPace;
}

/** How often a try leaves the usual order: chosen. */
const OTHERWISE = 0.22;

export const isHeavy = ([w, h]: Size, { weightPerArea, pace }: Floor): boolean =>
  areaFromGrid(w * h) * weightPerArea > pace.heavy;

export class FloorTry {
  /** Stacks standing at most. */
  most: Count = NONE;

  constructor(
    private readonly bench: Bench,
    private readonly floor: Floor,
    private readonly random: Random | null,
  ) {}

  cut(name: string, sheet: Part, copies: number): void {
    this.bench.lay(name, sheet, copies, null);
    while (this.bench.open.length > 0) this.step();
  }

  private step(): void {
    const { limit } = this.floor;
    const { open } = this.bench;
    const stacks = stacksOf(open.map((one) => standingOf(one, limit)));
    const free = stacks.filter((one) => mayWorkOff(one, stacks, limit));
    const choices = (free.length > 0 ? free : stacks).map(({ key, need }) => {
      const pieces = open.filter((one) => this.keyOf(one) === key);
      return { pieces, need, isSet: pieces.some((one) => this.beginsAt(one)), level: levelOf(pieces) };
    });
    choices.sort((a, b) => Number(b.isSet) - Number(a.isSet) || b.level - a.level || a.need.all - b.need.all);
    const { pieces } = itemAt(choices, this.isOtherwise() ? this.random!.below(choices.length) : 0);
    if (this.pass(pieces)) return;
    // The whole stack before what comes off it, where there is room.
    const work = standingOf(firstOf(pieces), limit).work();
    const alike = pieces.filter((one) => standingOf(one, limit).work() === work);
    const all = this.groupsNow(alike);
    const single = all.length > 0 ? [] : this.groupsNow([firstOf(pieces)]);
    if (single.length > 0) this.visit(firstOf(pieces), single, alike.length > 1);
    else
      for (const one of alike)
        this.visit(one, all.length > 0 ? all : this.leftGroups(one).slice(0, 1), alike.length > 1);
  }

  private keyOf(one: Open): number {
    return standingOf(one, this.floor.limit).key;
  }

  private isOtherwise(): boolean {
    return this.random !== null && this.random.unit() < OTHERWISE;
  }

  private beginsAt({ task, done }: Open): boolean {
    for (let at: Open["task"] | null = task; at; at = at.stage === "trim" ? at.front.task : null) {
      if (at.groups.some((group, g) => (at !== task || !done[g]) && this.bench.stands(group))) return true;
    }
    return false;
  }

  /** Every piece that is cut at one setting, where to lift what is left of it costs less; false, with nothing done, where none is or may stand. */
  private pass(pieces: readonly Open[]): boolean {
    const copies = pieces.reduce((sum, one) => sum + one.copies, 0);
    if (pieces.some(({ task }) => task.stage === "trim") || (copies === 1 && !this.isOtherwise())) return false;
    const measures = new Map<string, { readonly one: Open; readonly g: number }[]>();
    for (const one of pieces)
      for (const g of this.nextGroups(one)) {
        const { by, measure } = itemAt(one.task.groups, g);
        const key = `${by} ${measure}`;
        measures.set(key, [...(measures.get(key) ?? []), { one, g }]);
      }
    const ranked = [...measures.values()].sort((a, b) => b.length - a.length);
    const isSet = (cuts: (typeof ranked)[number]) => {
      const { one, g } = firstOf(cuts);
      return this.bench.stands(itemAt(one.task.groups, g));
    };
    if (this.isOtherwise()) ranked.unshift(...ranked.splice(this.random!.below(ranked.length), 1));
    ranked.sort((a, b) => Number(isSet(b)) - Number(isSet(a)));
    const chosen = ranked.find(
      (cuts) =>
        cuts.every((cut) => this.isLightAfter(cut)) && this.mayStand(cuts.map(({ one, g }) => ({ one, groups: [g] }))),
    );
    if (!chosen) return false;
    for (const { one, g } of chosen) {
      this.takeUp(one);
      this.bench.cut(one, g);
    }
    return true;
  }

  /** Whether to lift what these cuts leave of a piece, for the next ones, costs less than a setting. */
  private isLightAfter({ one: { task, rest }, g }: { readonly one: Open; readonly g: number }): boolean {
    const off = itemAt(task.groups, g).falls.reduce((sum, { size }) => sum + size[task.axis], 0);
    return this.isCheapToLift(withSize(task.size, task.axis, rest - off));
  }

  private isCheapToLift(size: Size): boolean {
    const { weightPerArea, pace } = this.floor;
    return (
      !isHeavy(size, this.floor) &&
      areaFromGrid(size[0] * size[1]) * weightPerArea * pace.liftPerKilogram < pace.setting
    );
  }

  /** Groups that may be cut next. Long parts first: what falls behind the front stop is then wide enough; waste last. */
  private nextGroups(one: Open): number[] {
    const left = leftOf(one);
    const first = Math.min(...left.map((g) => phaseOf(one, g)));
    return left.filter((g) => phaseOf(one, g) === first);
  }

  /** All that is left to cut, in an order in which it may be: the present setting first, what others need as well last. */
  private leftGroups(one: Open): number[] {
    const left = leftOf(one);
    if (left.length < 2) return left;
    const isMixed = this.isOtherwise();
    const ranks = new Map<number, number>();
    for (const g of left) {
      const group = itemAt(one.task.groups, g);
      const usual = isMixed ? this.random!.unit() : this.isWantedBeside(one, group.gauge) ? 1 : 0;
      ranks.set(g, phaseOf(one, g) * PHASE + (this.bench.stands(group) ? -1 : usual));
    }
    return left.sort((a, b) => entryOf(ranks, a) - entryOf(ranks, b) || a - b);
  }

  /** Whether other stacks, or what comes off this piece, are cut at the gauge too. */
  private isWantedBeside(one: Open, gauge: number | null): boolean {
    if (gauge === null) return false;
    if (gaugesWithin(one.task).has(gauge)) return true;
    const key = this.keyOf(one);
    return this.bench.open.some(
      (other) =>
        other.task.level >= one.task.level &&
        other.task.groups.some((group, g) => group.gauge === gauge && !other.done[g]) &&
        this.keyOf(other) !== key,
    );
  }

  /** One piece on the table: these of its parallel cuts, and the part in front where that is cut on at once. */
  private visit(first: Open, begin: readonly number[], amongAlike: boolean): void {
    const { bench } = this;
    this.takeUp(first);
    let groups: readonly number[] = this.leftGroups(first).filter((g) => begin.includes(g));
    for (let one = first; ; ) {
      const { front, stage } = one.task;
      for (const g of groups) bench.cut(one, g);
      if (one.left > 0) return;
      const next = bench.open.find(({ piece }) => piece === one.piece);
      // What lies on the table and is heavy, or a sheet just trimmed, is cut on.
      const alone = one.copies === 1 && !amongAlike;
      if (!next || (stage !== "trim" && !alone && !isHeavy(front.size, this.floor))) return;
      // But not where it lies with others on a stack that is cut one setting after another.
      const stack = bench.open.filter((other) => this.keyOf(other) === this.keyOf(next));
      if (stack.length > 1 && !isHeavy(front.size, this.floor) && this.isCheapToLift(sizeOf(next))) return;
      groups = this.groupsNow([next]);
      if (groups.length === 0) return;
      one = next;
    }
  }

  /** Groups that alike pieces may be cut into before they are set down: as many as there is room for. */
  private groupsNow(alike: readonly Open[]): number[] {
    const one = firstOf(alike);
    const left = this.leftGroups(one);
    const may = (groups: readonly number[]) => this.mayStand(alike.map((each) => ({ one: each, groups })));
    if (may(left)) return left;
    const groups: number[] = [];
    for (const g of left) {
      // Every cut of an earlier phase must be made before.
      const isReady = left.every((other) => phaseOf(one, other) >= phaseOf(one, g) || groups.includes(other));
      if (isReady && may([...groups, g])) groups.push(g);
    }
    return groups;
  }

  /** Whether what these cuts leave may stand, and can be worked off. */
  private mayStand(cuts: readonly { readonly one: Open; readonly groups: readonly number[] }[]): boolean {
    const { limit } = this.floor;
    const others = this.bench.open.filter((other) => !cuts.some(({ one }) => one === other));
    const stacks: Stack[] = stacksOf([
      ...others.map((other) => standingOf(other, limit)),
      ...cuts.flatMap(({ one, groups }) => standingAfter(one, groups, limit)),
    ]);
    const own = this.keyOf(firstOf(cuts).one);
    const during = cuts.length > 1 ? countOf(stacks.filter(({ key }) => key !== own)) : NONE;
    return isWithin(during, limit) && canBeFinished(stacks, limit);
  }

  /** What stands besides the stack in work. */
  private takeUp(taken: Open): void {
    const { limit } = this.floor;
    const own = this.keyOf(taken);
    const others = this.bench.open.filter((one) => one !== taken && this.keyOf(one) !== own);
    this.most = greater(this.most, countOf(stacksOf(others.map((one) => standingOf(one, limit)))));
    this.bench.visit++;
  }
}

const sizeOf = ({ task, rest }: Open): Size => withSize(task.size, task.axis, rest);
const levelOf = (pieces: readonly Open[]): number => Math.max(...pieces.map(({ task }) => task.level));

const within = new WeakMap<Task, ReadonlySet<number | null>>();

/** Gauges of the next cuts on what comes off a piece. */
function gaugesWithin(task: Task): ReadonlySet<number | null> {
  const known =
    within.get(task) ?? new Set(partsOf(task).flatMap((part) => part.task?.groups.map(({ gauge }) => gauge) ?? []));
  within.set(task, known);
  return known;
}

/** More than the ranks of groups of one phase differ (chosen; any larger number is as good). */
const PHASE = 4;

/** 0: long parts, 1: parts by the back gauge, 2: waste off the last part. */
function phaseOf({ task }: Open, g: number): number {
  const { by, falls } = itemAt(task.groups, g);
  if (by === "gauge") return 1;
  return task.stage !== "trim" && falls.every((part) => part.task === null && part.blank === null) ? 2 : 0;
}
