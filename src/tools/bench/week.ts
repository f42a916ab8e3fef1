/**
 * npm run -s bench:week -- [--jobs 10] [--lines 60] [--runs 5] [--json]
 * Open jobs of invented bills in one week, ms of processor time: their plans, the first answer, the whole answer, and the new week after one
 * mark was edited.
 */
import type { Marks } from "../../bill/nouns/marks.ts";
import { NO_MARKS } from "../../bill/nouns/marks.ts";
import { planBill } from "../../bill/plan.ts";
import { planWeek } from "../../bill/week/plan-week.ts";
import { replanWeek } from "../../bill/week/replan-week.ts";
import type { WeekJob } from "../../bill/week/steps.ts";
import { instant, SECONDS_PER_DAY } from "../../calc/schedule/calendar.ts";
import { currentMaterials } from "../../cells/parameters/read-data.ts";
import { readBill } from "../../cells/tables/bill.ts";
import { tableOf } from "../../cells/tables/recognized.ts";
import { readShop } from "../../cells/tables/shop-arguments.ts";
import { firstOf, itemAt, lastOf } from "../../units/certain.ts";
import { processorTime } from "./cutting/clock.ts";
import { inventedBill, inventedJob, MONDAY, SHOP } from "./invented-bill.ts";
import { benchOptions } from "./options.ts";
import { medianOf } from "./spread.ts";

const { jobs, lines, runs, json } = benchOptions("bench:week [--jobs 10] [--lines 60] [--runs 5] [--json]", {
  numbers: { jobs: 10, lines: 60, runs: 5 },
});
const context = { system: "in" as const, materials: currentMaterials(), material: undefined };
const FURTHER = 3; // days between the due times

const planned = (job: number): WeekJob => {
  const tables = [...SHOP, inventedJob(4 + FURTHER * job)];
  const shop = readShop(Object.fromEntries(tables.map((table) => [tableOf(firstOf(table))!, table])), context);
  return {
    name: `job ${job + 1}`,
    plan: planBill(shop, readBill(inventedBill(lines, job + 1), "bill", context)),
    marks: new Map(),
  };
};
const timed = <T>(action: () => T): [T, number] => {
  const begun = processorTime();
  const found = action();
  return [found, processorTime() - begun];
};

const [open, plans] = timed(() => {
  const all = Array.from({ length: jobs }, (_, job) => planned(job));
  for (const { plan } of all) for (const line of plan.quoted) plan.workOf(line);
  return all;
});
const now = instant((MONDAY + 7 / 24) * SECONDS_PER_DAY);
const times = Array.from({ length: runs }, (_, run) => {
  const [first, first_ms] = timed(() => planWeek(open, { now, units: 0 }));
  const [week, whole_ms] = timed(() => planWeek(open, { now }));
  const row = firstOf(itemAt(open, run % jobs).plan.quoted).row;
  const mark: Marks = { ...NO_MARKS, isDone: true };
  const marked = open.map((job, at) => (at === run % jobs ? { ...job, marks: new Map([[row, mark]]) } : job));
  const [again, edit_ms] = timed(() => replanWeek(marked, { now, isKept: true }, week));
  const late = (of: typeof week) => of.worth.late / 3600;
  return {
    first_ms,
    whole_ms,
    edit_ms,
    steps: week.steps.length,
    late_first: late(first),
    late: late(week),
    late_edit: late(again),
    set_up: week.worth.setUp / 3600,
    bound: week.bound.late / 3600,
    proved: week.isProved,
  };
});
const of = (what: "first_ms" | "whole_ms" | "edit_ms") => Math.round(medianOf(times.map((row) => row[what])));
const { first_ms: _, whole_ms: __, edit_ms: ___, ...last } = lastOf(times);
const found = {
  jobs,
  lines,
  plans_ms: Math.round(plans),
  first_ms: of("first_ms"),
  whole_ms: of("whole_ms"),
  edit_ms: of("edit_ms"),
  ...last,
};
console.log(json ? JSON.stringify(found) : Object.entries(found).flat().join(" "));
