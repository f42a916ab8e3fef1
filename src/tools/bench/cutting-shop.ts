/**
 * `bench:cutting-shop [seconds] [first seed] [last seed]`: generated shop bills; the bound of bars, and the gap of the metal over
 * it with time counted, without, and for the fewest sheets; time to the first plan, settings, strokes, heavy lifts
 * against the least, stacks standing at once, and minutes.
 */
import { type PlanOptions, planCuts } from "../../calc/cutting/index.ts";
import { processorTime, timeIsUp } from "./cutting/clock.ts";
import { PER_MINUTE, shopBill } from "./cutting/shop-bills.ts";

const seconds = Number(process.argv[2] ?? 1);
/** What this machine about does; the search shares out its work by it, and the clock ends it (fitted). */
const UNITS_A_SECOND = 150_000_000;
/** The order of the cuts and the replay come after the search, and count too (chosen). */
const SEARCH_SHARE = 0.7;
const from = Number(process.argv[3] ?? 1);
const to = Number(process.argv[4] ?? 40);
const rows = [];
for (let seed = from; seed <= to; seed++) {
  const { blanks, stock, limits, weightPerArea } = shopBill(seed);
  let start = 0;
  let first = 0;
  const planned = (aim: Pick<PlanOptions, "least" | "perMinute">) => {
    start = processorTime();
    return planCuts(blanks, stock, limits, {
      ...aim,
      units: seconds * UNITS_A_SECOND,
      weightPerArea,
      stop: timeIsUp(seconds * 1000 * SEARCH_SHARE),
      onBetter: () => {
        first ||= processorTime() - start;
      },
    });
  };
  const plan = planned({ least: "money", perMinute: PER_MINUTE });
  const took = (processorTime() - start) / 1000;
  const { gap: gapOfSheets } = planned({ least: "sheets" });
  const { gap: gapOfMetal } = planned({ least: "money" });
  const row = {
    seed,
    sizes: blanks.length,
    sheets: plan.sheets.reduce((sum, { count }) => sum + count, 0),
    bound: plan.bound,
    gap: plan.gap,
    gap_metal_alone: gapOfMetal,
    gap_fewest_sheets: gapOfSheets,
    money: plan.value - plan.credit + PER_MINUTE * plan.minutes,
    first_plan_ms: first,
    seconds: took,
    settings: plan.settings,
    settings_least: plan.gauges,
    heavy_lifts: plan.heavyLifts,
    heavy_lifts_least: plan.leastHeavyLifts,
    stacks: plan.stacks,
    long_stacks: plan.longStacks,
    strokes: plan.cuts.reduce((sum, { strokes }) => sum + strokes, 0),
    minutes: plan.minutes,
    patterns: plan.patterns.length,
    left_out: plan.leftOut.length,
    stop: plan.stopReason,
  };
  rows.push(row);
  process.stdout.write(`${JSON.stringify(row)}\n`);
}
const mean = (list: readonly number[]) => list.reduce((sum, value) => sum + value, 0) / Math.max(1, list.length);
const large = rows.filter(({ sheets }) => sheets >= 20);
process.stdout.write(
  `${JSON.stringify({
    total: {
      bills: rows.length,
      gap_mean: mean(rows.map(({ gap }) => gap)),
      gap_mean_20_sheets: mean(large.map(({ gap }) => gap)),
      gap_metal_alone_mean_20_sheets: mean(large.map((row) => row.gap_metal_alone)),
      gap_fewest_sheets_mean_20_sheets: mean(large.map((row) => row.gap_fewest_sheets)),
      bills_20_sheets: large.length,
      money: rows.reduce((sum, row) => sum + row.money, 0),
      minutes: rows.reduce((sum, row) => sum + row.minutes, 0),
      settings_share_of_least_mean: mean(rows.map((row) => row.settings / row.settings_least)),
      settings_share_of_least_max: Math.max(...rows.map((row) => row.settings / row.settings_least)),
      heavy_lifts_share_mean: mean(rows.map((row) => row.heavy_lifts / Math.max(1, row.heavy_lifts_least))),
      heavy_lifts_share_max: Math.max(...rows.map((row) => row.heavy_lifts / Math.max(1, row.heavy_lifts_least))),
      stacks_max: Math.max(...rows.map((row) => row.stacks)),
      long_stacks_max: Math.max(...rows.map((row) => row.long_stacks)),
      patterns: rows.reduce((sum, row) => sum + row.patterns, 0),
      first_plan_ms_max: Math.max(...rows.map((row) => row.first_plan_ms)),
      seconds_max: Math.max(...rows.map((row) => row.seconds)),
      left_out: rows.reduce((sum, row) => sum + row.left_out, 0),
    },
  })}\n`,
);
