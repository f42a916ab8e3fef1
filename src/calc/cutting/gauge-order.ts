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
  /** Per task: its gauges, one a step, and the steps on the part that stays in front. */
  readonly gaugesOfTask: (readonly number[])[] = [];
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
    this.gaugesOfTask.push(task.groups.map(({ gauge }) => this.numbers.get(gauge as number)!));
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

const NONE = -1;

/** How far the job has come. Plain arrays, since every free gauge is tried on a copy. */
class Progress {
  private constructor(
    private readonly steps: Steps,
    /** Per gauge: its first free step, and per step the next one free at the same gauge. */
    private readonly firstFree: Int32Array,
    private readonly nextFree: Int32Array,
    /** Per gauge: how many steps are still to come. */
    private readonly toCome: Int32Array,
    /** Per task: steps to come before its front part is free. */
    private readonly pending: Int32Array,
    /** Gauges whose cuts may all have become free since they were last looked at. */
    private readonly touched: Uint8Array,
    public left: number,
    public unfinished: number,
    public freed: number,
  ) {}

  static start(steps: Steps): Progress {
    const gauges = steps.gauges.length;
    const all = steps.list.length;
    const toCome = new Int32Array(gauges);
    for (const { gauge } of steps.list) toCome[gauge]!++;
    const pending = Int32Array.from(steps.gaugesOfTask, ({ length }) => length);
    const firstFree = new Int32Array(gauges).fill(NONE);
    const nextFree = new Int32Array(all).fill(NONE);
    const start = new Progress(steps, firstFree, nextFree, toCome, pending, new Uint8Array(gauges), all, gauges, 0);
    start.release(steps.first);
    return start;
  }

  copy(): Progress {
    return new Progress(
      this.steps,
      this.firstFree.slice(),
      this.nextFree.slice(),
      this.toCome.slice(),
      this.pending.slice(),
      this.touched.slice(),
      this.left,
      this.unfinished,
      this.freed,
    );
  }

  freeGauges(): number[] {
    const free: number[] = [];
    this.firstFree.forEach((step, gauge) => {
      if (step !== NONE) free.push(gauge);
    });
    return free;
  }

  /** Makes every cut at one setting, those on parts that come off meanwhile too. */
  set(gauge: number): void {
    const { steps, firstFree, nextFree, pending, touched } = this;
    for (let step = firstFree[gauge]!; step !== NONE; step = firstFree[gauge]!) {
      firstFree[gauge] = nextFree[step]!;
      const { task, frees, cuts } = steps.list[step]!;
      this.release(frees);
      pending[task]!--;
      if (pending[task] === 0) this.release(steps.fronts[task]!);
      else if (pending[task] === 1) for (const own of steps.gaugesOfTask[task]!) touched[own] = 1;
      this.freed += cuts;
      this.left--;
      this.toCome[gauge]!--;
    }
    if (this.toCome[gauge] === 0) this.unfinished--;
  }

  /** Sets every gauge whose cuts are all free, and those that become so by it. */
  finishGauges(order: number[]): void {
    const { touched } = this;
    for (let before = -1; before !== order.length; ) {
      before = order.length;
      for (let gauge = 0; gauge < touched.length; gauge++) {
        if (touched[gauge] === 0) continue;
        touched[gauge] = 0;
        if (this.firstFree[gauge] === NONE || this.atOnce(gauge) !== this.toCome[gauge]) continue;
        this.set(gauge);
        order.push(gauge);
      }
    }
  }

  /** How many of a gauge's steps come at one setting. */
  private atOnce(gauge: number): number {
    let count = 0;
    for (let step = this.firstFree[gauge]!; step !== NONE; step = this.nextFree[step]!) {
      count += this.withWhatItFrees(step, gauge);
    }
    return count;
  }

  private withWhatItFrees(step: number, gauge: number): number {
    const { gauge: own, frees, task } = this.steps.list[step]!;
    if (own !== gauge) return 0;
    let count = 1;
    for (const freed of frees) count += this.withWhatItFrees(freed, gauge);
    if (this.pending[task] === 1)
      for (const freed of this.steps.fronts[task]!) count += this.withWhatItFrees(freed, gauge);
    return count;
  }

  private release(steps: readonly number[]): void {
    for (const step of steps) {
      const { gauge } = this.steps.list[step]!;
      this.nextFree[step] = this.firstFree[gauge]!;
      this.firstFree[gauge] = step;
      this.touched[gauge] = 1;
    }
  }
}
