/** What the whole job comes to, in a few figures that stay in sight: price, work, when it is done, which lines are late. */

import { dayAndTime } from "../bill/day.ts";
import { lateSays } from "../bill/late-says.ts";
import type { Instant } from "../bill/pictures.ts";
import type { BillPlan } from "../bill/plan.ts";
import { withoutSays } from "../bill/says.ts";
import { missing } from "../units/certain.ts";
import { Refusal } from "../units/refusal.ts";
import { refusalOr } from "../units/remember.ts";
import type { KeyFigure } from "./page.ts";

export interface JobFigures {
  readonly figures: readonly KeyFigure[];
  /** Undefined where there are no dates. */
  readonly late: readonly LateLine[] | undefined;
}
interface LateLine {
  /** Of the bill, its header being row 1. */
  readonly row: number;
  readonly says: string;
}

/** @param today "2026-03-09", of the day on which this is read. */
export function jobFigures(plan: BillPlan, today: string): JobFigures {
  const money = refusalOr(() => plan.money);
  const dates = refusalOr(() => plan.dates);
  const { totals } = plan;
  const { finish, stations, late } =
    dates instanceof Refusal ? { finish: undefined, stations: [], late: undefined } : dates;
  const figures: (KeyFigure | false)[] = [
    !(money instanceof Refusal) && {
      name: "Price",
      value: [plan.shop.job.currency ?? "", inMoney(money.charges.total)].join(" ").trim(),
      beside: withoutSays(totals.unpriced),
    },
    { name: "Sheets to pull", value: whole(totals.sheets), beside: "" },
    finish !== undefined && {
      name: "Work",
      value: `${whole(stations.reduce((sum, { load }) => sum + load, 0) / SECONDS_PER_HOUR)} h`,
      beside: "",
    },
    finish !== undefined && {
      name: "Done",
      value: dayAndTime(finish),
      beside: leavesSays(plan.shop.job.due ?? missing(), late, today),
    },
  ];
  return { figures: figures.filter((figure) => figure !== false), late: lateLines(plan) };
}

/** Lines of the bill that are late; undefined where there are no dates. */
export function lateLines(plan: BillPlan): LateLine[] | undefined {
  const dates = refusalOr(() => plan.dates);
  if (dates instanceof Refusal) return undefined;
  return plan.quoted.flatMap((line) => {
    const found = dates.lines.get(line.plan);
    return found?.isLate ? [{ row: line.row, says: lateSays(found) }] : [];
  });
}

/**
 * Whether the time the job must leave by can be kept, in one sentence: a time that is past is never kept, whatever the hours say.
 * @param today "2026-03-09", of the day on which this is read.
 */
export function leavesSays(due: Instant, late: number | undefined, today: string): string {
  if (dayAndTime(due) < today) return "is past: type the date that holds";
  if (late === undefined) return "";
  return late === 0 ? "every line is in time" : `late: ${late} ${late === 1 ? "line" : "lines"}`;
}

const SECONDS_PER_HOUR = 3600; // by definition
const whole = (value: number): string => Math.round(value).toLocaleString("en-US");
const inMoney = (value: number): string =>
  value.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
