/**
 * The cuts of a plan in the order of the shop floor: datum trims of all sheets first (long edge, then the short edge
 * square to it), then strips, crosscuts and sizing of every piece in turn (order: common practice; datum first as in
 * marking-out teaching, reasoned). Equal gauges come together over the whole job, whatever they cut: see gauge-order.ts.
 */
import { type Part, partsOf, sheetPart } from "./cut-tasks.ts";
import { gaugeOrder } from "./gauge-order.ts";
import type { Problem } from "./problem.ts";
import { Bench } from "./shear-bench.ts";
import type { Blank, Cut, Limits, PlannedPattern, Stock } from "./types.ts";

export interface OrderedCuts {
  readonly cuts: Cut[];
  readonly settings: number;
  readonly settingsSheetBySheet: number;
  readonly settingsStripByStrip: number;
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
  bench.trimAll();
  for (const gauge of gaugeOrder(sheets)) bench.cutAt(gauge);
  return {
    cuts: bench.cuts,
    settings: bench.setting,
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
