/**
 * The cuts of a plan in the order of the shop floor: datum trims of all sheets first (long edge, then the short edge
 * square to it), then the strips of all sheets, then the crosscuts, then the sizing of single pieces; within a level the
 * widest gauge first and equal gauges together, so that a setting is made once for the job (order: common practice;
 * datum first as in marking-out teaching, reasoned).
 */
import { type CutNode, isPiece } from "./cut-tree.ts";
import { frontPart, type GaugeRule, WASTE_IN_FRONT, wasteFallCount } from "./gauge-rule.ts";
import { fromGrid, gridDown, gridUp } from "./grid.ts";
import type { Problem } from "./problem.ts";
import { sizeOf } from "./shear-check.ts";
import type { Blank, Cut, CutStage, Limits, PieceKind, PieceOut, PlannedPattern, Stock } from "./types.ts";

type Size = readonly [number, number];

interface Draft {
  readonly stage: CutStage;
  /** 0 trims, 1 strips, 2 and up deeper cuts. */
  readonly level: number;
  readonly piece: string;
  readonly pattern: number;
  readonly axis: 0 | 1;
  readonly gauge: number | null;
  readonly length: number;
  readonly falls: readonly PieceOut[];
  readonly stays: PieceOut;
}

interface Child {
  readonly extent: number;
  readonly node: CutNode | null;
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
  const drafts: Draft[] = [];
  patterns.forEach((pattern, p) => {
    drafts.push(...cutsOfSheet(pattern, p, problem, blanks, stock, limits));
  });
  const ordered = drafts
    .map((draft, at) => ({ draft, at }))
    .sort((a, b) => compare(a.draft, b.draft) || a.at - b.at)
    .map(({ draft }) => draft);
  const lastAxis = new Map<string, 0 | 1>();
  let setting = 0;
  let key = "";
  const cuts = ordered.map((draft, k): Cut => {
    const copies = patterns[draft.pattern]!.repeats;
    if (draft.gauge !== null) {
      const now = settingKey(draft);
      if (now !== key) setting++;
      key = now;
    }
    const before = lastAxis.get(draft.piece);
    for (const out of [...draft.falls, draft.stays]) lastAxis.set(out.id, draft.axis);
    return {
      seq: k + 1,
      setting: draft.gauge === null ? 0 : setting,
      stage: draft.stage,
      piece: draft.piece,
      copies,
      axis: draft.axis === 0 ? "w" : "h",
      gauge: draft.gauge === null ? null : fromGrid(draft.gauge),
      length: fromGrid(draft.length),
      falls: draft.falls,
      stays: draft.stays,
      strokes: copies * draft.falls.length,
      turn: before !== undefined && before !== draft.axis,
    };
  });
  return { cuts, settings: setting, settingsSheetBySheet: countSheetBySheet(drafts, patterns) };
}

const settingKey = (draft: Draft): string => `${draft.level}|${draft.gauge}`;

function compare(a: Draft, b: Draft): number {
  if (a.level !== b.level) return a.level - b.level;
  if (a.gauge === null || b.gauge === null) return a.gauge === b.gauge ? 0 : a.gauge === null ? -1 : 1;
  return b.gauge - a.gauge;
}

/**
 * Gauge moves when every sheet is finished before the next is begun: its strips, then one strip after another cut to
 * length, each piece sized as it comes.
 */
function countSheetBySheet(drafts: readonly Draft[], patterns: readonly PlannedPattern[]): number {
  let moves = 0;
  let last: number | null = null;
  patterns.forEach(({ repeats }, p) => {
    const own = drafts.filter(({ pattern, gauge }) => pattern === p && gauge !== null);
    for (let n = 0; n < repeats; n++) {
      for (const { gauge } of own) {
        if (gauge !== last) moves++;
        last = gauge;
      }
    }
  });
  return moves;
}

function cutsOfSheet(
  pattern: PlannedPattern,
  index: number,
  problem: Problem,
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
): Draft[] {
  const drafts: Draft[] = [];
  const { rule } = problem;
  const sheet = stock.find(({ id }) => id === pattern.stock) as Stock;
  const full: Size = [gridDown(sheet.w), gridDown(sheet.h)];
  const trim = gridUp(sheet.trim);
  const long: 0 | 1 = full[0] >= full[1] ? 0 : 1;
  const leastRemnant = gridUp(limits.leastRemnant);
  const leftOver = (id: string, size: Size): PieceOut => {
    const usable = leastRemnant > 0 && Math.min(size[0], size[1]) >= leastRemnant;
    return out(id, usable ? "remnant" : "scrap", size);
  };

  /** Trims one edge: takes `trim` off the size along `axis`. */
  const trimEdge = (id: string, size: Size, axis: 0 | 1, stays: PieceOut, level: number): void => {
    const strip = withSize(size, axis, trim);
    drafts.push({
      stage: "trim",
      level,
      piece: id,
      pattern: index,
      axis,
      gauge: null,
      length: size[axis === 0 ? 1 : 0],
      falls: [out(`${id}t${axis + 1}`, "scrap", strip)],
      stays,
    });
  };

  const part = (id: string, node: CutNode, size: Size, level: number): void => {
    if (isPiece(node)) {
      const own = sizeOf(problem, node);
      for (const axis of [0, 1] as const) {
        if (own[axis] === size[axis]) continue;
        const room = withSize(size, axis === 0 ? 1 : 0, own[axis === 0 ? 1 : 0]);
        cutParallel(id, [{ extent: own[axis], node }], room, axis, level, "size");
      }
      return;
    }
    const children = node.parts.map(
      (child): Child => ({ extent: sizeOf(problem, child)[node.direction], node: child }),
    );
    cutParallel(id, children, size, node.direction, level, level === 1 ? "strip" : "cross");
  };

  /** Name and kind of a part that has just come off; its own cuts follow under the same name. */
  const pieceOut = (id: string, { node }: Child, size: Size): PieceOut => {
    if (node === null) return leftOver(id, size);
    const finished = onlyFinished(problem, node, size, blanks);
    return finished === null ? out(id, "part", size) : { ...out(id, "blank", size), blank: finished };
  };

  const cutParallel = (
    id: string,
    children: readonly Child[],
    size: Size,
    axis: 0 | 1,
    level: number,
    stage: CutStage,
  ): void => {
    const deferred = deferTrim && level === 1;
    // Before its own trim a part of an untrimmed sheet is still as wide as the sheet.
    const across: 0 | 1 = axis === 0 ? 1 : 0;
    const rough = (room: Size): Size => (deferred ? withSize(room, across, room[across] + trim) : room);
    const waste = size[axis] - children.reduce((sum, { extent }) => sum + extent, 0);
    const front = frontPart(
      children.map(({ extent }) => extent),
      children.length,
      waste,
      rule,
    );
    const list: Child[] = children.filter((_, k) => k !== front);
    if (waste > 0 && front !== WASTE_IN_FRONT) list.push(...wasteFalls(waste, rule));
    // Widest first in every piece, so that the order of the job never asks for a part before it is there.
    list.sort((a, b) => b.extent - a.extent);
    const last: Child = front === WASTE_IN_FRONT ? { extent: waste, node: null } : children[front]!;
    let rest = size[axis];
    let current = id;
    let follow: { id: string; child: Child }[] = [];
    for (let k = 0; k < list.length; ) {
      const extent = list[k]!.extent;
      const falls: PieceOut[] = [];
      const lengthSize = rough(size);
      for (; k < list.length && list[k]!.extent === extent; k++) {
        const name = `${id}.${k + 1}`;
        falls.push(roughOut(name, list[k]!, rough(withSize(size, axis, extent)), deferred));
        follow.push({ id: name, child: list[k]! });
        rest -= extent;
      }
      const finished = k === list.length;
      const name = finished ? `${id}.${k + 1}` : `${id}r${k}`;
      const room = rough(withSize(size, axis, rest));
      const stays = finished ? roughOut(name, last, room, deferred) : out(name, "part", room);
      drafts.push({
        stage,
        level,
        piece: current,
        pattern: index,
        axis,
        gauge: extent,
        length: lengthSize[across],
        falls,
        stays,
      });
      current = name;
    }
    follow = list.length === 0 ? [{ id, child: last }] : [...follow, { id: current, child: last }];
    for (const { id: name, child } of follow) {
      if (child.node === null) continue;
      const room = withSize(size, axis, child.extent);
      if (deferred) {
        trimEdge(name, rough(room), across, pieceOut(`${name}d`, child, room), level + 0.5);
        part(`${name}d`, child.node, room, level + 1);
      } else part(name, child.node, room, level + 1);
    }
  };
  const roughOut = (name: string, child: Child, room: Size, deferred: boolean): PieceOut =>
    deferred && child.node !== null ? out(name, "part", room) : pieceOut(name, child, room);

  const deferTrim = trim > 0 && full[long] - trim > rule.longestCut;
  let id = pattern.id;
  let size = full;
  if (trim > 0) {
    const across: 0 | 1 = long === 0 ? 1 : 0;
    // Along the long edge first: it is the datum for everything else. Unless the blade is too short for it.
    const edges = deferTrim ? [long] : full[long] > rule.longestCut ? [long, across] : [across, long];
    edges.forEach((axis, k) => {
      const next = withSize(size, axis, size[axis] - trim);
      const name = `${pattern.id}d${k + 1}`;
      const last = k === edges.length - 1;
      const only = last && !deferTrim ? onlyFinished(problem, pattern.layout, next, blanks) : null;
      trimEdge(id, size, axis, only ? { ...out(name, "blank", next), blank: only } : out(name, "part", next), k / 4);
      id = name;
      size = next;
    });
    if (deferTrim) size = withSize(size, across, size[across] - trim);
  }
  part(id, pattern.layout, size, 1);
  return drafts;
}

/** Blank id where the layout is one piece as large as what is on the table. */
function onlyFinished(problem: Problem, node: CutNode, size: Size, blanks: readonly Blank[]): string | null {
  let at = node;
  while (!isPiece(at)) {
    if (at.parts.length !== 1) return null;
    at = at.parts[0]!;
  }
  const own = sizeOf(problem, at);
  return own[0] === size[0] && own[1] === size[1] ? blanks[at.item]!.id : null;
}

function wasteFalls(waste: number, rule: GaugeRule): Child[] {
  const count = wasteFallCount(waste, rule);
  const falls: Child[] = [];
  for (let k = 0, left = waste; k < count; k++) {
    const extent = Math.ceil(left / (count - k));
    falls.push({ extent, node: null });
    left -= extent;
  }
  return falls;
}

const withSize = (size: Size, axis: 0 | 1, extent: number): Size =>
  axis === 0 ? [extent, size[1]] : [size[0], extent];

const out = (id: string, kind: PieceKind, [w, h]: Size): PieceOut => ({ id, kind, w: fromGrid(w), h: fromGrid(h) });
