/** Workbooks of jobs as the open jobs of a week. What is wrong with one is named; the others are planned. */
import { type BillPlan, planBill } from "../bill/plan.ts";
import type { WeekJob } from "../bill/week/steps.ts";
import { readMarks } from "../cells/tables/marks.ts";
import type { Book } from "./book.ts";
import { type BookShop, headerSays, jobPlan } from "./job-plan.ts";
import { SCHEMA, schemaOf } from "./schema.ts";

interface ReadJob {
  /** A sentence where it cannot be planned. */
  readonly job: WeekJob | string;
  /** A sentence each, without the job's name. */
  readonly faults: readonly string[];
}

/** @param shop whose tables stand in place of the workbook's own. */
export function weekJob(name: string, book: Book, shop?: BookShop): ReadJob {
  const schema = schemaOf(book);
  if (schema > SCHEMA) return { job: `of a later release (schema ${schema}, this one reads ${SCHEMA})`, faults: [] };
  const found = jobPlan(book);
  if (!found) return { job: `no bill, whose header has ${headerSays("bill")}`, faults: [] };
  const faults = schema < SCHEMA ? [`of an earlier release (schema ${schema}); shop upgrade brings it up to date`] : [];
  if (shop === undefined && found.missing.length > 0) return { job: found.missing.join("; "), faults };
  const { marks, faults: wrong } = readMarks(found.table.matrix, "bill", found.table.top);
  const plan = shop ? inShop(found.plan, shop) : found.plan;
  const job = { name, plan, marks, above: found.table.top, isOfBefore: schema < SCHEMA };
  return { job, faults: [...faults, ...wrong] };
}

const inShop = ({ rows, shop: { job } }: BillPlan, { shop }: BookShop): BillPlan => planBill({ ...shop, job }, rows);
