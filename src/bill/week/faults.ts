/** What is wrong with what the week was given. It is named, and the rest is planned. */
import type { Instant } from "../../calc/schedule/calendar.ts";
import type { TableName } from "../nouns/shop.ts";
import { withoutSays } from "../says.ts";

export type WeekFault =
  | { readonly kind: "unplanned"; readonly job: string; readonly says: string }
  | { readonly kind: "not quoted"; readonly job: string; readonly lines: readonly string[]; readonly says: string }
  | { readonly kind: "untimed"; readonly job: string; readonly line: string; readonly says: string }
  | (MarkFault & { readonly kind: "unknown mark"; readonly nearest: string })
  | (MarkFault & { readonly kind: "other machine"; readonly planned: string })
  | (MarkFault & { readonly kind: "marked twice" | "begun before" | "begun untimed" | "begun later" | "overdue" })
  | (MarkFault & { readonly kind: "pin passed" | "pin closed" | "pin early" | "pin missed"; readonly at: Instant })
  | { readonly kind: "no shift"; readonly station: string; readonly job: string; readonly line: string }
  | { readonly kind: "no calendar"; readonly job: string }
  | { readonly kind: "no due"; readonly job: string }
  | { readonly kind: "same bill"; readonly job: string; readonly than: string }
  | (MarkFault & { readonly kind: "begun together" | "begun short"; readonly beside: string; readonly places: number })
  | {
      readonly kind: "people";
      readonly job: string;
      readonly lines: readonly string[];
      readonly station: string;
      readonly needed: number;
      readonly there: number;
    }
  | { readonly kind: "due passed"; readonly job: string; readonly due: Instant }
  | { readonly kind: "other shop"; readonly job: string; readonly than: string; readonly tables: readonly TableName[] };

/** A mark of the floor: the column and the row of the sheet it stands in, and the station as it is written there. */
export interface MarkFault {
  readonly job: string;
  readonly line: string;
  readonly row: number;
  readonly column: "Done" | "Started" | "Pinned";
  readonly mark: string;
}

const inRow = ({ job, line, row, column }: MarkFault): string => `${job}, ${line} (row ${row}, column "${column}")`;

/** How many lines of a job the week is without; Infinity: all of it. */
export const linesWithout = (faults: readonly WeekFault[], name: string): number =>
  faults.reduce((sum, fault) => {
    if (fault.job !== name) return sum;
    if (fault.kind === "unplanned") return Infinity;
    return (
      sum +
      (fault.kind === "not quoted" ? fault.lines.length : +(fault.kind === "untimed" || fault.kind === "no shift"))
    );
  }, 0);

interface Named {
  readonly faults: readonly WeekFault[];
  readonly jobs: readonly { readonly name: string }[];
}

/** "without 3 lines", of all jobs where none is named; "" where none is missing. */
export function weekWithoutSays({ faults, jobs }: Named, only?: string): string {
  const names = only === undefined ? jobs.map(({ name }) => name) : [only];
  const counts = names.map((name) => linesWithout(faults, name));
  const lines = withoutSays(counts.reduce((sum, count) => sum + (count === Infinity ? 0 : count), 0));
  if (only !== undefined) return counts.includes(Infinity) ? "not planned" : lines;
  // Jobs without a row are those whose files could not be read.
  const whole = faults.flatMap((fault) => (fault.kind === "unplanned" ? [fault.job] : []));
  if (whole.length === 0) return lines;
  const missing = `without ${whole.length} ${whole.length === 1 ? "job" : "jobs"} (${someOf(whole)})`;
  return [lines, missing].filter((words) => words !== "").join(", ");
}

/** Why nothing of a job stands in the week. */
export function emptySays({ faults }: Pick<Named, "faults">, name: string): string {
  const copy = faults.find((fault) => fault.kind === "same bill" && fault.job === name);
  if (copy?.kind === "same bill") return `same as ${copy.than}`;
  return linesWithout(faults, name) > 0 ? "nothing planned" : "nothing open";
}

const MOST_NAMED = 6; // chosen
const someOf = (names: readonly string[]): string =>
  names.length <= MOST_NAMED
    ? names.join(", ")
    : `${names.slice(0, MOST_NAMED).join(", ")} and ${names.length - MOST_NAMED} more`;

/** One sentence a fault; @param day writes an instant. */
export function faultSays(fault: WeekFault, day: (at: Instant) => string): string {
  switch (fault.kind) {
    case "unplanned":
      return `${fault.job}: not planned: ${fault.says}`;
    case "not quoted":
      return `${fault.job}, ${someOf(fault.lines)}: not planned, ${fault.says}`;
    case "untimed":
      return `${fault.job}, ${fault.line}: not planned, no time: ${fault.says}`;
    case "unknown mark":
      if (fault.mark.includes(",")) return `${inRow(fault)}: "${fault.mark}" is left out; separate stations by ";"`;
      return `${inRow(fault)}: "${fault.mark}" is left out, the line has no work there; nearest is "${fault.nearest}"`;
    case "marked twice":
      return `${inRow(fault)}: "${fault.mark}" is marked twice; what is done counts as done, take the other mark away`;
    case "other machine":
      return `${inRow(fault)}: "${fault.mark}" is taken for ${fault.planned}, where the line is planned; its times are those of ${fault.planned}`;
    case "begun before":
      return `${inRow(fault)}: "${fault.mark}" counts as done, since work that comes after it has begun or is done; mark it Done, or take away the mark after it`;
    case "begun untimed":
      return `${inRow(fault)}: "${fault.mark}" has no time, so its whole run is planned from now; write when it began, as in "${fault.mark} 2026-05-18 06:30"`;
    case "begun later":
      return `${inRow(fault)}: "${fault.mark}" begins later than now; taken as begun now, correct the time`;
    case "overdue":
      return `${inRow(fault)}: the hours of "${fault.mark}" are over; it is planned as done now, mark it Done or correct the time`;
    case "pin passed":
      return `${inRow(fault)}: "${fault.mark}" is pinned to ${day(fault.at)}, which is past; planned without the pin, give a later time`;
    case "pin closed":
      return `${inRow(fault)}: "${fault.mark}" is pinned outside its shifts; taken as pinned to the next working time, ${day(fault.at)}`;
    case "pin early":
      return `${inRow(fault)}: "${fault.mark}" is pinned before the work can begin, ${day(fault.at)}; planned without the pin`;
    case "pin missed":
      return `${inRow(fault)}: "${fault.mark}" cannot keep its pin; it is planned from ${day(fault.at)}, pin it to then or later`;
    case "no shift":
      return `${fault.job}, ${fault.line}: not planned, ${fault.station} has no shift in the calendar`;
    case "no calendar":
      return `${fault.job}: its calendar has no shift; it is planned in the shop's`;
    case "no due":
      return `${fault.job}: no time to leave by; it goes after the jobs that have one`;
    case "people":
      return `${fault.job}, ${someOf(fault.lines)}: ${fault.station} takes ${fault.needed} people and the calendar never has more than ${fault.there} there; planned with ${fault.there}`;
    case "due passed":
      return `${fault.job}: due ${day(fault.due)}, which is past; its hours count as late`;
    case "other shop": {
      const words =
        fault.tables.join() === "calendar" ? ["differs", "that", "which is"] : ["differ", "those", "which are"];
      const [differ, those, which] = words;
      return `${fault.job}: ${fault.tables.join(", ")} ${differ} from ${those} of ${fault.than}, ${which} used for stations and shifts; its times stay its own; with --shop WORKBOOK all jobs go by one shop`;
    }
    case "same bill":
      return `${fault.job}: the same lines and dates as ${fault.than}; planned once, with the marks of ${fault.than}; if it is another order, give it its own date`;
    case "begun together":
      return `${inRow(fault)}: "${fault.mark}" has begun beside ${fault.beside}, and ${fault.places} can be there at once; one is planned behind the other, correct a mark`;
    case "begun short":
      return `${inRow(fault)}: "${fault.mark}" has begun beside ${fault.beside}, with more people than the ${fault.places} that the calendar has there; one is planned behind the other, correct a mark`;
  }
}
