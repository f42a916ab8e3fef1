/** Stacks of half-cut pieces on the floor: how many stand, and how many more the work on one of them may need. */

import { mm } from "../../units/quantity.ts";
import { keyOf, partsOf, type Size, type Task } from "./cut-tasks.ts";
import { gridDown } from "./grid.ts";
import type { Open } from "./shear-bench.ts";
import type { Limits } from "./types.ts";

/** Common practice: what a shear operator keeps apart; long ones lie across the way. */
const MOST = 4;
const MOST_LONG = 2;
/** 4 ft. */
const LONG = mm(1219.2);

export interface StackLimit {
  readonly all: number;
  readonly long: number;
  /** A stack is long where its pieces measure more. */
  readonly over: number;
}

export const stackLimit = (limits: Limits): StackLimit => ({
  all: limits.stacks ?? MOST,
  long: limits.longStacks ?? MOST_LONG,
  over: gridDown(limits.longStack ?? LONG),
});

export interface Count {
  readonly all: number;
  readonly long: number;
}

export const isLong = ([w, h]: readonly [number, number], over: number): boolean => Math.max(w, h) > over;

/** Of an open piece as it is by now. */
export function standingKey(open: Open): { readonly key: string; readonly size: Size } {
  if (open.known) return open.known;
  const { task, rest, done } = open;
  const size: Size = task.axis === 0 ? [rest, task.size[1]] : [task.size[0], rest];
  const left = task.groups.flatMap(({ falls }, g) => (done[g] ? [] : falls.map(keyOf)));
  open.known = { key: `${size.join("x")}${task.axis}(${[...left, keyOf(task.front)].sort().join()})`, size };
  return open.known;
}

export function countStacks(open: readonly Open[], over: number): Count {
  const all = new Set<string>();
  const long = new Set<string>();
  for (const one of open) {
    const { key, size } = standingKey(one);
    all.add(key);
    if (isLong(size, over)) long.add(key);
  }
  return { all: all.size, long: long.size };
}

/** Stacks that the work on a piece may need beside itself when it is done one part after another. */
export function peakOf(task: Task, over: number): Count {
  const inner = partsOf(task).filter((part) => part.task);
  if (inner.length === 0) return { all: 0, long: 0 };
  const all = Math.max(...inner.map((part) => 1 + peakOf(part.task!, over).all));
  const long = Math.max(...inner.map((part) => (isLong(part.size, over) ? 1 : 0) + peakOf(part.task!, over).long));
  const last = inner.length === 1;
  return last ? { all, long } : { all: 1 + all, long: (isLong(task.size, over) ? 1 : 0) + long };
}
