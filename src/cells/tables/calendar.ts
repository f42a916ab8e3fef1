/**
 * When the shop works: one row a shift (Day a weekday, Start, End) and one a day that differs (Day a date; no Start and
 * End for a holiday). With a Station the row is for that station alone, and its own rows come before the general ones.
 */
import type { CalendarRow } from "../../bill/nouns/calendar.ts";
import { SECONDS_PER_DAY } from "../../calc/schedule/calendar.ts";
import { type CellValue, isBlank } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import { readInstant } from "../parameters/instant.ts";
import { type Columns, type Row, whole } from "../parameters/read-table.ts";
import { shopTable } from "../parameters/shop-table.ts";
import type { ReadContext } from "../record/record.ts";

const CALENDAR_COLUMNS = {
  day: { headers: ["Day", "Date"], kind: "cell" },
  start: { headers: ["Start"], kind: "cell", optional: true },
  end: { headers: ["End"], kind: "cell", optional: true },
  station: { headers: ["Station"], kind: "text", optional: true },
  people: { headers: ["People"], kind: "number", optional: true, rule: whole(1, 1000) },
} as const satisfies Columns;

const DAYS = ["sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"];

function asRow(row: Row<typeof CALENDAR_COLUMNS>, name: string, _context: ReadContext): CalendarRow {
  const label = (column: string) => `${name} row ${row.row} column "${column}"`;
  const [start, end] = [row.start ?? null, row.end ?? null];
  if (isBlank(start) !== isBlank(end))
    throw wrong(
      label(isBlank(start) ? "Start" : "End"),
      "given where the other one is; both blank for a holiday",
      null,
    );
  const from = isBlank(start) ? undefined : timeOfDay(start, label("Start"));
  const to = isBlank(end) ? undefined : timeOfDay(end, label("End"));
  return {
    day: dayOf(row.day, label("Day")),
    // An end at or before the start is on the next day: a night shift, or midnight.
    shift: from === undefined || to === undefined ? undefined : { from, to: to <= from ? to + SECONDS_PER_DAY : to },
    station: row.station,
    ...(row.people === undefined ? {} : { people: row.people }),
  };
}

function dayOf(given: CellValue, label: string): CalendarRow["day"] {
  const word = typeof given === "string" ? given.trim().toLowerCase() : "";
  const index = word.length >= 3 ? DAYS.findIndex((day) => day === word || day.slice(0, 3) === word) : -1;
  if (index >= 0) return { weekday: index };
  const at = readInstant(given, label, 'a weekday such as "Monday", or a date');
  return { date: Math.floor(at / SECONDS_PER_DAY) };
}

const CLOCK = /^(\d{1,2}):(\d{2})(?::(\d{2}))?\s*(am|pm)?$/i;

function timeOfDay(given: CellValue, label: string): number {
  const rule = 'a time of day such as 7:00 or "15:30"';
  if (typeof given === "number" && given >= 0 && given <= 1) return Math.round(given * SECONDS_PER_DAY);
  const match = typeof given === "string" ? CLOCK.exec(given.trim()) : null;
  if (!match) throw wrong(label, rule, given);
  const [, hour, minute, second = "0", half] = match;
  const noon = half?.toLowerCase();
  const hours = noon ? (Number(hour) % 12) + (noon === "pm" ? 12 : 0) : Number(hour);
  const total = hours * 3600 + Number(minute) * 60 + Number(second);
  if (Number(minute) > 59 || Number(second) > 59 || total > SECONDS_PER_DAY) throw wrong(label, rule, given);
  return total;
}

export const calendar = () =>
  shopTable(
    "calendar",
    "Shifts of the weekdays, and dates that differ; a date without Start and End is a holiday",
    CALENDAR_COLUMNS,
    asRow,
  );
