/** Stacks of half-cut pieces on the floor: which stand, and whether they can be worked off with the room there is. */
import { firstOf, itemAt, missing } from "../../units/certain.ts";
import { mm } from "../../units/quantity.ts";
import { type Group, keyOf, type Part, type Size, type Task, withSize, workKey } from "./cut-tasks.ts";
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

export const NONE: Count = { all: 0, long: 0 };
export const greater = (a: Count, b: Count): Count => ({ all: Math.max(a.all, b.all), long: Math.max(a.long, b.long) });

/** A half-cut piece, and how many more stacks the work on it may need beside its own. */
export interface Standing {
  readonly key: number;
  readonly isLong: boolean;
  /** What is still to be cut from it: read when it is compared. */
  readonly work: () => string;
  readonly need: Count;
  /** The same while its fellows are cut alike, and what those add that are not. */
  readonly needAmongAlike: Count;
  readonly isCutOn: boolean;
}

/** Pieces of one size lie on one stack, whatever is still to be cut from each: one serves as well as another. */
export const sizeKey = ([w, h]: Size): number => w * WIDEST + h;
const WIDEST = 2 ** 23; // grid units; 26 m

const isLong = ([w, h]: Size, { over }: StackLimit): boolean => Math.max(w, h) > over;

/** Of a task and its groups still to be cut: asked for again and again in every way to cut a sheet. */
const standings = new WeakMap<Task, Map<string, Standing>>();

function standing(task: Task, left: readonly number[], limit: StackLimit): Standing {
  const ofTask = standings.get(task) ?? new Map<string, Standing>();
  standings.set(task, ofTask);
  const key = left.join();
  const found = ofTask.get(key) ?? standingNow(task, left, limit);
  ofTask.set(key, found);
  return found;
}

function standingNow(task: Task, left: readonly number[], limit: StackLimit): Standing {
  const { axis, front, size: whole } = task;
  const groups = left.map((g) => itemAt(task.groups, g));
  const size = withSize(
    whole,
    axis,
    groups.reduce((sum, group) => sum + offOf(group, axis), front.size[axis]),
  );
  let work: string | undefined;
  return {
    key: sizeKey(size),
    isLong: isLong(size, limit),
    work: () => {
      work ??= workKey(task, groups);
      return work;
    },
    ...needOf(task, groups, limit),
  };
}

const known = new WeakMap<Open, { readonly left: number; readonly standing: Standing }>();

export function standingOf(open: Open, limit: StackLimit): Standing {
  const before = known.get(open);
  if (before?.left === open.left) return before.standing;
  const found = standing(open.task, leftOf(open), limit);
  known.set(open, { left: open.left, standing: found });
  return found;
}

/** Groups still to be cut. */
export const leftOf = ({ task, done }: Open): number[] => task.groups.flatMap((_, g) => (done[g] ? [] : [g]));

/** What stands when these groups of a piece are cut. */
export function standingAfter(open: Open, groups: readonly number[], limit: StackLimit): Standing[] {
  const { task } = open;
  const left = leftOf(open).filter((g) => !groups.includes(g));
  const falls = groups.flatMap((g) => kindsOf(itemAt(task.groups, g)));
  const parts = left.length === 0 ? [...falls, task.front] : falls;
  const found = parts.flatMap((part) => (part.task ? [standingWhole(part.task, limit)] : []));
  return left.length === 0 ? found : [...found, standing(task, left, limit)];
}

const offOf = ({ falls }: Group, axis: Task["axis"]): number => falls.reduce((sum, { size }) => sum + size[axis], 0);

type Need = Pick<Standing, "need" | "needAmongAlike" | "isCutOn">;

/**
 * One part after another, what needs most room last: beside the one in work stand the rest of the piece, as long as there is
 * one, and pieces of the same size. Among alike pieces what comes off the first of them stands while the others are cut.
 */
function needOf({ size, axis, front }: Task, groups: readonly Group[], limit: StackLimit): Need {
  const isRestLong = isLong(size, limit);
  const cutOn = groups.filter((group) => kindsOf(group).length > 0);
  const inner = cutOn.map((group) => kindsOf(group));
  if (front.task) {
    const alike = inner.findIndex((kinds) => sizeKey(firstOf(kinds).size) === sizeKey(front.size));
    if (alike < 0) inner.push([front]);
    else inner[alike] = [...itemAt(inner, alike), front];
  }
  const needs = inner.map((kinds, k) => {
    const own = kinds.map((part): Need => standingWhole(part.task ?? missing(), limit)).reduce(both);
    const works = kinds.map((part) => () => keyOf(part));
    return { ...stackNeed(own, works, isLong(firstOf(kinds).size, limit)), off: cutOn[k] ? offOf(cutOn[k], axis) : 0 };
  });
  needs.sort((a, b) => a.long - b.long || a.all - b.all || b.off - a.off);
  // Blanks are cut off at once, the others one by one: what stands beside them grows shorter.
  const blanks = groups.filter(({ falls }) => falls.every(({ blank, task }) => blank !== null && task === null));
  let rest = blanks.reduce((left, group) => left - offOf(group, axis), size[axis]);
  let need = NONE;
  needs.forEach((own, k) => {
    rest -= own.off;
    const isLast = k === needs.length - 1;
    need = greater(need, isLast ? own : plus(own, isLong(withSize(size, axis, rest), limit)));
  });
  const isAnyLong = inner.some((kinds) => isLong(firstOf(kinds).size, limit));
  const first: Count = {
    all: Math.min(2, inner.length),
    long: (isAnyLong ? 1 : 0) + (inner.length > 1 && isRestLong ? 1 : 0),
  };
  return { need, needAmongAlike: greater(need, first), isCutOn: inner.length > 0 };
}

/** Of a stack of pieces with these works. */
function stackNeed({ need, needAmongAlike, isCutOn }: Need, works: readonly (() => string)[], isLong: boolean): Count {
  if (works.length < 2 || !isCutOn) return need;
  return works.every((work) => work() === firstOf(works)()) ? needAmongAlike : plus(needAmongAlike, isLong);
}

const kinds = new WeakMap<Group, readonly Part[]>();

/** Parts of a group that are cut further, two at most that are alike. */
function kindsOf(group: Group): readonly Part[] {
  const known = kinds.get(group);
  if (known) return known;
  const counts = new Map<string, number>();
  const found = group.falls.filter((part) => {
    const before = counts.get(keyOf(part)) ?? 0;
    counts.set(keyOf(part), before + 1);
    return part.task !== null && before < 2;
  });
  kinds.set(group, found);
  return found;
}

const plus = ({ all, long }: Count, one: boolean): Count => ({ all: all + 1, long: long + (one ? 1 : 0) });

/** Of a part before its first cut. */
const standingWhole = (task: Task, limit: StackLimit): Standing => standing(task, [...task.groups.keys()], limit);

export interface Stack {
  readonly key: number;
  readonly isLong: boolean;
  /** Beside the stack itself and the others, its own fellows among them. */
  readonly need: Count;
}

export function stacksOf(pieces: readonly Standing[]): Stack[] {
  const stacks = new Map<number, { readonly isLong: boolean; readonly works: (() => string)[]; need: Need }>();
  for (const one of pieces) {
    const { key, isLong, work } = one;
    const before = stacks.get(key);
    if (before) {
      before.works.push(work);
      before.need = both(before.need, one);
    } else stacks.set(key, { isLong, works: [work], need: one });
  }
  return [...stacks].map(([key, { isLong, works, need }]) => ({ key, isLong, need: stackNeed(need, works, isLong) }));
}

const both = (a: Need, b: Need): Need => ({
  need: greater(a.need, b.need),
  needAmongAlike: greater(a.needAmongAlike, b.needAmongAlike),
  isCutOn: a.isCutOn || b.isCutOn,
});

export const countOf = (stacks: readonly Stack[]): Count => ({
  all: stacks.length,
  long: stacks.filter(({ isLong }) => isLong).length,
});

export const isWithin = ({ all, long }: Count, limit: StackLimit): boolean => all <= limit.all && long <= limit.long;

/** Whether one of the stacks may be worked off while the others stand. */
export function mayWorkOff(one: Stack, stacks: readonly Stack[], limit: StackLimit): boolean {
  const { all, long } = countOf(stacks);
  const others = { all: all - 1 + one.need.all, long: long - (one.isLong ? 1 : 0) + one.need.long };
  return isWithin(others, limit);
}

/** Whether the stacks can be worked off one after another, what needs least room first. */
export function canBeFinished(stacks: readonly Stack[], limit: StackLimit): boolean {
  const turns = [...stacks].sort((a, b) => a.need.long - b.need.long || a.need.all - b.need.all);
  return turns.every((one, k) => mayWorkOff(one, turns.slice(k), limit));
}
