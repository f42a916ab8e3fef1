/** The job's own table: one row an item, name and value. What is not there is not known; nothing has a default. */
import { type Job, NO_JOB } from "../../bill/nouns/shop.ts";
import { PROFIT_BASES } from "../../calc/cost/price-for-margin.ts";
import { type Instant, instant, SECONDS_PER_DAY } from "../../calc/schedule/calendar.ts";
import { type CellValue, isBlank } from "../../units/cell.ts";
import { nearestIs } from "../../units/nearest.ts";
import { wrong } from "../../units/refusal.ts";
import { readChoice } from "../parameters/choice.ts";
import { readDue, readInstant } from "../parameters/instant.ts";
import { readNumber } from "../parameters/number.ts";
import { type Columns, readTable } from "../parameters/read-table.ts";
import { remembered } from "../parameters/remembered.ts";

const JOB_COLUMNS = {
  item: { headers: ["Job", "Job item"], kind: "text" },
  value: { headers: ["Entry", "Value"], kind: "cell", optional: "cell" },
} as const satisfies Columns;

/** What its rows are called, the first name is the one we write. Compared without case, blanks and punctuation. */
export const JOB_ITEMS = {
  name: ["Job name", "Job"],
  customer: ["Customer", "For"],
  quote: ["Quote", "Quote number"],
  day: ["Date of the quote"],
  valid: ["Valid for (days)", "Valid for"],
  start: ["Work can begin", "Start"],
  due: ["Must leave by", "Due", "Leaves by", "Due date"],
  areas: ["Areas, first needed first", "Areas"],
  pace: ["Pace"],
  profit: ["Profit as"],
  currency: ["Currency"],
} as const;
type JobItem = keyof typeof JOB_ITEMS;

/** "Due Deck" or "Must leave by: Deck": an area that leaves at a time of its own. */
const AREA_DUE = new RegExp(`^\\s*(?:${JOB_ITEMS.due.join("|")})\\b[\\s:,]*(.*?)\\s*$`, "i");

/** The area an item gives a time of its own; "" where it is no such item. */
export const areaOfItem = (item: string): string => AREA_DUE.exec(item)?.[1] ?? "";

function areaDues(rows: readonly { row: number; item: string; value: unknown }[], name: string): Job["areaDues"] {
  const found = new Map<string, { area: string; due: Instant }>();
  for (const { row, item, value } of rows) {
    const area = areaOfItem(item);
    if (area === "" || isBlank(value as CellValue)) continue;
    const label = `${name} row ${row} "${item}"`;
    if (found.has(area.toLowerCase())) throw wrong(label, "one time for each area", item);
    found.set(area.toLowerCase(), { area, due: readDue(value as CellValue, label) });
  }
  return [...found.values()];
}

const PACES = ["normal", "rush"] as const;
const fold = (text: string): string => text.toLowerCase().replace(/[^a-z]+/g, "");
const NAMES: readonly string[] = Object.values(JOB_ITEMS).flat();

/** A misspelled row would silently drop its entry, and so would the time of an area that does not exist. */
function checkItems(rows: readonly { row: number; item: string; value: unknown }[], name: string, areas: Job["areas"]) {
  for (const { row, item, value } of rows) {
    if (isBlank(value as CellValue) || NAMES.some((each) => fold(each) === fold(item))) continue;
    const area = areaOfItem(item);
    if (area === "")
      throw wrong(
        `${name} row ${row}`,
        'an entry of the job by its name, such as "Customer", "Work can begin" or "Must leave by"',
        item,
        nearestIs(item, NAMES),
      );
    if (areas.length > 0 && !areas.some((each) => each.toLowerCase() === area.toLowerCase()))
      throw wrong(
        `${name} row ${row} "${item}"`,
        `for an area of the job: ${areas.join("; ")}`,
        area,
        nearestIs(area, areas),
      );
  }
}

export const readJob = remembered((given, name, { system }): Job => {
  const rows = readTable(given, JOB_COLUMNS, name, system);
  const find = (item: JobItem) => {
    const names: readonly string[] = JOB_ITEMS[item].map(fold);
    const row = rows.find((each) => names.includes(fold(each.item)) && !isBlank(each.value));
    return row && { value: row.value as CellValue, label: `${name} row ${row.row} "${row.item}"` };
  };
  const text = (item: JobItem) => String(find(item)?.value ?? "");
  const at = (item: JobItem, reads = readInstant) => {
    const found = find(item);
    return found && reads(found.value, found.label);
  };
  const days = (item: JobItem) => {
    const found = find(item);
    return found && readNumber(found.value, found.label, { from: 1 });
  };
  const choice = <T extends string>(item: JobItem, words: readonly T[]): T | undefined => {
    const found = find(item);
    return found && readChoice(found.value, found.label, words);
  };
  const [day, valid] = [at("day"), days("valid")];
  const areas = text("areas")
    .split(";")
    .map((area) => area.trim())
    .filter((area) => area !== "");
  checkItems(rows, name, areas);
  return {
    name: text("name"),
    customer: text("customer"),
    quote: text("quote"),
    currency: text("currency").trim() || undefined,
    quoteDay: day,
    goodUntil: day === undefined || valid === undefined ? undefined : instant(day + valid * SECONDS_PER_DAY),
    start: at("start"),
    due: at("due", readDue),
    areaDues: areaDues(rows, name),
    areas,
    isRush: choice("pace", PACES) === "rush",
    profit: choice("profit", PROFIT_BASES) ?? NO_JOB.profit,
  };
});
