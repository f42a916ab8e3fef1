/**
 * What is to be done to each sheet of a plan: edge trims, then parallel cuts on parts of parts down to the blanks. Which
 * part stays in front of the blade is settled here; in which order the tasks are done is not.
 */

import { firstOf, itemAt } from "../../units/certain.ts";
import { mm } from "../../units/quantity.ts";
import { trimOf } from "./build-problem.ts";
import { type CutNode, isPiece } from "./cut-tree.ts";
import { frontPart, WASTE_IN_FRONT } from "./gauge-rule.ts";
import { gridDown, gridUp } from "./grid.ts";
import type { Problem } from "./problem.ts";
import { sizeOf } from "./shear-check.ts";
import type { Blank, CutStage, Limits, PieceKind, PlannedPattern, Stock } from "./types.ts";

export type Axis = 0 | 1;
export type Size = readonly [number, number];

/** A part that comes off: how it is called for, and what is still to be done to it. */
export interface Part {
  readonly kind: PieceKind;
  readonly blank: string | null;
  readonly size: Size;
  readonly task: Task | null;
}

/** Parallel cuts on one piece; the groups may be cut in any order, the front part is what is left. */
export interface Task {
  readonly stage: CutStage;
  readonly level: number;
  readonly axis: Axis;
  readonly size: Size;
  readonly groups: readonly Group[];
  readonly front: Part;
}

/** Equal cuts. */
export interface Group {
  /** Null where the back gauge measures nothing. */
  readonly gauge: number | null;
  readonly by: "gauge" | "front stop" | "mark";
  readonly measure: number;
  readonly falls: readonly Part[];
}

export const partsOf = (task: Task): Part[] => [...task.groups.flatMap(({ falls }) => falls), task.front];

/** The whole sheet as a part with everything to be done to it. */
export function sheetPart(
  pattern: PlannedPattern,
  problem: Problem,
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
): Part {
  const { rule } = problem;
  const sheet = stock.find(({ id }) => id === pattern.stock) as Stock;
  const full: Size = [gridDown(sheet.w), gridDown(sheet.h)];
  const trim = gridUp(trimOf(sheet, limits));
  const long: Axis = full[0] >= full[1] ? 0 : 1;
  const short: Axis = long === 0 ? 1 : 0;
  const leastRemnant = gridUp(limits.leastRemnant);
  const frontReach = gridDown(limits.frontReach ?? mm(0));
  const deferTrim = trim > 0 && full[long] - trim > rule.longestCut;

  const leftOver = (size: Size): Part => {
    const usable = leastRemnant > 0 && Math.min(size[0], size[1]) >= leastRemnant;
    return { kind: usable ? "remnant" : "scrap", blank: null, size, task: null };
  };

  const working = (size: Size, task: Task): Part => ({
    kind: "part",
    blank: null,
    size,
    task,
  });

  /** Trims one edge, which takes `trim` off the size along `axis`. */
  const trimmed = (size: Size, axis: Axis, level: number, front: Part): Part =>
    working(size, {
      stage: "trim",
      level,
      axis,
      size,
      groups: [
        {
          gauge: null,
          by: "mark",
          measure: trim,
          falls: [{ kind: "scrap", blank: null, size: withSize(size, axis, trim), task: null }],
        },
      ],
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
    return { kind: "blank", blank: itemAt(blanks, node.item).id, size, task: null };
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
    if (waste === 0 && children.length === 1) return one(firstOf(children));
    const extents = children.map(({ extent }) => extent);
    const front = frontPart(extents, extents.length, waste, rule);
    const falls = children.filter((_, k) => k !== front).map(one);
    const groups = alike(falls).map((equal): Group => {
      const measure = firstOf(equal).size[axis];
      const by = measure <= rule.backReach ? "gauge" : measure <= frontReach ? "front stop" : "mark";
      return { gauge: by === "gauge" ? measure : null, by, measure, falls: equal };
    });
    groups.sort((a, b) => b.measure - a.measure);
    if (waste > 0 && front !== WASTE_IN_FRONT) {
      // Trimmed off the last part, which is measured: last of all, when nothing else is left beside it.
      const measure = itemAt(extents, front);
      const trimmedOff = leftOver(rough(withSize(size, axis, waste)));
      groups.push({ gauge: null, by: measure <= frontReach ? "front stop" : "mark", measure, falls: [trimmedOff] });
    }
    return working(rough(size), {
      stage,
      level,
      axis,
      size: rough(size),
      groups,
      front: front === WASTE_IN_FRONT ? leftOver(rough(withSize(size, axis, waste))) : one(itemAt(children, front)),
    });
  };

  const usable: Size = [full[0] - trim, full[1] - trim];
  const inner = part(pattern.layout, usable, 1);
  if (trim === 0) return inner;
  if (deferTrim) return trimmed(full, long, 0, inner);
  // Along the long edge first: it is the datum for everything else. Unless the blade is too short for it.
  const [first, second] = full[long] > rule.longestCut ? [long, short] : [short, long];
  return trimmed(full, first, 0, trimmed(withSize(full, first, full[first] - trim), second, 0, inner));
}

/** Parts of one size together, those with the same work beside each other. */
function alike(parts: readonly Part[]): Part[][] {
  const sizes = new Map<string, Part[]>();
  for (const part of [...parts].sort((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1))) {
    const key = part.size.join("x");
    sizes.set(key, [...(sizes.get(key) ?? []), part]);
  }
  return [...sizes.values()];
}

const keys = new WeakMap<Part | Group, string>();

function remembered<T extends Part | Group>(of: T, make: () => string): string {
  const known = keys.get(of) ?? make();
  keys.set(of, known);
  return known;
}

/** What a part is and what is to be done to it. */
export const keyOf = (part: Part): string =>
  remembered(part, () => {
    const { size, task, blank } = part;
    return `${size.join("x")}${task ? workKey(task, task.groups) : (blank ?? "")}`;
  });

/** What these cuts of a piece leave: pieces of equal size and key are alike. */
export const workKey = ({ axis, front }: Task, groups: readonly Group[]): string =>
  `${axis}(${groups.map(groupKey).join()};${keyOf(front)})`;

const groupKey = (group: Group): string =>
  remembered(group, () => {
    const counts = new Map<string, number>();
    for (const part of group.falls) counts.set(keyOf(part), (counts.get(keyOf(part)) ?? 0) + 1);
    return [...counts].map(([key, count]) => `${count}*${key}`).join();
  });

export const withSize = (size: Size, axis: Axis, extent: number): Size =>
  axis === 0 ? [extent, size[1]] : [size[0], extent];
