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
    settingsSheetBySheet: sheets.reduce((state, sheet, p) => countAlone(sheet, patterns[p]!.repeats, state), {
      moves: 0,
      last: null as number | null,
    }).moves,
  };
}

/**
 * Gauge moves when every sheet is finished before the next is begun, as a person does who works without this list: its
 * strips, then one strip after another cut to length, each piece sized as it comes. Counted in both lists: every change of
 * the back gauge for a strip, a crosscut, a sizing cut or waste that falls, the first setting too; every sheet of a
 * repeated pattern. Not counted in either: edge trims, cut to a mark, and a cut at the gauge's present setting, also
 * when it is the next sheet's first. Within one piece equal cuts stand together, widest first, in both.
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
