/**
 * The order of the cuts on the floor: one pattern's sheets after another's, each in the quickest of several tries that keep
 * to the stacks that may stand. Heavy pieces set down and taken up again count more than their time.
 */
import { firstOf, itemAt } from "../../units/certain.ts";
import { type Part, type Task, withSize } from "./cut-tasks.ts";
import { floorTime, minutesCounted, NOWHERE } from "./floor-time.ts";
import { type Floor, FloorTry, isHeavy } from "./floor-try.ts";
import { Random } from "./random.ts";
import { Bench } from "./shear-bench.ts";
import { type Count, greater, NONE } from "./stacks.ts";
import type { Cut, PlannedPattern } from "./types.ts";

/** Tries where the floor is too full: chosen. */
const MOST_TRIES = 40;

export interface FloorPlan {
  readonly cuts: readonly Cut[];
  readonly most: Count;
  readonly leastHeavyLifts: number;
}

/** `heavyLift`: what one counts beside its time, in seconds. With `inOrder` the sheets are cut in the order given: some parts are wanted first. */
export function orderOnFloor(
  sheets: readonly Part[],
  patterns: readonly PlannedPattern[],
  floor: Floor,
  { tries, heavyLift, inOrder }: { readonly tries: number; readonly heavyLift: number; readonly inOrder: boolean },
): FloorPlan {
  const cuts: Cut[] = [];
  let bench = new Bench();
  let stands = NOWHERE;
  let standing = NONE;
  let leastHeavyLifts = 0;
  const left = sheets.map((_, p) => p);
  while (left.length > 0) {
    // The sheet whose first gauge is set already, else the next.
    const at = inOrder ? 0 : left.findIndex((p) => bench.isSetFor(itemAt(sheets, p).task));
    const p = firstOf(left.splice(Math.max(0, at), 1));
    const sheet = itemAt(sheets, p);
    const { id, repeats } = itemAt(patterns, p);
    const leastHeavy = heavyIn(sheet, true, floor) * repeats;
    leastHeavyLifts += leastHeavy;
    const attempt = (n: number) => {
      const branch = bench.branch();
      const tried = new FloorTry(branch, floor, n === 0 ? null : new Random(n));
      tried.cut(id, sheet, repeats);
      const time = floorTime(branch.cuts, floor.weightPerArea, floor.pace, stands);
      const over = Math.max(0, tried.most.all - floor.limit.all) + Math.max(0, tried.most.long - floor.limit.long);
      // A gauge that stands for the next sheet is one setting less.
      const isSet = left.some((next) => branch.isSetFor(itemAt(sheets, next).task));
      const settings = time.settings - (isSet ? 1 : 0);
      const counts = over * OVER + 60 * minutesCounted({ ...time, settings }, floor.pace) + time.heavyLifts * heavyLift;
      const isLeast = over === 0 && time.heavyLifts === leastHeavy && settings < gaugesOf(branch.cuts);
      return { bench: branch, most: tried.most, time, over, counts, isLeast };
    };
    let best = attempt(0);
    let { isLeast } = best;
    for (let n = 1; !isLeast && (n < tries || (best.over > 0 && n < MOST_TRIES)); n++) {
      const other = attempt(n);
      if (other.counts < best.counts) best = other;
      isLeast = other.isLeast;
    }
    cuts.push(...best.bench.cuts);
    bench = best.bench.branch();
    stands = best.time.stands;
    standing = greater(standing, best.most);
  }
  return { cuts, most: standing, leastHeavyLifts };
}

/** Measures of back gauge and front stop that differ: no order of these cuts has fewer settings, but for one that stands. */
export const gaugesOf = (cuts: readonly Cut[]): number =>
  new Set(cuts.flatMap(({ by, measure }) => (by === "mark" ? [] : [`${by} ${measure}`]))).size;

/** A stack too many counts more than any time. */
const OVER = 1e9;

/** Heavy pieces that must be taken up at least once: the sheet, those that fall and are cut further, and what a front stop lets fall. */
function heavyIn({ task, size }: Part, lifted: boolean, floor: Floor): number {
  if (!task) return 0;
  const falls = task.groups.flatMap((group) => group.falls);
  const own = (lifted && isHeavy(size, floor) ? 1 : 0) + heavyBehindStop(task, floor) + heavyAgain(task, floor);
  return own + heavyIn(task.front, false, floor) + falls.reduce((sum, part) => sum + heavyIn(part, true, floor), 0);
}

/**
 * Half-cut strips of so many widths, all of them long, that the floor takes only some at once: the piece is set down for them
 * and taken up again. Beside the last of them nothing is left of it. However small the rest has become by then.
 */
function heavyAgain({ axis, size, groups, front }: Task, floor: Floor): number {
  const { long, over } = floor.limit;
  if (long === 0 || size[axis === 0 ? 1 : 0] <= over) return 0;
  const widths = groups.flatMap(({ falls }) => (falls.some(({ task }) => task !== null) ? [falls] : []));
  const extents = widths.map((falls) => falls.reduce((sum, part) => sum + part.size[axis], 0)).sort((a, b) => b - a);
  const visits = Math.ceil((extents.length - (front.task ? 0 : 1)) / long);
  let rest = front.size[axis] + extents.reduce((sum, extent) => sum + extent, 0);
  let heavy = 0;
  for (let visit = 1; visit < visits; visit++) {
    for (const extent of extents.splice(0, long)) rest -= extent;
    if (isHeavy(withSize(size, axis, rest), floor)) heavy++;
  }
  return heavy;
}

/** However small the rest has become by then. */
function heavyBehindStop({ axis, size, front, groups }: Task, floor: Floor): number {
  let rest = front.size[axis];
  let heavy = 0;
  for (const { by, falls } of groups) {
    if (by !== "front stop") continue;
    falls.forEach(({ task: more, blank, size: off }, k) => {
      const isPart = more !== null || blank !== null;
      if (isPart && (k > 0 || front.task !== null) && isHeavy(withSize(size, axis, rest), floor)) heavy++;
      rest += off[axis];
    });
  }
  return heavy;
}
