/**
 * npm run -s bench:functions -- [--json] [--runs 7]
 * Calls a second of every cell function on its own example, warm; and for those that take a range, the time of a cell in
 * 1,000 and in 10,000 rows, which should be the same. Medians of the runs with the least and the most.
 */
import { type Argument, callRecord } from "../../cells/call/call.ts";
import { RECORDS } from "../../cells/catalogue.ts";
import type { AnyRecord } from "../../cells/record/record.ts";
import { exampleArguments } from "../fuzz/example-arguments.ts";
import { benchOptions } from "./options.ts";
import { type Spread, spreadOf } from "./spread.ts";

const RUN_MS = 20;
const ROWS = [1_000, 10_000] as const;

const { runs, json } = benchOptions("bench:functions [--json] [--runs 7]", { numbers: { runs: 7 } });

for (const record of RECORDS) {
  const given = exampleArguments(record);
  const once = () => callRecord(record, given);
  timesPerCall(once); // warm
  const us: Spread = spreadOf(Array.from({ length: runs }, () => timesPerCall(once) * 1000));
  const range = rangeCost(record, given);
  const line = { name: record.name, us_a_call: us, calls_a_second: Math.round(1e6 / us.median), ...range };
  console.log(
    json
      ? JSON.stringify(line)
      : `${record.name.padEnd(20)} ${us.median.toFixed(1)} us (${us.least.toFixed(1)} to ${us.most.toFixed(1)}), ${line.calls_a_second} calls/s${range ? `; growth to 10x ${range.growth.toFixed(2)}` : ""}`,
  );
}

/** Milliseconds a call, over as many calls as fill the run. */
function timesPerCall(call: () => unknown): number {
  let calls = 0;
  const start = performance.now();
  do {
    call();
    calls++;
  } while (performance.now() - start < RUN_MS);
  return (performance.now() - start) / calls;
}

/** A column in the place of the first plain cell; 1 means that ten times the rows take ten times as long. */
function rangeCost(record: AnyRecord, given: readonly Argument[]): { growth: number; us_a_row: number } | undefined {
  if (record.result.kind === "table") return undefined;
  const place = Object.values(record.parameters).findIndex(
    ({ shape }, i) => shape === "cell" && (given[i] ?? "") !== "",
  );
  if (place < 0) return undefined;
  const [few = Number.NaN, many = Number.NaN] = ROWS.map((rows) => {
    const column = Array.from({ length: rows }, () => [given[place] as never]);
    const call = () =>
      callRecord(
        record,
        given.map((each, i) => (i === place ? column : each)),
      );
    return spreadOf(Array.from({ length: 5 }, () => timed(call))).least / rows; // the least: other work only adds
  });
  return { growth: many / few, us_a_row: many * 1000 };
}

function timed(call: () => unknown): number {
  const start = performance.now();
  call();
  return performance.now() - start;
}
