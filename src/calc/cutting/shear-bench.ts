/** The shear's table while a plan is cut: what lies on it, where the gauge stands, and the cuts made so far. */

import { itemAt } from "../../units/certain.ts";
import { type Axis, type Group, type Part, type Size, type Task, withSize } from "./cut-tasks.ts";
import { fromGrid } from "./grid.ts";
import type { Cut, PieceKind, PieceOut } from "./types.ts";

/** A task on the table: the piece's present name and size, and the groups still to be cut. */
export interface Open {
  readonly task: Task;
  readonly name: string;
  readonly copies: number;
  piece: string;
  rest: number;
  falls: number;
  left: number;
  readonly done: boolean[];
  lastAxis: Axis | null;
}

export class Bench {
  readonly cuts: Cut[] = [];
  private setting = 0;
  visit = 0;
  /** Cuts made before this bench was branched off. */
  private before = 0;
  private gauge: number | null = null;
  private frontStop: number | null = null;
  /** Pieces half cut. */
  readonly open: Open[] = [];

  /** Gauge and stop where they are, nothing on the table: to go on from here in a way of its own. */
  branch(): Bench {
    const bench = new Bench();
    bench.setting = this.setting;
    bench.visit = this.visit;
    bench.before = this.before + this.cuts.length;
    bench.gauge = this.gauge;
    bench.frontStop = this.frontStop;
    return bench;
  }

  lay(name: string, { task }: Part, copies: number, lastAxis: Axis | null): void {
    if (!task) return;
    const done = new Array<boolean>(task.groups.length).fill(false);
    const rest = task.size[task.axis];
    this.open.push({ task, name, copies, piece: name, rest, falls: 0, left: done.length, done, lastAxis });
  }

  /** Whether the back gauge, or the front stop, stands where these cuts need it. */
  stands({ by, measure }: Group): boolean {
    return measure === (by === "gauge" ? this.gauge : by === "front stop" ? this.frontStop : Number.NaN);
  }

  /** Whether one of the first cuts of a sheet is made at the present setting; edge trims need none. */
  isSetFor(task: Task | null): boolean {
    for (let at = task; at; at = at.stage === "trim" ? at.front.task : null) {
      if (at.groups.some((group) => this.stands(group))) return true;
    }
    return false;
  }

  cut(open: Open, g: number): void {
    const { task, name, copies } = open;
    const { gauge, falls, by, measure } = itemAt(task.groups, g);
    open.done[g] = true;
    open.left--;
    if (gauge !== null && gauge !== this.gauge) {
      this.setting++;
      this.gauge = gauge;
    }
    if (by === "front stop") this.frontStop = measure;
    const outs = falls.map((part) => {
      open.falls++;
      open.rest -= part.size[task.axis];
      return outOf(`${name}.${open.falls}`, part);
    });
    const finished = open.left === 0;
    const stays: PieceOut = finished
      ? outOf(`${name}.${open.falls + 1}`, task.front)
      : sized(`${name}r${open.falls}`, "part", withSize(task.size, task.axis, open.rest));
    this.cuts.push({
      seq: this.before + this.cuts.length + 1,
      setting: gauge === null ? 0 : this.setting,
      stage: task.stage,
      piece: open.piece,
      copies,
      axis: task.axis === 0 ? "w" : "h",
      gauge: gauge === null ? null : fromGrid(gauge),
      by,
      measure: fromGrid(measure),
      visit: this.visit,
      length: fromGrid(task.size[task.axis === 0 ? 1 : 0]),
      falls: outs,
      stays,
      strokes: copies * outs.length,
      turn: open.lastAxis !== null && open.lastAxis !== task.axis,
    });
    open.piece = stays.id;
    open.lastAxis = task.axis;
    falls.forEach((part, k) => {
      this.lay(itemAt(outs, k).id, part, copies, task.axis);
    });
    if (!finished) return;
    this.open.splice(this.open.indexOf(open), 1);
    this.lay(stays.id, task.front, copies, task.axis);
  }
}

const sized = (id: string, kind: PieceKind, [w, h]: Size): PieceOut => ({ id, kind, w: fromGrid(w), h: fromGrid(h) });

const outOf = (id: string, { kind, blank, size }: Part): PieceOut =>
  blank === null ? sized(id, kind, size) : { ...sized(id, kind, size), blank };
