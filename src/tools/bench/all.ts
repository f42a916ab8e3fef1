/**
 * npm run bench [-- --runs 5]
 * Runs every benchmark in processes of their own, several times, and writes tests/recorded/benchmarks.md: machine, versions,
 * medians, spread, and growth to ten times the size. How to read it stands on top of the page.
 */
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { cpus, loadavg, platform, totalmem } from "node:os";
import { parseArgs } from "node:util";
import { gzipSync } from "node:zlib";
import { firstOf } from "../../units/certain.ts";
import { type Measured, resultsPage } from "./results-page.ts";
import { spreadOf } from "./spread.ts";

const { values } = parseArgs({ options: { runs: { type: "string", default: "5" } } });
const runs = Number(values.runs);
if (!(Number.isInteger(runs) && runs > 0)) {
  console.error("--runs must be a whole number above 0");
  process.exit(64);
}
const START = "src/tools/start/start.mjs";
type Line = Record<string, unknown>;

/** What a benchmark prints, a JSON object a line; undefined where it fails. */
function printed(task: string, ...args: string[]): Line[] | undefined {
  const { status, stdout } = spawnSync(process.execPath, [START, task, ...args], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
  });
  if (status !== 0) return undefined;
  return stdout
    .split("\n")
    .filter((text) => text.startsWith("{"))
    .map((text) => JSON.parse(text) as Line);
}

/** The same figure out of every run. */
function repeated(what: string, size: string, unit: string, one: () => number | undefined): Measured {
  console.error(what, size);
  const found = Array.from({ length: runs }, one).filter((each) => each !== undefined);
  return { what, size, unit, runs: found.length, ...(found.length > 0 ? { spread: spreadOf(found) } : {}) };
}
const figure = (lines: Line[] | undefined, name: string, value: string): number | undefined =>
  lines?.find((line) => Object.values(line).includes(name))?.[value] as number | undefined;

const startUp = (): number | undefined => {
  const start = performance.now();
  const { status } = spawnSync(process.execPath, [START, "shop", "calc", "=1+1"], { stdio: "ignore" });
  return status === 0 ? performance.now() - start : undefined;
};
const recalc = (rows: number) => () => {
  const [line] = printed("bench:recalc", "--json", "--rows", String(rows), "--runs", "3") ?? [];
  return (line?.["calc_ms"] as { median: number } | undefined)?.median;
};
const bill = (lines: number) => () =>
  figure(printed("bench:bill", "--json", "--lines", String(lines), "--runs", "3"), "all", "median_ms");
const order = (bends: number) => () =>
  figure(printed("bench:order", "--json", "--bends", String(bends)), "all", "median_ms");
const airBend = () => {
  const [line] = printed("bench:airbend", "--json", "--solves", "2000") ?? [];
  return (line?.["solves"] as { median_ms: number } | undefined)?.median_ms;
};
const week = (what: "first_ms" | "whole_ms" | "edit_ms") => () =>
  printed("bench:week", "--json", "--runs", "3")?.[0]?.[what] as number | undefined;
const cutting = () => {
  const lines = printed("bench:cutting-shop", "1", "1", "8");
  const total = lines?.at(-1)?.["total"] as { gap_mean: number } | undefined;
  return total && 100 * total.gap_mean;
};

startUp(); // builds what has changed
const measured: Measured[] = [
  repeated("start of the command line", "one formula", "ms", startUp),
  repeated("recalculation of a workbook", "1,000 rows", "ms", recalc(1_000)),
  repeated("recalculation of a workbook", "10,000 rows", "ms", recalc(10_000)),
  repeated("every function about a bill", "100 lines", "ms", bill(100)),
  repeated("every function about a bill", "1,000 lines", "ms", bill(1_000)),
  repeated("bend order", "4 bends", "ms", order(4)),
  repeated("bend order", "8 bends", "ms", order(8)),
  repeated("one air bend solved", "2,000 bends", "ms", airBend),
  repeated("week of open jobs, first answer", "10 jobs of 60 lines", "ms", week("first_ms")),
  repeated("week of open jobs, whole answer", "10 jobs of 60 lines", "ms", week("whole_ms")),
  repeated("week of open jobs, one mark edited", "10 jobs of 60 lines", "ms", week("edit_ms")),
  repeated("cut plan of a shop's bill within 1 s, over the bound", "8 bills", "%", cutting),
];
const functions = printed("bench:functions", "--json") ?? [];

const root = process.cwd();
const sizes = existsSync(`${root}/dist`)
  ? readdirSync(`${root}/dist`)
      .filter((name) => name.endsWith(".js"))
      .map((name) => ({ name, kb: gzipSync(readFileSync(`${root}/dist/${name}`)).length / 1000 }))
  : [];
const { version } = JSON.parse(readFileSync(`${root}/package.json`, "utf8")) as { version: string };
const machine = {
  processor: cpus()[0]?.model ?? "unknown",
  cores: cpus().length,
  gigabytes: Math.round(totalmem() / 1e9),
  system: platform(),
  node: process.version,
  version,
  load: firstOf(loadavg()),
  date: new Date().toISOString().slice(0, 10),
};
writeFileSync(`${root}/tests/recorded/benchmarks.md`, resultsPage(machine, measured, functions as never, sizes));
console.log("tests/recorded/benchmarks.md");
