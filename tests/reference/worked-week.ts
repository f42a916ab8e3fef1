/** Two jobs at one brake, added up by hand: single-machine scheduling by earliest due date, hours in the shifts. */
import type { CellMatrix } from "../../src/units/cell.ts";
import type { PublishedCell } from "./published.ts";

const MONDAY = 46_083; // 2 March 2026, a day number of Excel
const HOUR = 1 / 24;
const CALENDAR: CellMatrix = [
  ["Day", "Start", "End"],
  ...["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"].map((day) => [day, "7:00", "15:00"]),
];
const STEPS: CellMatrix = [
  ["Job", "Part", "Station", "Set-up (min)", "Total (min)", "Due"],
  ["Fair", "A1", "Brake", 60, 540, "2026-03-03 15:00"],
  ["Pier", "B1", "Brake", 0, 120, "2026-03-02 10:00"],
];

const week = (name: string, column: string, row: number, expected: number, what: string): PublishedCell => ({
  id: `worked week: ${what} (${name})`,
  call: [name, STEPS, CALENDAR, MONDAY + 7 * HOUR],
  column,
  row,
  expected,
  tolerance: 1e-8,
  source:
    "earliest due date first on one machine, which no other order beats in the greatest lateness (Jackson 1955; memory), added up by hand",
  basis: "derived",
});

export const workedWeek: readonly PublishedCell[] = [
  week("WEEK.DATES", "Finish", 1, MONDAY + 9 * HOUR, "due first: 7:00 and 2 h"),
  // 9 h behind it: 6 h to the end of Monday, 3 h of Tuesday.
  week("WEEK.DATES", "Finish", 0, MONDAY + 1 + 10 * HOUR, "due later: 9 h in what is left of the shifts"),
  week("WEEK.DATES", "Late", 0, 0, "done before it is due"),
  week("WEEK.LOAD", "Available", 0, 8, "a shift from 7:00 to 15:00"),
  week("WEEK.LOAD", "Load", 0, 8, "a day that is full"),
  week("WEEK.LOAD", "Load", 1, 3, "what is left for Tuesday"),
  week("WEEK.LOAD", "Slack", 1, 5, "a shift less its load"),
];
