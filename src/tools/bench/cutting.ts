/** `npm run bench:cutting -- DIR`: plans every published instance in a folder and prints one JSON line each. */
import { parseArgs } from "node:util";
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { type Instance, PROBLEMS, type ProblemKind, readInstances } from "./cutting/instances.ts";
import { Published } from "./cutting/published.ts";
import { type Row, runInstance } from "./cutting/run-instance.ts";

const USAGE =
  "usage: bench:cutting DIR [--seconds 1] [--jobs N] [--only TEXT] [--problem csp|2bp-O|2bp-R|large|knapsack] [--published FILE] [--stages 2] [--json]";
const EXIT_USAGE = 64;

interface Task {
  readonly instance: Instance;
  readonly published: number | null;
  readonly seconds: number;
  /** Levels of cuts of the csp instances. */
  readonly stages: number;
}

function readArguments() {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: {
        seconds: { type: "string", default: "1" },
        jobs: { type: "string", default: "1" },
        only: { type: "string", default: "" },
        problem: { type: "string" },
        published: { type: "string" },
        stages: { type: "string", default: "2" },
        json: { type: "boolean", default: false },
      },
    });
    const folder = positionals[0];
    const seconds = Number(values.seconds);
    const jobs = Number(values.jobs);
    const problem = PROBLEMS.find((kind) => kind === values.problem);
    if (folder === undefined || positionals.length > 1) throw new Error("one folder must be given");
    if (!(seconds > 0)) throw new Error(`--seconds must be above 0; got ${values.seconds}`);
    if (!(Number.isInteger(jobs) && jobs > 0))
      throw new Error(`--jobs must be a whole number above 0; got ${values.jobs}`);
    if (values.problem !== undefined && !problem) {
      throw new Error(`--problem must be one of ${PROBLEMS.join(", ")}; got ${values.problem}`);
    }
    const stages = Number(values.stages);
    if (!(Number.isInteger(stages) && stages >= 2))
      throw new Error(`--stages must be a whole number, 2 or more; got ${values.stages}`);
    return {
      folder,
      stages,
      seconds,
      jobs,
      only: values.only,
      problem,
      published: values.published ?? null,
      json: values.json,
    };
  } catch (error) {
    process.stderr.write(`${(error as Error).message}\n${USAGE}\n`);
    process.exit(EXIT_USAGE);
  }
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
  const { folder, stages, seconds, jobs, only, problem, published: file, json } = readArguments();
  const published = new Published(file);
  const tasks = readInstances(folder)
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
