/** The cuts of a plan in the order of the floor, and what they take there: see floor-order.ts. */
import { type Part, partsOf, sheetPart } from "./cut-tasks.ts";
import { FloorOrder } from "./floor-order.ts";
import { DEFAULT_PACE, floorTime } from "./floor-time.ts";
import type { Problem } from "./problem.ts";
import { Bench } from "./shear-bench.ts";
import { stackLimit } from "./stacks.ts";
import type { Blank, FloorPace, Limits, Plan, PlannedPattern, Stock } from "./types.ts";

export type OrderedCuts = Pick<
  Plan,
  | "cuts"
  | "gauges"
  | "minutes"
  | "heavyLifts"
  | "leastHeavyLifts"
  | "stacks"
  | "longStacks"
  | "settings"
  | "settingsSheetBySheet"
  | "settingsStripByStrip"
>;

export function orderCuts(
  patterns: readonly PlannedPattern[],
  problem: Problem,
  blanks: readonly Blank[],
  stock: readonly Stock[],
  limits: Limits,
  weightPerArea = 0,
  pace: FloorPace = DEFAULT_PACE,
): OrderedCuts {
  const sheets = patterns.map((pattern, p) => sheetPart(pattern, p, problem, blanks, stock, limits));
  const limit = stackLimit(limits);
  const dated = blanks.some(({ due }) => due !== undefined);
  const inOrder = (sparing: boolean) => {
    const bench = new Bench(patterns);
    return { bench, standing: new FloorOrder(bench, limit, weightPerArea, pace, sparing, dated).run(sheets, patterns) };
  };
  const isOver = ({ standing }: ReturnType<typeof inOrder>) =>
    standing.stacks > limit.all || standing.longStacks > limit.long;
  const quick = inOrder(false);
  const sparing = isOver(quick) ? inOrder(true) : quick;
  const { bench, standing } = isOver(sparing) ? quick : sparing;
  const { minutes, settings, heavyLifts } = floorTime(bench.cuts, weightPerArea, pace);
  return {
    cuts: bench.cuts,
    ...standing,
    minutes,
    settings,
    heavyLifts,
    gauges: new Set(bench.cuts.flatMap(({ by, measure }) => (by === "mark" ? [] : [`${by} ${measure}`]))).size,
    settingsSheetBySheet: settingsOf(sheets, patterns, stripsFirst),
    settingsStripByStrip: settingsOf(sheets, patterns, stripByStrip),
  };
}

/**
 * Gauge moves of a person who works without this list and finishes every sheet before the next. Counted in all lists: every
 * change of the back gauge for a strip, a crosscut, a sizing cut or waste that falls, the first setting too; every sheet
 * of a repeated pattern. Not counted: edge trims, cut to a mark, and a cut at the gauge's present setting, also when it is
 * the next sheet's first. Within one piece equal cuts stand together, widest first.
 */
function settingsOf(
  sheets: readonly Part[],
  patterns: readonly PlannedPattern[],
  cutPart: (part: Part, set: (gauge: number) => void) => void,
): number {
  let moves = 0;
  let last: number | null = null;
  const set = (gauge: number) => {
    if (gauge !== last) moves++;
    last = gauge;
  };
  sheets.forEach((sheet, p) => {
    for (let n = 0; n < patterns[p]!.repeats; n++) cutPart(sheet, set);
  });
  return moves;
}

/** All strips of the sheet first, then one strip after another cut to length, each piece sized as it comes. */
function stripsFirst({ task }: Part, set: (gauge: number) => void): void {
  if (!task) return;
  for (const { gauge } of task.groups) if (gauge !== null) set(gauge);
  for (const part of partsOf(task)) stripsFirst(part, set);
}

/** Every strip cut to its blanks as soon as it falls, while the rest of the sheet waits in front of the blade. */
function stripByStrip({ task }: Part, set: (gauge: number) => void): void {
  if (!task) return;
  for (const { gauge, falls } of task.groups) {
    for (const part of falls) {
      if (gauge !== null) set(gauge);
      stripByStrip(part, set);
    }
  }
  stripByStrip(task.front, set);
}
