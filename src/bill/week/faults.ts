/** What is wrong with what the week was given. It is named, and the rest is planned. */
import type { Instant } from "../../calc/schedule/calendar.ts";
import type { TableName } from "../nouns/shop.ts";

export type WeekFault =
  | { readonly kind: "unplanned"; readonly job: string; readonly says: string }
  | { readonly kind: "not quoted"; readonly job: string; readonly line: string }
  | { readonly kind: "untimed"; readonly job: string; readonly line: string; readonly says: string }
  | {
      readonly kind: "unknown mark";
      readonly job: string;
      readonly line: string;
      readonly mark: string;
      readonly nearest: string;
    }
  | { readonly kind: "marked twice"; readonly job: string; readonly line: string; readonly mark: string }
  | { readonly kind: "no shift"; readonly station: string; readonly job: string; readonly line: string }
  | { readonly kind: "no calendar"; readonly job: string }
  | { readonly kind: "no due"; readonly job: string }
  | { readonly kind: "due passed"; readonly job: string; readonly due: Instant }
  | { readonly kind: "other shop"; readonly job: string; readonly than: string; readonly tables: readonly TableName[] };

/** One sentence a fault; @param day writes an instant. */
export function faultSays(fault: WeekFault, day: (at: Instant) => string): string {
  switch (fault.kind) {
    case "unplanned":
      return `${fault.job}: not planned: ${fault.says}`;
    case "not quoted":
      return `${fault.job}, ${fault.line}: not planned, it has no quote`;
    case "untimed":
      return `${fault.job}, ${fault.line}: not planned, no time: ${fault.says}`;
    case "unknown mark":
      return `${fault.job}, ${fault.line}: marked at "${fault.mark}", where it has no work; nearest is "${fault.nearest}"`;
    case "marked twice":
      return `${fault.job}, ${fault.line}: marked twice at "${fault.mark}"; taken as done`;
    case "no shift":
      return `${fault.job}, ${fault.line}: not planned, ${fault.station} has no shift in the calendar`;
    case "no calendar":
      return `${fault.job}: its calendar has no shift; it is planned in the shop's`;
    case "no due":
      return `${fault.job}: no time it must leave by; it goes behind the jobs that have one`;
    case "due passed":
      return `${fault.job}: due ${day(fault.due)}, which is past; its hours count as late`;
    case "other shop":
      return `${fault.job}: ${fault.tables.join(", ")} differ from those of ${fault.than}, which are used for stations and shifts`;
  }
}
