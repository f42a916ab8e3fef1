/**
 * In which order the back gauge is set, so that it is moved seldom: one setting makes every cut it can, strips, crosscuts
 * and sizing alike. A gauge whose cuts are all free by now costs one setting whenever it comes, so it comes at once. Where
 * there is none some gauge must be set twice: the one whose first cuts free the most work and finish the most gauges.
 * Fewer settings than there are gauges cannot be; how many more is sequencing under precedence, for which no quick exact
 * way is known (shortest common supersequence; memory, unverified).
 */
import { type Part, partsOf } from "./cut-tasks.ts";

/** What finishing a gauge counts, in cuts set free: fitted on generated shop bills. */
const GAUGE_WORTH = 3;

/** Settings of the back gauge in grid units, from the first to the last. */
export function gaugeOrder(sheets: readonly Part[]): number[] {
  const steps = new Steps(sheets);
  const order: number[] = [];
  let progress = Progress.start(steps);
  progress.finishGauges(order);
  while (progress.left > 0) {
    let best: { progress: Progress; settings: number[]; worth: number } | null = null;
    for (const gauge of progress.freeGauges()) {
      const next = progress.copy();
      const settings = [gauge];
      next.set(gauge);
      next.finishGauges(settings);
      const worth = next.freed - progress.freed + GAUGE_WORTH * (progress.unfinished - next.unfinished);
      if (best === null || worth > best.worth) best = { progress: next, settings, worth };
    }
    progress = best!.progress;
    order.push(...best!.settings);
  }
  return order.map((gauge) => steps.gauges[gauge]!);
}

/** Equal cuts on one piece. */
interface Step {
  readonly gauge: number;
  /** The last step of a task sets its front part free. */
  readonly task: number;
  /** Steps on the parts that fall. */
  readonly frees: readonly number[];
  /** Cuts in it and in all that comes of it. */
  readonly cuts: number;
}

/** Every gauged cut of the job, and which waits for which. Gauges are numbered, the widest first. */
class Steps {
  readonly list: Step[] = [];
  readonly first: readonly number[];
  readonly gauges: readonly number[];
  /** Per task: its steps, and those on the part that stays in front. */
  readonly sizes: number[] = [];
  readonly fronts: (readonly number[])[] = [];
  private readonly numbers: ReadonlyMap<number, number>;

  constructor(sheets: readonly Part[]) {
    const gauges = new Set<number>();
    for (const sheet of sheets) collectGauges(sheet, gauges);
    this.gauges = [...gauges].sort((a, b) => b - a);
    this.numbers = new Map(this.gauges.map((gauge, number) => [gauge, number]));
    this.first = sheets.flatMap((sheet) => this.add(sheet));
  }

  /** Steps free as soon as the part is there. A trim is cut to a mark as soon as it can be: it waits for no gauge. */
  private add({ task }: Part): number[] {
    if (!task) return [];
    if (task.stage === "trim") return partsOf(task).flatMap((part) => this.add(part));
    const number = this.fronts.push([]) - 1;
    this.sizes.push(task.groups.length);
    const own = task.groups.map(({ gauge, falls }) => {
      const frees = falls.flatMap((part) => this.add(part));
      const cuts = 1 + falls.reduce((sum, { cuts }) => sum + cuts, 0) + task.front.cuts / task.groups.length;
      return this.list.push({ gauge: this.numbers.get(gauge as number)!, task: number, frees, cuts }) - 1;
    });
    this.fronts[number] = this.add(task.front);
    return own;
  }
}

function collectGauges({ task }: Part, into: Set<number>): void {
  if (!task) return;
  for (const { gauge } of task.groups) if (gauge !== null) into.add(gauge);
  for (const part of partsOf(task)) collectGauges(part, into);
}

/** How far the job has come. */
class Progress {
  private constructor(
    private readonly steps: Steps,
    /** Per gauge: the steps that are free, and how many are still to come. */
    private readonly free: number[][],
    private readonly toCome: Int32Array,
    /** Per task: steps to come before its front part is free. */
    private readonly pending: Int32Array,
    public left: number,
    public unfinished: number,
    public freed: number,
  ) {}

  static start(steps: Steps): Progress {
    const free: number[][] = steps.gauges.map(() => []);
    const toCome = new Int32Array(free.length);
    for (const { gauge } of steps.list) toCome[gauge]!++;
    const all = steps.list.length;
    const start = new Progress(steps, free, toCome, Int32Array.from(steps.sizes), all, free.length, 0);
    start.release(steps.first);
    return start;
  }

  copy(): Progress {
    const { steps, free, toCome, pending, left, unfinished, freed } = this;
    const lists = free.map((list) => list.slice());
    return new Progress(steps, lists, toCome.slice(), pending.slice(), left, unfinished, freed);
  }

  freeGauges(): number[] {
    return this.free.flatMap((list, gauge) => (list.length > 0 ? [gauge] : []));
  }

  /** Makes every cut at one setting, those on parts that come off meanwhile too. */
  set(gauge: number): void {
    const list = this.free[gauge]!;
    for (let k = 0; k < list.length; k++) {
      const { task, frees, cuts } = this.steps.list[list[k]!]!;
      this.release(frees);
      if (--this.pending[task]! === 0) this.release(this.steps.fronts[task]!);
      this.freed += cuts;
    }
    this.toCome[gauge]! -= list.length;
    this.left -= list.length;
    if (this.toCome[gauge] === 0) this.unfinished--;
    list.length = 0;
  }

  /** Sets every gauge whose cuts are all free, and those that become so by it. */
  finishGauges(order: number[]): void {
    for (let before = -1; before !== order.length; ) {
      before = order.length;
      this.free.forEach((list, gauge) => {
        if (list.length === 0 || this.atOnce(list, gauge) !== this.toCome[gauge]) return;
        this.set(gauge);
        order.push(gauge);
      });
    }
  }

  /** How many of these steps and of those they set free come at one setting. */
  private atOnce(steps: readonly number[], gauge: number): number {
    let count = 0;
    for (const step of steps) {
      const { gauge: own, frees, task } = this.steps.list[step]!;
      if (own !== gauge) continue;
      count += 1 + this.atOnce(frees, gauge);
      if (this.pending[task] === 1) count += this.atOnce(this.steps.fronts[task]!, gauge);
    }
    return count;
  }

  private release(steps: readonly number[]): void {
    for (const step of steps) this.free[this.steps.list[step]!.gauge]!.push(step);
  }
}
