/** `npm run bench:cutting -- DIR`: plans every published instance in a folder and prints one JSON line each. */
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { type Instance, PROBLEMS, type ProblemKind, readInstances } from "./cutting/instances.ts";
import { Published } from "./cutting/published.ts";
import { type Row, runInstance } from "./cutting/run-instance.ts";
import { benchOptions } from "./options.ts";

const USAGE = `bench:cutting DIR [--seconds 1] [--jobs N] [--only TEXT] [--problem ${PROBLEMS.join("|")}] [--published FILE] [--stages 2] [--json]`;
interface Task {
  readonly instance: Instance;
  readonly published: number | null;
  readonly seconds: number;
  /** Levels of cuts of the csp instances. */
  readonly stages: number;
}

async function runAll(tasks: readonly Task[], jobs: number, each: (row: Row) => void): Promise<void> {
  if (jobs === 1) {
    for (const task of tasks) each(runInstance(task.instance, task.published, task.seconds, task.stages));
    return;
  }
  let next = 0;
  const runWorker = () =>
    new Promise<void>((resolve, reject) => {
      const worker = new Worker(new URL(import.meta.url), { workerData: "cutting" });
      const give = () => {
        if (next < tasks.length) worker.postMessage(tasks[next++]);
        else void worker.terminate().then(() => resolve());
      };
      worker.on("message", (row: Row) => {
        each(row);
        give();
      });
      worker.on("error", reject);
      give();
    });
  await Promise.all(Array.from({ length: Math.min(jobs, tasks.length) }, runWorker));
}

function totals(rows: readonly Row[], published: Published) {
  return PROBLEMS.flatMap((problem) => {
    const own = rows.filter((row) => row.problem === problem);
    if (own.length === 0) return [];
    const sum = (what: (row: Row) => number) => own.reduce((total, row) => total + what(row), 0);
    const groups = [...new Set(own.map(({ group }) => group))].filter((group) => group !== null);
    const compared =
      groups.length > 0
        ? groups.map((group) => ({
            value: own.filter((row) => row.group === group).reduce((total, row) => total + row.value, 0),
            published: published.ofGroup(group, problem),
          }))
        : own.map((row) => ({ value: row.value, published: row.published }));
    const known = compared.filter((line) => line.published !== null);
    const worse = (value: number, best: number) => (problem === "knapsack" ? value < best : value > best);
    return [
      {
        total: {
          problem: problem as ProblemKind,
          instances: own.length,
          sheets: sum((row) => row.sheets),
          ...(problem === "knapsack" ? { value: sum((row) => row.value) } : {}),
          bound: sum((row) => row.bound),
          published: known.length > 0 ? known.reduce((total, line) => total + (line.published ?? 0), 0) : null,
          above_published: known.filter((line) => worse(line.value, line.published ?? 0)).length,
          invalid: own.filter((row) => !row.valid).length,
          seconds: sum((row) => row.seconds),
        },
      },
    ];
  });
}

async function main(): Promise<void> {
  const { operand, stages, seconds, jobs, json, ...given } = benchOptions(USAGE, {
    operand: "DIR",
    numbers: { seconds: { usual: 1, least: 0.01 }, jobs: 1, stages: { usual: 2, least: 2 } },
    texts: ["only", "problem", "published"],
  });
  const { only = "", problem } = given;
  const published = new Published(given.published ?? null);
  const tasks = readInstances(operand)
    .filter((instance) => problem === undefined || instance.problem === problem)
    .filter(({ file, name, group }) => `${file}/${group ?? ""}/${name}`.includes(only))
    .map((instance): Task => ({ instance, published: published.ofInstance(instance), seconds, stages }));
  const rows: Row[] = [];
  await runAll(tasks, jobs, (row) => {
    rows.push(row);
    process.stdout.write(json ? `${JSON.stringify(row)}\n` : `${plainRow(row)}\n`);
  });
  for (const total of totals(rows, published)) {
    process.stdout.write(`${json ? JSON.stringify(total) : Object.entries(total.total).flat().join(" ")}\n`);
  }
  process.exitCode = rows.every(({ valid }) => valid) ? 0 : 1;
}

const plainRow = (row: Row): string =>
  [
    row.problem,
    row.name,
    row.value,
    `bound ${row.bound}`,
    `published ${row.published ?? "-"}`,
    row.valid ? "valid" : "INVALID",
    `${row.seconds.toFixed(2)} s`,
  ].join("  ");

if (isMainThread) await main();
else if (workerData === "cutting") {
  parentPort?.on("message", (task: Task) => {
    parentPort?.postMessage(runInstance(task.instance, task.published, task.seconds, task.stages));
  });
}
