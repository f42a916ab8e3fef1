import type { Instant } from "../../calc/schedule/calendar.ts";
import type { BillLine } from "../nouns/line.ts";
import type { Job } from "../nouns/shop.ts";

const fold = (area: string): string => area.trim().toLowerCase();

/** When a line must leave: by its own date, else by its area's, else with the job. */
export const dueOf = ({ due, area }: Pick<BillLine, "due" | "area">, job: Pick<Job, "due" | "areaDues">) =>
  due ?? job.areaDues.find((each) => fold(each.area) === fold(area))?.due ?? job.due;

/** Areas with a date but no line: a misspelled one would leave its lines to the job's date. */
export const unusedAreas = (
  lines: readonly Pick<BillLine, "area">[],
  { areaDues }: Pick<Job, "areaDues">,
): readonly { readonly area: string; readonly due: Instant }[] =>
  areaDues.filter(({ area }) => !lines.some((line) => fold(line.area) === fold(area)));
