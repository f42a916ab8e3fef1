/**
 * The order of the cuts on the floor: one pattern's sheets after another's, each sheet stripped in one visit to the table
 * where the stacks of parts that come off it may all stand, part by part where not; then the stack whose first setting is
 * the gauge's present one. What is heavy is not set down before its parallel cuts are done; what is light and stands in
 * many copies is cut one setting after another. Rules of a shop floor (common practice), the choice between them by time.
 */
import { type Group, type Part, type Task, withSize } from "./cut-tasks.ts";
import { areaFromGrid } from "./grid.ts";
import type { Bench, Open } from "./shear-bench.ts";
import { type Count, countStacks, isLong, peakOf, type StackLimit, standingKey } from "./stacks.ts";
import type { FloorPace, PlannedPattern } from "./types.ts";

export interface Standing {
  readonly stacks: number;
  readonly longStacks: number;
  readonly leastHeavyLifts: number;
}

export class FloorOrder {
  private most: Count = { all: 0, long: 0 };
  private leastHeavy = 0;

  constructor(
    private readonly bench: Bench,
    private readonly limit: StackLimit,
    private readonly weightPerArea: number,
    private readonly pace: FloorPace,
    /** One group of cuts a visit, whatever time it takes: needs the fewest stacks. */
    private readonly sparing = false,
    /** The sheets in the order given: some parts are wanted first. */
    private readonly inOrder = false,
  ) {}

  run(sheets: readonly Part[], patterns: readonly PlannedPattern[]): Standing {
    const left = sheets.map((_, p) => p);
    while (left.length > 0) {
      // The sheet whose first gauge is set already, else the next.
      const at = this.inOrder ? 0 : left.findIndex((p) => this.beginsAt(sheets[p]!.task));
      const [p] = left.splice(Math.max(0, at), 1);
      this.leastHeavy += this.heavyIn(sheets[p!]!, true) * patterns[p!]!.repeats;
      this.bench.lay(patterns[p!]!.id, sheets[p!]!, null);
      while (this.bench.open.length > 0) this.visitNext();
    }
    return { stacks: this.most.all, longStacks: this.most.long, leastHeavyLifts: this.leastHeavy };
  }

  /** Heavy pieces that must be taken up at least once: the sheet, those that fall and are cut further, and what a front stop lets fall. */
  private heavyIn({ task, size }: Part, lifted: boolean): number {
    if (!task) return 0;
    const falls = task.groups.flatMap((group) => group.falls);
    const own = (lifted && this.isHeavy(size) ? 1 : 0) + this.heavyBehindStop(task);
    return own + this.heavyIn(task.front, false) + falls.reduce((sum, part) => sum + this.heavyIn(part, true), 0);
  }

  /** However small the rest has become by then. */
  private heavyBehindStop(task: Task): number {
    const { axis, size, front } = task;
    let rest = front.size[axis];
    let heavy = 0;
    for (const { by, falls } of task.groups) {
      if (by !== "front stop") continue;
      falls.forEach(({ task: more, blank, size: off }, k) => {
        const isPart = more !== null || blank !== null;
        if (isPart && (k > 0 || front.task !== null) && this.isHeavy(withSize(size, axis, rest))) heavy++;
        rest += off[axis];
      });
    }
    return heavy;
  }

  private isHeavy([w, h]: readonly [number, number]): boolean {
    return areaFromGrid(w * h) * this.weightPerArea > this.pace.heavy;
  }

  private beginsAt(task: Task | null): boolean {
    for (let at = task; at; at = at.stage === "trim" ? at.front.task : null) {
      if (at.groups.some((group) => this.bench.stands(group))) return true;
    }
    return false;
  }

  private visitNext(): void {
    const { open } = this.bench;
    // The finest first: what was begun is finished. Of those the stack at the gauge's present setting.
    const ready = [...open].sort((a, b) => b.task.level - a.task.level || this.roomOf(a) - this.roomOf(b));
    const free = ready.filter((one) => this.mayWorkOn(one, this.besides(one)));
    const finest = free[0] ?? ready[0]!;
    const next = free.find((one) => one.task.level === finest.task.level && this.beginsAt(one.task)) ?? finest;
    const { key, size } = standingKey(next);
    const stack = open.filter((one) => standingKey(one).key === key);
    const copies = stack.reduce((sum, one) => sum + one.copies, 0);
    const lift = areaFromGrid(size[0] * size[1]) * this.weightPerArea * this.pace.liftPerKilogram;
    if (copies > 1 && next.left > 1 && !this.isHeavy(size) && lift < this.pace.setting && this.stageBySetting(stack))
      return;
    const groups = this.nextGroups(next, this.besides(next));
    // The whole stack before what comes off it.
    stack.forEach((one, k) => {
      this.visit(one, groups, stack.slice(k + 1));
    });
  }

  /** What stands besides the stack a piece lies on. */
  private besides(one: Open): Open[] {
    const { key } = standingKey(one);
    return this.bench.open.filter((other) => standingKey(other).key !== key);
  }

  /** Groups still to be cut: the one at the gauge's present setting first; what is trimmed off the last part last. */
  private leftGroups(one: Open): number[] {
    const left = one.task.groups.flatMap((_, g) => (one.done[g] ? [] : [g]));
    // Long parts first: what falls behind the front stop is then wide enough.
    const long = left.filter((g) => one.task.groups[g]!.by !== "gauge" && !this.isWaste(one, g));
    const waste = left.filter((g) => this.isWaste(one, g));
    const rest = left.filter((g) => !long.includes(g) && !waste.includes(g));
    const now = rest.filter((g) => this.bench.stands(one.task.groups[g]!));
    const later = rest.filter((g) => !now.includes(g));
    // What the next stack needs as well is left for the end: the gauge stands there then.
    const shared = later.filter((g) => this.isWanted(one, one.task.groups[g]!));
    return [...long, ...now, ...later.filter((g) => !shared.includes(g)), ...shared, ...waste];
  }

  private isWanted(one: Open, { gauge }: Group): boolean {
    const { key } = standingKey(one);
    return this.bench.open.some(
      (other) =>
        other.task.level >= one.task.level &&
        other.task.groups.some((group, g) => !other.done[g] && group.gauge === gauge) &&
        standingKey(other).key !== key,
    );
  }

  private isWaste(one: Open, g: number): boolean {
    const { by, falls } = one.task.groups[g]!;
    return by !== "gauge" && falls.every(({ task, blank }) => task === null && blank === null);
  }

  /** Every setting for all alike pieces before the next; false, with nothing done, where too many stacks would stand. */
  private stageBySetting(alike: readonly Open[]): boolean {
    if (alike[0]!.task.stage === "trim") return false;
    const parts = alike[0]!.task.groups.flatMap(({ falls }) => falls).concat(alike[0]!.task.front);
    // Between two settings the pieces cut so far stand beside those to come, and what is cut further beside both.
    const others = this.besides(alike[0]!);
    const fresh = parts.flatMap((part) => asOpen(part, 1));
    const standing = countStacks([...others, ...fresh], this.limit.over);
    const own = isLong(standingKey(alike[0]!).size, this.limit.over) ? 2 : 0;
    if (standing.all + 2 > this.limit.all || standing.long + own > this.limit.long) return false;
    if (!this.inTurn(others, fresh)) return false;
    for (const g of this.leftGroups(alike[0]!)) {
      for (const one of alike) {
        this.count(one, alike);
        this.bench.visit++;
        this.bench.cut(one, g);
      }
    }
    return true;
  }

  /** What stands besides the stack in work. */
  private count(taken: Open, inWork: readonly Open[]): void {
    const now = countStacks(
      this.bench.open.filter((one) => one !== taken && !inWork.includes(one)),
      this.limit.over,
    );
    this.most = { all: Math.max(this.most.all, now.all), long: Math.max(this.most.long, now.long) };
  }

  /** The same groups, beginning at the gauge's present setting. */
  private atOnce(one: Open, groups: readonly number[]): number[] {
    return this.leftGroups(one).filter((g) => groups.includes(g));
  }

  /** One piece on the table: these groups of its parallel cuts, and the part in front where that is cut on at once. */
  private visit(first: Open, begin: readonly number[], inWork: readonly Open[]): void {
    const { bench } = this;
    this.count(first, inWork);
    bench.visit++;
    let groups = this.atOnce(first, begin);
    for (let one: Open | undefined = first; one; ) {
      const now: Open = one;
      const isLast = groups.length === now.left;
      for (const g of groups) bench.cut(now, g);
      if (!isLast) return;
      const { front, stage } = now.task;
      one = bench.open.find(({ piece }) => piece === now.piece);
      // What lies on the table and is heavy, or a sheet just trimmed, is cut on.
      const alone = now.copies === 1 && inWork.length === 0;
      if (!one || (stage !== "trim" && !alone && !this.isHeavy(front.size))) return;
      const others = bench.open.filter((other) => other !== one && !inWork.includes(other));
      if (stage !== "trim" && !this.mayWorkOn(one, others)) return;
      groups = this.nextGroups(one, others);
    }
  }

  /** Groups that may be cut before the piece is set down: as many as there is room for, one at least. */
  private nextGroups(one: Open, others: readonly Open[]): number[] {
    const groups = this.leftGroups(one);
    for (let count = groups.length; count > 1 && !this.sparing; count--) {
      if (this.hasRoomFor(one, groups.slice(0, count), others)) return groups.slice(0, count);
    }
    const byGauge = groups.filter((g) => one.task.groups[g]!.by === "gauge");
    const free = byGauge.length === groups.length ? groups : groups.slice(0, 1);
    const fitting = free.find((g) => this.hasRoomFor(one, [g], others));
    return [fitting ?? groups[0]!];
  }

  private hasRoomFor(one: Open, groups: readonly number[], others: readonly Open[]): boolean {
    const { task } = one;
    const done = one.done.map((was, g) => was || groups.includes(g));
    const off = task.groups.flatMap(({ falls }, g) => (done[g] ? falls : []));
    const rest = off.reduce((sum, { size }) => sum - size[task.axis], task.size[task.axis]);
    const falls = groups.flatMap((g) => task.groups[g]!.falls);
    const finished = groups.length === one.left;
    const fresh = (finished ? [...falls, task.front] : falls).flatMap((part) => asOpen(part, one.copies));
    return this.inTurn(finished ? others : [...others, { ...one, rest, done, known: null }], fresh);
  }

  /** Whether the fresh ones can be worked off one after another, what needs least room first, while the others stand. */
  private inTurn(others: readonly Open[], fresh: readonly Open[]): boolean {
    const stacks = new Map(fresh.map((one) => [standingKey(one).key, one]));
    const turns = [...stacks.values()].sort((a, b) => this.roomOf(a) - this.roomOf(b));
    return turns.every((one, k) => this.mayWorkOn(one, [...others, ...turns.slice(k + 1)]));
  }

  private readonly peaks = new WeakMap<Task, Count>();

  private peak(task: Task): Count {
    const known = this.peaks.get(task) ?? peakOf(task, this.limit.over);
    this.peaks.set(task, known);
    return known;
  }

  private roomOf({ task }: Open): number {
    const { all, long } = this.peak(task);
    return long * this.limit.all + all;
  }

  private mayWorkOn(one: Open, others: readonly Open[]): boolean {
    const standing = countStacks(others, this.limit.over);
    const peak = this.peak(one.task);
    return standing.all + peak.all <= this.limit.all && standing.long + peak.long <= this.limit.long;
  }
}

function asOpen({ task }: Part, copies: number): Open[] {
  if (!task) return [];
  const done = task.groups.map(() => false);
  return [
    {
      task,
      name: "",
      copies,
      piece: "",
      rest: task.size[task.axis],
      falls: 0,
      left: done.length,
      done,
      lastAxis: null,
      known: null,
    },
  ];
}
