/** Open work of several jobs as a worksheet has it: one row a part and station, as BILL.TIMES answers them, with the job. */
import type { OpenJob, OpenStep } from "../../bill/week/open-step.ts";
import { orderOfWork } from "../../bill/week/order-of-work.ts";
import type { Instant } from "../../calc/schedule/calendar.ts";
import { type CellValue, isBlank } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import { readDue, readInstant } from "../parameters/instant.ts";
import { type Columns, notNegative, oneOf, type Row, whole } from "../parameters/read-table.ts";
import { shopTable } from "../parameters/shop-table.ts";

const YES = oneOf("yes", "no");
const STEP_COLUMNS = {
  job: { headers: ["Job"], kind: "text" },
  part: { headers: ["Part"], kind: "text" },
  station: { headers: ["Station"], kind: "text" },
  setUp: { headers: ["Set-up"], kind: "seconds", optional: true, rule: notNegative },
  total: { headers: ["Total"], kind: "seconds", optional: true, rule: notNegative },
  vendorDays: { headers: ["Vendor days"], kind: "number", optional: true, rule: whole(0, 1000) },
  people: { headers: ["People"], kind: "number", optional: true, rule: whole(1, 20) },
  setFor: { headers: ["Set for"], kind: "text", optional: true },
  atOnce: { headers: ["At once"], kind: "number", optional: true, rule: whole(1, 50) },
  due: { headers: ["Due"], kind: "cell", optional: true },
  rush: { headers: ["Rush"], kind: "text", optional: true, rule: YES },
  done: { headers: ["Done"], kind: "text", optional: true, rule: YES },
  started: { headers: ["Started"], kind: "cell", optional: true },
} as const satisfies Columns;

export interface WeekRow extends Omit<OpenStep, "job" | "after"> {
  readonly job: string;
  readonly isRush: boolean;
  readonly isDone: boolean;
}

const isYes = (word: string | undefined): boolean => word?.toLowerCase() === "yes";

function asRow(row: Row<typeof STEP_COLUMNS>, name: string): WeekRow {
  const label = (column: string) => `${name} row ${row.row} column "${column}"`;
  const { total, vendorDays, setUp = 0 } = row;
  if (total === undefined && vendorDays === undefined)
    throw wrong(label("Total"), 'given, or "Vendor days" where a vendor does it', null);
  if (total !== undefined && setUp > total)
    throw wrong(label("Set-up"), "no more than Total, which holds it", setUp / 60);
  const isShared = row.setFor !== undefined;
  return {
    job: row.job,
    isRush: isYes(row.rush),
    isDone: isYes(row.done),
    line: { row: row.row, part: row.part },
    station: { name: row.station, atOnce: row.atOnce },
    machine: row.station,
    work: total === undefined ? undefined : { people: row.people ?? 1 },
    lot: 1,
    lots: 1,
    pieces: 1,
    run: total === undefined ? (vendorDays ?? 0) : total - setUp,
    lineSetUp: isShared || total === undefined ? 0 : setUp,
    change: isShared && total !== undefined ? setUp : 0,
    setFor: row.setFor ?? "",
    due: isBlank(row.due as CellValue) ? undefined : readDue(row.due as CellValue, label("Due")),
    ...startedOf(row.started, label("Started")),
    pin: undefined,
  };
}

function startedOf(given: CellValue | undefined, label: string): Pick<OpenStep, "isStarted" | "begun"> {
  const word = isBlank(given ?? null) ? "no" : String(given).trim().toLowerCase();
  if (word === "yes" || word === "no") return { isStarted: word === "yes", begun: undefined };
  const rule = 'yes, no, or when it began, such as "2026-05-18 06:30"';
  return { isStarted: true, begun: readInstant(given ?? null, label, rule) };
}

export const weekSteps = () =>
  shopTable(
    "step table",
    "Open work, one row a job, part and station, as BILL.TIMES answers it; equal words in Set for share a set-up",
    STEP_COLUMNS,
    asRow,
  );

/**
 * Rows of one job and part follow each other as the work does, whatever their order in the table; what is done is left
 * out. A part that is due on several dates is made once for each of them.
 */
export function openSteps(rows: readonly WeekRow[]): { readonly jobs: readonly OpenJob[]; readonly steps: OpenStep[] } {
  const names = [...new Set(rows.map(({ job }) => job))];
  const jobs = names.map((name): OpenJob => {
    const own = rows.filter(({ job }) => job === name);
    return { name, isRush: own.some(({ isRush }) => isRush), start: undefined };
  });
  const steps: OpenStep[] = [];
  const parts = new Map<string, WeekRow[]>();
  const partOf = ({ job, line }: WeekRow) => `${job} | ${line.part}`;
  const dues = new Map<string, Set<Instant>>();
  for (const row of rows)
    if (row.due !== undefined) dues.set(partOf(row), new Set([...(dues.get(partOf(row)) ?? []), row.due]));
  for (const row of rows) {
    const dated = [...(dues.get(partOf(row)) ?? [])];
    // The date may stand beside one of its operations alone.
    const due = row.due ?? (dated.length === 1 ? dated[0] : undefined);
    const key = `${partOf(row)} | ${due}`;
    parts.set(key, [...(parts.get(key) ?? []), { ...row, due }]);
  }
  for (const own of parts.values()) {
    const inOrder = [...own].sort((a, b) => orderOfWork(a) - orderOfWork(b));
    const last = inOrder.findLastIndex(({ isDone, isStarted }) => isDone || isStarted);
    const from = inOrder[last]?.isDone ? last + 1 : Math.max(last, 0);
    inOrder.slice(from).forEach((row, i) => {
      const { job, isRush: _, isDone: __, ...step } = row;
      steps.push({ ...step, job: names.indexOf(job), after: i === 0 ? [] : [steps.length - 1] });
    });
  }
  return { jobs, steps };
}
