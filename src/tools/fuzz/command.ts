/** What both fuzzers say and take: a seed that replays, a number of trials, findings one a line, exit 1 where there are any. */
import { parseArgs } from "node:util";
import { runSeries, type SeriesLimits } from "./series.ts";

const SHOWN = 50;
const EXIT_USAGE = 64;

export async function fuzz(work: "calls" | "files", fallback: number, usual: SeriesLimits): Promise<void> {
  const { values } = parseArgs({
    options: {
      [work]: { type: "string" },
      seed: { type: "string" },
      from: { type: "string" },
      seconds: { type: "string" },
    },
  });
  const limits = { ...usual, seconds: Number(values["seconds"] ?? usual.seconds) };
  const [count, seed, from] = [
    values[work] ?? fallback,
    values["seed"] ?? Date.now() % 1_000_000,
    values["from"] ?? 0,
  ].map(Number) as [number, number, number];
  if (![count, seed, from].every((each) => Number.isInteger(each) && each >= 0) || !(limits.seconds > 0)) {
    console.error(`--${work}, --seed and --from must be whole numbers from 0, --seconds a number above 0`);
    process.exitCode = EXIT_USAGE;
    return;
  }
  console.log(
    `seed ${seed}, ${work} ${from} to ${from + count - 1}; replay one: --seed ${seed} --from INDEX --${work} 1`,
  );
  const started = performance.now();
  const { findings, stopped, outcomes } = await runSeries(work, { seed, from, count }, limits);
  const seconds = (performance.now() - started) / 1000;
  for (const { index, problem } of findings.slice(0, SHOWN)) console.log(`${index} ${problem}`);
  for (const { index, problem } of stopped.slice(0, SHOWN)) console.log(`${index} stopped by the limit of ${problem}`);
  console.log(
    Object.entries(outcomes)
      .sort(([, a], [, b]) => b - a)
      .map(([outcome, times]) => `${outcome} ${times}`)
      .join(", "),
  );
  console.log(
    `${count} ${work}: ${findings.length} findings, ${stopped.length} stopped at ${limits.seconds} s or ${limits.megabytes} MB, ${seconds.toFixed(0)} s`,
  );
  process.exitCode = findings.length > 0 ? 1 : 0;
}
