/**
 * The cuts of a plan in the order of the shop floor: datum trims of all sheets first (long edge, then the short edge
 * square to it), then the strips of all sheets, widest first, then crosscuts and sizing (order: common practice; datum
 * first as in marking-out teaching, reasoned). Equal gauges come together over the whole job. After the strips the next
 * gauge is one whose cuts can all be made by now, so that it need not be set again.
 */
import { type CutNode, isPiece } from "./cut-tree.ts";
import { frontPart, type GaugeRule, WASTE_IN_FRONT, wasteFallCount } from "./gauge-rule.ts";
import { fromGrid, gridDown, gridUp } from "./grid.ts";
import type { Problem } from "./problem.ts";
import { sizeOf } from "./shear-check.ts";
import type { Blank, Cut, CutStage, Limits, PieceKind, PieceOut, PlannedPattern, Stock } from "./types.ts";

type Axis = 0 | 1;
type Size = readonly [number, number];

/** A part that comes off: how it is called for, and what is still to be done to it. */
interface Part {
  readonly kind: PieceKind;
  readonly blank: string | null;
  readonly size: Size;
  readonly task: Task | null;
}

/** Parallel cuts on one piece; the groups may be cut in any order, the front part is what is left. */
interface Task {
  readonly stage: CutStage;
  readonly level: number;
  readonly pattern: number;
  readonly axis: Axis;
  readonly size: Size;
  readonly groups: { readonly gauge: number | null; readonly falls: readonly Part[] }[];
  readonly front: Part;
}

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

export interface OrderedCuts {
  readonly cuts: Cut[];
  readonly settings: number;
  readonly settingsSheetBySheet: number;
}

export function orderCuts(
  patterns: readonly PlannedPattern[],
  problem: Problem,
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
): OrderedCuts {
  const sheets = patterns.map((pattern, p) => sheetPart(pattern, p, problem, blanks, stock, limits));
  const bench = new Bench(patterns);
  sheets.forEach((sheet, p) => {
    bench.lay(patterns[p]!.id, sheet, null);
  });
  // Trims, strips, and the trims of sheets that were too long for the blade, each wave complete before the next.
  bench.cutAll(({ task }) => task.stage === "trim");
  bench.cutWidestFirst(({ task }) => task.level === 1);
  bench.cutAll(({ task }) => task.stage === "trim");
  bench.cutCompleteGauges(remainingCuts(sheets));
  return {
    cuts: bench.cuts,
    settings: bench.setting,
    settingsSheetBySheet: sheets.reduce((state, sheet, p) => countAlone(sheet, patterns[p]!.repeats, state), {
      moves: 0,
      last: null as number | null,
    }).moves,
  };
}

/** The shear's table: what lies on it, and the cuts made so far. */
class Bench {
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

  /** `remaining` counts the cuts still to come by gauge, those on parts not yet free among them. */
  cutCompleteGauges(remaining: Map<number, number>): void {
    while (this.open.length > 0) {
      const ready = new Map<number, number>();
      for (const { task, done } of this.open) {
        task.groups.forEach(({ gauge }, g) => {
          if (!done[g]) ready.set(gauge ?? 0, (ready.get(gauge ?? 0) ?? 0) + 1);
        });
      }
      let next = 0;
      let fewestLeft = Number.POSITIVE_INFINITY;
      for (const [gauge, count] of ready) {
        const left = (remaining.get(gauge) ?? 0) - count;
        if (left < fewestLeft || (left === fewestLeft && gauge > next)) {
          fewestLeft = left;
          next = gauge;
        }
      }
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

const partsOf = (task: Task): Part[] => [...task.groups.flatMap(({ falls }) => falls), task.front];

function remainingCuts(sheets: readonly Part[]): Map<number, number> {
  const counts = new Map<number, number>();
  const count = ({ task }: Part): void => {
    if (!task) return;
    if (task.level > 1) for (const { gauge } of task.groups) counts.set(gauge ?? 0, (counts.get(gauge ?? 0) ?? 0) + 1);
    partsOf(task).forEach(count);
  };
  sheets.forEach(count);
  return counts;
}

/**
 * Gauge moves when every sheet is finished before the next is begun: its strips, then one strip after another cut to
 * length, each piece sized as it comes.
 */
function countAlone(sheet: Part, repeats: number, state: { moves: number; last: number | null }) {
  const walk = ({ task }: Part): void => {
    if (!task) return;
    for (const { gauge } of task.groups) {
      if (gauge === null) continue;
      if (gauge !== state.last) state.moves++;
      state.last = gauge;
    }
    partsOf(task).forEach(walk);
  };
  for (let n = 0; n < repeats; n++) walk(sheet);
  return state;
}

/** The whole sheet as a part with everything to be done to it. */
function sheetPart(
  pattern: PlannedPattern,
  index: number,
  problem: Problem,
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
): Part {
  const { rule } = problem;
  const sheet = stock.find(({ id }) => id === pattern.stock) as Stock;
  const full: Size = [gridDown(sheet.w), gridDown(sheet.h)];
  const trim = gridUp(sheet.trim);
  const long: Axis = full[0] >= full[1] ? 0 : 1;
  const short: Axis = long === 0 ? 1 : 0;
  const leastRemnant = gridUp(limits.leastRemnant);
  const deferTrim = trim > 0 && full[long] - trim > rule.longestCut;

  const leftOver = (size: Size): Part => {
    const usable = leastRemnant > 0 && Math.min(size[0], size[1]) >= leastRemnant;
    return { kind: usable ? "remnant" : "scrap", blank: null, size, task: null };
  };

  const working = (size: Size, task: Task): Part => ({ kind: "part", blank: null, size, task });

  /** Trims one edge, which takes `trim` off the size along `axis`. */
  const trimmed = (size: Size, axis: Axis, level: number, front: Part): Part =>
    working(size, {
      stage: "trim",
      level,
      pattern: index,
      axis,
      size,
      groups: [{ gauge: null, falls: [{ kind: "scrap", blank: null, size: withSize(size, axis, trim), task: null }] }],
      front,
    });

  /** A node of the layout given `size` of room. */
  const part = (node: CutNode, size: Size, level: number): Part => {
    if (!isPiece(node)) {
      const children = node.parts.map((child) => ({ extent: sizeOf(problem, child)[node.direction], node: child }));
      return parallel(children, size, node.direction, level, level === 1 ? "strip" : "cross");
    }
    const own = sizeOf(problem, node);
    for (const axis of [0, 1] as const) {
      if (own[axis] !== size[axis]) return parallel([{ extent: own[axis], node }], size, axis, level, "size");
    }
    return { kind: "blank", blank: blanks[node.item]!.id, size, task: null };
  };

  const parallel = (
    children: readonly { readonly extent: number; readonly node: CutNode }[],
    size: Size,
    axis: Axis,
    level: number,
    stage: CutStage,
  ): Part => {
    // Before its own trim a part of an untrimmed sheet is still as wide as the sheet.
    const late = deferTrim && level === 1;
    const rough = (room: Size): Size => (late ? withSize(room, short, room[short] + trim) : room);
    const one = ({ extent, node }: { readonly extent: number; readonly node: CutNode }): Part => {
      const room = withSize(size, axis, extent);
      const inner = part(node, room, level + 1);
      return late ? trimmed(rough(room), short, level + 0.5, inner) : inner;
    };
    const waste = size[axis] - children.reduce((sum, { extent }) => sum + extent, 0);
    if (waste === 0 && children.length === 1) return one(children[0]!);
    const extents = children.map(({ extent }) => extent);
    const front = frontPart(extents, extents.length, waste, rule);
    const falls = children.filter((_, k) => k !== front).map(one);
    if (waste > 0 && front !== WASTE_IN_FRONT) {
      for (const extent of wasteFalls(waste, rule)) falls.push(leftOver(rough(withSize(size, axis, extent))));
    }
    const gauges = [...new Set(falls.map((fall) => fall.size[axis]))].sort((a, b) => b - a);
    return working(rough(size), {
      stage,
      level,
      pattern: index,
      axis,
      size: rough(size),
      groups: gauges.map((gauge) => ({ gauge, falls: falls.filter((fall) => fall.size[axis] === gauge) })),
      front: front === WASTE_IN_FRONT ? leftOver(rough(withSize(size, axis, waste))) : one(children[front]!),
    });
  };

  const usable: Size = trim > 0 ? [full[0] - trim, full[1] - trim] : full;
  const inner = part(pattern.layout, usable, 1);
  if (trim === 0) return inner;
  if (deferTrim) return trimmed(full, long, 0, inner);
  // Along the long edge first: it is the datum for everything else. Unless the blade is too short for it.
  const [first, second] = full[long] > rule.longestCut ? [long, short] : [short, long];
  return trimmed(full, first, 0, trimmed(withSize(full, first, full[first] - trim), second, 0, inner));
}

/** Waste cut off in falls the gauge reaches. */
function wasteFalls(waste: number, rule: GaugeRule): number[] {
  const count = wasteFallCount(waste, rule);
  const falls: number[] = [];
  for (let k = 0, left = waste; k < count; k++) {
    const extent = Math.floor(left / (count - k));
    falls.push(extent);
    left -= extent;
  }
  return falls;
}

const withSize = (size: Size, axis: Axis, extent: number): Size => (axis === 0 ? [extent, size[1]] : [size[0], extent]);

const sized = (id: string, kind: PieceKind, [w, h]: Size): PieceOut => ({ id, kind, w: fromGrid(w), h: fromGrid(h) });

const outOf = (id: string, { kind, blank, size }: Part): PieceOut =>
  blank === null ? sized(id, kind, size) : { ...sized(id, kind, size), blank };
