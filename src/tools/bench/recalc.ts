import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { shopFunctions } from "../../cells/catalogue.ts";
import { Calculator } from "../../sheet/graph/calculator.ts";
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import { writeWorkbook } from "../../sheet/write/write-workbook.ts";
import { libreOfficeTimes } from "./libreoffice.ts";
import { benchOptions } from "./options.ts";
import { benchmarkWorkbook } from "./recalc-workbook.ts";
import { medianOf } from "./spread.ts";

const USAGE = "bench:recalc [--json] [--rows N] [--runs N]";

/** Rows of the bill, and how often each size is run: the small one is judged by its median. */
const SIZES: readonly (readonly [rows: number, runs: number])[] = [
  [10_000, 5],
  [100_000, 3],
];

/** LibreOffice takes minutes to load the large one. */
const COMPARED_UP_TO = 10_000;

interface Line {
  readonly rows: number;
  readonly formulas: number;
  readonly calc_ms: { readonly median: number; readonly min: number; readonly max: number };
  readonly load_ms: number;
  readonly write_ms: number;
  /** Medians of one changed input: in the last row, and in the first, which every row's totals depend on. */
  readonly edit_ms: { readonly last: number; readonly first: number };
  /** The very first edit, which also finds out who reads what. */
  readonly first_edit_ms: number;
  readonly rss_mb: number;
  readonly runs: number;
}

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** Column of the thickness: weight, price, total and check of its row depend on it, and totals and checks below. */
const THICKNESS = 2;
const EDITS = 5;

/** How long a changed thickness in this row takes, once for each of several values. */
function editTimes(calculator: Calculator, row: number): number[] {
  return Array.from({ length: EDITS }, (_, i) => {
    const start = performance.now();
    calculator.change([{ sheet: 0, row, column: THICKNESS, value: 0.1 + i / 32 }]);
    return performance.now() - start;
  });
}

/** Loads, calculates and writes the same workbook `runs` times. Memory is the peak of the first round trip. */
function measure(rows: number, runs: number): Line {
  const bytes = benchmarkWorkbook(rows);
  const [load, calc, write]: [number[], number[], number[]] = [[], [], []];
  let peak = 0;
  let formulas = 0;
  const edits = { first: Number.NaN, last: [] as number[], top: [] as number[] };
  for (let run = 0; run < runs; run++) {
    const t0 = performance.now();
    const workbook = readWorkbook(bytes);
    const t1 = performance.now();
    const calculator = new Calculator(workbook, { functions: shopFunctions });
    calculator.calculateAll();
    const t2 = performance.now();
    const written = writeWorkbook(workbook);
    const t3 = performance.now();
    load.push(t1 - t0);
    calc.push(t2 - t1);
    write.push(t3 - t2);
    if (run === 0) peak = process.resourceUsage().maxRSS / 1024;
    formulas = [...calculator.formulas()].length;
    if (written.changed !== formulas)
      throw new Error(`${written.changed} of ${formulas} formula cells were calculated`);
    if (run < runs - 1) continue;
    const [first, ...last] = editTimes(calculator, rows);
    edits.first = first ?? Number.NaN;
    edits.last = last;
    edits.top = editTimes(calculator, 1);
  }
  return {
    rows,
    formulas,
    calc_ms: { median: tenths(medianOf(calc)), min: tenths(Math.min(...calc)), max: tenths(Math.max(...calc)) },
    load_ms: tenths(medianOf(load)),
    write_ms: tenths(medianOf(write)),
    edit_ms: { last: tenths(medianOf(edits.last)), first: tenths(medianOf(edits.top)) },
    first_edit_ms: tenths(edits.first),
    rss_mb: Math.round(peak),
    runs,
  };
}

/** Each size in a process of its own, so that one does not run on the other's memory. */
function measureApart(rows: number, runs: number): Line {
  const self = fileURLToPath(import.meta.url);
  const child = spawnSync(process.execPath, [self, "--inside", "1", "--rows", String(rows), "--runs", String(runs)], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
  });
  if (child.status !== 0) throw new Error(`the run of ${rows} rows ended with ${child.status}`);
  return JSON.parse(child.stdout) as Line;
}

function show(line: Line): string {
  const { rows, formulas, calc_ms: calc } = line;
  const perCell = ((calc.median * 1000) / formulas).toFixed(2);
  return `${rows} rows, ${formulas} formulas: ${calc.median} ms (${calc.min} to ${calc.max}, ${line.runs} runs), ${perCell} us a cell; load ${line.load_ms} ms, write ${line.write_ms} ms, ${line.rss_mb} MB; an edit of the last row ${line.edit_ms.last} ms, of the first ${line.edit_ms.first} ms, the very first edit ${line.first_edit_ms} ms\n`;
}

function main(): void {
  const {
    rows: asked,
    runs,
    inside,
    json,
  } = benchOptions(USAGE, {
    numbers: { rows: { usual: 0, least: 0 }, runs: { usual: 0, least: 0 }, inside: { usual: 0, least: 0 } },
  });
  if (inside > 0) {
    process.stdout.write(JSON.stringify(measure(asked, runs || 1)));
    return;
  }
  const sizes = asked === 0 ? SIZES : [[asked, 5] as const];
  for (const [rows, usual] of sizes) {
    const line = measureApart(rows, runs || usual);
    process.stdout.write(json ? `${JSON.stringify(line)}\n` : show(line));
    // Beside it, on standard error: the same ordinary formulas by another program, where it is installed.
    const other = rows > COMPARED_UP_TO ? undefined : libreOfficeTimes(benchmarkWorkbook(rows, true));
    if (other) {
      const [a, b] = [other.recalculated, other.loaded].map((seconds) => seconds.toFixed(2));
      process.stderr.write(`LibreOffice, ordinary formulas only: ${a} s with a hard recalculation, ${b} s without\n`);
    }
  }
}

main();
