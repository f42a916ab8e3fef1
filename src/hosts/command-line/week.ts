/** `shop week JOB.xlsx ... | FOLDER`: the open jobs together. Exit 0, 1 where a job is late or a line not planned, 2 where a file is refused. */

import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { dayAndTime } from "../../bill/day.ts";
import { faultSays, linesWithout, type WeekFault } from "../../bill/week/faults.ts";
import { latestStarts } from "../../bill/week/latest-starts.ts";
import { movedJobs, type Stood } from "../../bill/week/move-bar.ts";
import { searchWeek } from "../../bill/week/replan-week.ts";
import { rescuesOf } from "../../bill/week/rescue.ts";
import type { WeekJob } from "../../bill/week/steps.ts";
import { takeBill } from "../../bill/week/take-bill.ts";
import type { WeekOptions } from "../../bill/week/week.ts";
import type { BookShop } from "../../job/job-plan.ts";
import { weekJob } from "../../job/week-jobs.ts";
import { type SaidWeek, stoodIn, weekBefore, weekJson } from "../../job/week-json.ts";
import { weekPapers } from "../../papers/week/week-papers.ts";
import { serialNow, serialOfIso } from "../../sheet/formula/serial-now.ts";
import { FileRefusal, refuse } from "../../sheet/package/file-refusal.ts";
import { firstOf, itemAt } from "../../units/certain.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { callerPath, isFolder } from "./caller.ts";
import type { Command, CommandContext } from "./command.ts";
import { REFUSED } from "./guard.ts";
import { bookIn, shopIn } from "./job-files.ts";
import { positive } from "./limits.ts";
import { workbooksBelow } from "./plan-jobs.ts";
import { writePapers } from "./print.ts";
import { readArguments, UsageError } from "./usage.ts";
import { weekWords } from "./week-words.ts";

const LATE = 1;
const SECONDS_PER_DAY = 86_400; // by definition
const SECONDS_PER_HOUR = 3600; // by definition
const MOST_JOBS = 100; // chosen: beyond that it is no week
const MOST_RESCUED = 5; // chosen: the latest ones, each way costs another plan

export const week: Command = async (args, context) => {
  const { values, positionals } = readArguments(args, {
    shop: { type: "string" },
    now: { type: "string" },
    take: { type: "string" },
    last: { type: "string" },
    frozen: { type: "string" },
    latest: { type: "boolean" },
    print: { type: "string" },
    "no-pdf": { type: "boolean" },
    json: { type: "boolean" },
  });
  if (positionals.length === 0) throw new UsageError("week takes JOB.xlsx ..., or a FOLDER of them");
  if (values.frozen !== undefined && values.last === undefined)
    throw new UsageError("--frozen keeps what a plan before says; give it with --last WEEK.json");
  const serial = values.now === undefined ? serialNow(new Date()) : serialOfIso(values.now);
  if (serial === undefined)
    throw new UsageError(`--now must be a date or a date and time as in 2026-05-18T07:00; got ${values.now}`);
  const now = Math.round(serial * SECONDS_PER_DAY) as WeekOptions["now"];
  const frozen = values.frozen === undefined ? 0 : positive("--frozen", values.frozen, 0);
  try {
    const shop = values.shop === undefined ? undefined : shopIn(values.shop);
    const files = filesOf(positionals);
    const { jobs, faults, lost } = jobsOf(files, shop, context);
    const last = lastOf(values.last, now + frozen * SECONDS_PER_HOUR);
    const options: WeekOptions = { now, shop: shop?.shop, ...last.options };
    const { week: open, ...found } = planned(jobs, faults, options, values.take, shop);
    const made = { ...open, faults: [...lost, ...open.faults] };
    const plain: SaidWeek = { ...found, week: made, moved: last.stood && movedJobs(last.stood, made) };
    const said = values.latest ? { ...plain, latest: latestStarts(plain.jobs, options, made) } : plain;
    if (values.json) context.out(`${JSON.stringify(weekJson(said))}\n`);
    else context.out(`${weekWords(said)}\n`);
    if (values.print !== undefined) {
      const { system } = firstOf(jobs).plan.shop;
      const plans = said.jobs.map(({ plan }) => plan);
      const papers = weekPapers(made, { version: context.version, system, plans, rescues: said.rescues, faults });
      // Only what went wrong with the papers is said: standard output is for the week.
      const code = await writePapers(
        papers,
        values.print,
        { pdf: !values["no-pdf"], json: false },
        { ...context, out: context.note },
      );
      if (code !== 0) return code;
    }
    if (lost.length > 0) return REFUSED;
    return made.jobs.some(({ name, late }) => late > 0 || linesWithout(made.faults, name) > 0) ? LATE : 0;
  } catch (problem) {
    if (!(problem instanceof Refusal) && !(problem instanceof FileRefusal)) throw problem;
    context.note(`${problem.message}\n`);
    return REFUSED;
  }
};

export function filesOf(given: readonly string[]): readonly string[] {
  const files = given.flatMap((path) =>
    isFolder(callerPath(path))
      ? workbooksBelow(callerPath(path))
          .sort()
          .map((name) => join(path, name))
      : [path],
  );
  if (files.length === 0) refuse("unreadable", firstOf(given), "a folder with workbooks of jobs", "one without");
  if (files.length > MOST_JOBS)
    refuse("too-large", firstOf(given), `a week of at most ${MOST_JOBS} jobs`, files.length);
  return files;
}

/** A job is called by its file name, or by its path where two files share a name. */
export function jobNames(files: readonly string[]): string[] {
  const names = files.map((file) => basename(file).replace(/\.xls[xm]$/i, ""));
  return names.map((name, i) => (names.indexOf(name) === names.lastIndexOf(name) ? name : itemAt(files, i)));
}

/** A file that cannot be read, holds no job, or is given twice is named; the others are planned. */
function jobsOf(given: readonly string[], shop: BookShop | undefined, { note, interactive }: CommandContext) {
  const files = given.filter((file, i) => given.findIndex((one) => callerPath(one) === callerPath(file)) === i);
  const names = jobNames(files);
  const jobs: WeekJob[] = [];
  const lost: WeekFault[] = [];
  const faults = given.length > files.length ? ["a workbook is given twice; it is planned once"] : [];
  files.forEach((file, i) => {
    const name = itemAt(names, i);
    try {
      const read = weekJob(name, bookIn(file), shop);
      if (interactive) note(`${name}: ${i + 1} of ${files.length}\n`);
      const { job } = read;
      if (typeof job === "string") lost.push({ kind: "unplanned", job: name, says: job });
      else {
        jobs.push(job);
        // It is planned here, so that the progress shown is true; the week names a refusal of its lines.
        refusalOr(() => job.plan.lines);
      }
      faults.push(...read.faults.map((fault) => `${name}: ${fault}`));
    } catch (problem) {
      if (!(problem instanceof FileRefusal)) throw problem;
      lost.push({ kind: "unplanned", job: name, says: problem.message });
    }
  });
  if (jobs.length === 0) {
    for (const fault of [...faults, ...lost.map((each) => faultSays(each, dayAndTime))]) note(`${fault}\n`);
    refuse("unreadable", firstOf(files), "a job's workbook", "none that can be planned");
  }
  return { jobs, faults, lost };
}

interface Last {
  readonly stood: Stood | undefined;
  /** Orders of the plan before, and the steps of it that begin before a time. */
  readonly options: Pick<WeekOptions, "tried" | "frozen" | "isKept">;
}

function lastOf(file: string | undefined, until: number): Last {
  if (file === undefined) return { stood: undefined, options: {} };
  const before = weekBefore(readFileSync(callerPath(file), "utf8"));
  if (!before) return refuse("unreadable", file, "what week --json wrote", "something else");
  const stood = stoodIn(before);
  const near = [...stood.begins].filter(([, begins]) => begins < until).sort(([, a], [, b]) => a - b);
  const tried = [new Map(Object.entries(before.orders))];
  return { stood, options: { tried, isKept: true, frozen: near.map(([key]) => key) } };
}

function planned(
  jobs: readonly WeekJob[],
  faults: readonly string[],
  options: WeekOptions,
  take: string | undefined,
  shop: BookShop | undefined,
): Omit<SaidWeek, "moved"> {
  if (take !== undefined) {
    const name = basename(take).replace(/\.xls[xm]$/i, "");
    const bill = weekJob(`${name} (new)`, bookIn(take), shop);
    if (typeof bill.job === "string") return refuse("unreadable", take, "a job's workbook", bill.job);
    const taken = takeBill(jobs, bill.job, options);
    const all = [...faults, ...bill.faults.map((fault) => `${name}: ${fault}`)];
    return { jobs: [...jobs, bill.job], week: taken.week, rescues: [], taken: { ...taken, name }, faults: all };
  }
  const found = searchWeek(jobs, options);
  const late = found.jobs.filter((job) => job.late > 0).sort((a, b) => b.late - a.late);
  const rescues = late.slice(0, MOST_RESCUED).map(({ name }) => [name, rescuesOf(jobs, options, found, name)] as const);
  return { jobs, week: found, rescues, taken: undefined, faults };
}
