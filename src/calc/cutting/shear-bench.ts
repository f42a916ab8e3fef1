/** The shear's table while a plan is cut: what lies on it, where the gauge stands, and the cuts made so far. */
import { type Axis, type Part, type Size, type Task, withSize } from "./cut-tasks.ts";
import { fromGrid } from "./grid.ts";
import type { Cut, PieceKind, PieceOut, PlannedPattern } from "./types.ts";

/** A task on the table: the piece's present name and size, and the groups still to be cut. */
interface Open {
  readonly task: Task;
  readonly name: string;
  piece: string;
  rest: number;
  falls: number;
  left: number;
  readonly done: boolean[];
  lastAxis: Axis | null;
}

export class Bench {
  readonly cuts: Cut[] = [];
  setting = 0;
  private gauge: number | null = null;
  private open: Open[] = [];

  constructor(private readonly patterns: readonly PlannedPattern[]) {}

  lay(name: string, { task }: Part, lastAxis: Axis | null): void {
    if (!task) return;
    const done = new Array<boolean>(task.groups.length).fill(false);
    this.open.push({
      task,
      name,
      piece: name,
      rest: task.size[task.axis],
      falls: 0,
      left: done.length,
      done,
      lastAxis,
    });
  }

  cutAll(which: (open: Open) => boolean): void {
    for (let found = this.open.filter(which); found.length > 0; found = this.open.filter(which)) {
      for (const open of found) open.task.groups.forEach((_, g) => void this.cut(open, g));
    }
  }

  cutWidestFirst(which: (open: Open) => boolean): void {
    const list = this.open
      .filter(which)
      .flatMap((open) => open.task.groups.map(({ gauge }, g) => ({ open, g, gauge: gauge ?? 0 })));
    list.sort((a, b) => b.gauge - a.gauge);
    for (const { open, g } of list) this.cut(open, g);
  }

  /**
   * A gauge whose cuts can all be made by now costs one setting whenever it is set, so it comes first; otherwise the one
   * that sets the most cuts free. `remaining` counts the cuts still to come by gauge, those on parts not yet free among them.
   */
  cutCompleteGauges(remaining: Map<number, number>): void {
    while (this.open.length > 0) {
      const next = this.nextGauge(remaining);
      // Parts set free by these cuts may want the same gauge again.
      for (let found = true; found; ) {
        found = false;
        for (const open of [...this.open]) {
          open.task.groups.forEach(({ gauge }, g) => {
            if (open.done[g] || (gauge ?? 0) !== next) return;
            this.cut(open, g);
            remaining.set(next, (remaining.get(next) ?? 0) - 1);
            found = true;
          });
        }
      }
    }
  }

  private nextGauge(remaining: ReadonlyMap<number, number>): number {
    const ready = new Map<number, number>();
    const freed = new Map<number, number>();
    const add = (to: Map<number, number>, gauge: number, count: number) => to.set(gauge, (to.get(gauge) ?? 0) + count);
    for (const { task, done, left } of this.open) {
      task.groups.forEach(({ gauge, falls }, g) => {
        if (done[g]) return;
        add(ready, gauge ?? 0, 1);
        const frontCuts = left === 1 ? task.front.cuts : 0;
        add(
          freed,
          gauge ?? 0,
          falls.reduce((sum, { cuts }) => sum + cuts, frontCuts),
        );
      });
    }
    let next = 0;
    let most = Number.NEGATIVE_INFINITY;
    for (const [gauge, count] of ready) {
      const worth = count === remaining.get(gauge) ? Number.POSITIVE_INFINITY : (freed.get(gauge) ?? 0);
      if (worth > most || (worth === most && gauge > next)) {
        most = worth;
        next = gauge;
      }
    }
    return next;
  }

  private cut(open: Open, g: number): void {
    const { task, name } = open;
    const { gauge, falls } = task.groups[g]!;
    open.done[g] = true;
    open.left--;
    if (gauge !== null && gauge !== this.gauge) {
      this.setting++;
      this.gauge = gauge;
    }
    const outs = falls.map((part) => {
      open.falls++;
      open.rest -= part.size[task.axis];
      return outOf(`${name}.${open.falls}`, part);
    });
    const finished = open.left === 0;
    const stays: PieceOut = finished
      ? outOf(`${name}.${open.falls + 1}`, task.front)
      : sized(`${name}r${open.falls}`, "part", withSize(task.size, task.axis, open.rest));
    const copies = this.patterns[task.pattern]!.repeats;
    this.cuts.push({
      seq: this.cuts.length + 1,
      setting: gauge === null ? 0 : this.setting,
      stage: task.stage,
      piece: open.piece,
      copies,
      axis: task.axis === 0 ? "w" : "h",
      gauge: gauge === null ? null : fromGrid(gauge),
      length: fromGrid(task.size[task.axis === 0 ? 1 : 0]),
      falls: outs,
      stays,
      strokes: copies * outs.length,
      turn: open.lastAxis !== null && open.lastAxis !== task.axis,
    });
    open.piece = stays.id;
    open.lastAxis = task.axis;
    falls.forEach((part, k) => {
      this.lay(outs[k]!.id, part, task.axis);
    });
    if (!finished) return;
    this.open.splice(this.open.indexOf(open), 1);
    this.lay(stays.id, task.front, task.axis);
  }
}

const sized = (id: string, kind: PieceKind, [w, h]: Size): PieceOut => ({ id, kind, w: fromGrid(w), h: fromGrid(h) });

const outOf = (id: string, { kind, blank, size }: Part): PieceOut =>
  blank === null ? sized(id, kind, size) : { ...sized(id, kind, size), blank };
