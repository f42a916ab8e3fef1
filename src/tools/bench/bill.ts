/**
 * npm run -s bench:bill -- [--lines 1000] [--runs 7] [--only BILL.CHECK] [--due 120] [--json]
 * Time of every function about a bill on an invented one in the shop of the sample, ms: the first run (cold), and the
 * median of the others, each after an edit of one line. The last line is all of them one after the other. BILL.CHECK holds
 * every fix, planned and proved. --due: days the job has; the 1,000 lines take about 80, and where they are late the route
 * is the earliest to the second, so that one edit moves lines of many thicknesses to the other machine. BILL.BREAKS plans
 * another bill for each quantity it is asked: it is timed by --only, with two.
 */
import { RECORDS, shopFunctions } from "../../cells/catalogue.ts";
import { isCellError } from "../../units/cell.ts";
import { cellAt, firstOf, itemAt } from "../../units/certain.ts";
import { inventedBill, inventedJob, SHOP } from "./invented-bill.ts";
import { benchOptions } from "./options.ts";
import { medianOf } from "./spread.ts";

const SEED = 7;
const { lines, runs, due, only, json } = benchOptions(
  "bench:bill [--lines 1000] [--runs 7] [--only NAME] [--due 120]",
  {
    numbers: { lines: { usual: 1000, most: 19_000 }, runs: 7, due: 120 },
    texts: ["only"],
  },
);

const bill = inventedBill(lines, SEED);
const given = [bill, ...SHOP, inventedJob(due)];
/** The bill before the edit: BILL.CHANGES compares the two. */
let before = bill;
const names = RECORDS.map(({ name }) => name).filter((name) =>
  only === undefined ? /^(?:BILL|CUT)\./.test(name) && name !== "BILL.BREAKS" : name === only,
);

/** What a function is asked beside the bill: the bill before the edit, or one line and its quantities. */
function asked(name: string) {
  if (name === "BILL.CHANGES") return [before, ...given];
  if (name === "BILL.BREAKS") return [[[cellAt(bill, 1, firstOf(bill).indexOf("Part"))]], [["50; 500"]], ...given];
  return given;
}

interface Run {
  readonly wall: number;
  /** Of all threads: other work on the machine does not lengthen it. */
  readonly processor: number;
}

function timed(name: string): Run {
  const [used, started] = [process.cpuUsage(), performance.now()];
  // Cells arrive as a copy each time, as they do from a workbook.
  const { value } = shopFunctions.call(
    name,
    asked(name).map((matrix) => matrix.map((row) => [...row])),
  );
  const [wall, { user, system }] = [performance.now() - started, process.cpuUsage(used)];
  if (isCellError(value)) throw new Error(`${name}: ${value.message}`);
  return { wall, processor: (user + system) / 1000 };
}

const rounded = (ms: number) => Math.round(ms * 10) / 10;
/** The first run is cold. Before each of the others one line's quantity is edited, as somebody at a workbook does. */
const all = Array.from({ length: runs + 1 }, (_, run) => {
  const quantity = firstOf(bill).indexOf("Quantity");
  before = bill.map((row) => [...row]);
  if (run > 0) itemAt(bill, ((run * 37) % lines) + 1)[quantity] = 200 + run;
  return names.map((name) => timed(name));
});
names.forEach((name, i) => {
  report(
    name,
    all.map((run) => itemAt(run, i)),
  );
});
const sum = (run: readonly Run[]): Run => ({
  wall: run.reduce((total, { wall }) => total + wall, 0),
  processor: run.reduce((total, { processor }) => total + processor, 0),
});
report("all", all.map(sum));

function report(name: string, [cold, ...warm]: readonly Run[]): void {
  const wall = rounded(medianOf(warm.map((run) => run.wall)));
  const processor = rounded(medianOf(warm.map((run) => run.processor)));
  const found = {
    name,
    lines,
    median_ms: wall,
    processor_ms: processor,
    cold_ms: rounded(cold?.wall ?? Number.NaN),
    runs,
  };
  console.log(
    json ? JSON.stringify(found) : `${name.padEnd(14)} ${wall} ms, processor ${processor} ms, cold ${found.cold_ms} ms`,
  );
}
