/** What was understood of a part list, and what was not: the map of its columns, then every doubt with its place. */

import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";
import { nearestIs } from "../../units/nearest.ts";
import { showGiven } from "../../units/show.ts";
import type { MappedColumn } from "./column-map.ts";
import type { Fault } from "./doubt.ts";
import { BILL_KEYS, foldTitle, titleOf, wholeOf } from "./heading-words.ts";
import type { PartList } from "./part-list.ts";

const TITLE_WIDTH = 22;
const READ_WIDTH = 16;
const UNIT_NAMES: Readonly<Record<string, string>> = { in: "inches", mm: "mm", ga: "gauges" };

/** @param all every column; else only those whose heading is not the bill's own word. */
export function mapWords({ columns, everyLine, notation, plainUnit, leftOut }: PartList, all: boolean): string[] {
  const shown = columns.filter(
    ({ title, read, why }) =>
      (title !== "" || read) && (all || !read || why || foldTitle(titleOf(read.key)) !== foldTitle(withoutUnit(title))),
  );
  const words = shown.map((column) => columnWords(column, plainUnit));
  for (const [title, value] of everyLine) words.push(`   every line: ${title} ${value}`);
  if (all && notation.decimal) words.push(`   decimals have a ${notation.decimal === "." ? "point" : "comma"}`);
  for (const { row, words: what } of leftOut) words.push(`   row ${row} is left out: ${what}`);
  return words;
}

const withoutUnit = (title: string): string => title.replace(/[([].*$/, "");

/** One row of the map. */
export function columnWords({ letter, title, read, why }: MappedColumn, plainUnit: "in" | "mm"): string {
  const head = `${letter.padEnd(3)}${title.slice(0, TITLE_WIDTH).padEnd(TITLE_WIDTH)}  `;
  if (!read) return `${head}not read${why ? `: ${why}` : nearTitle(title)}`;
  const { kind } = BILL_COLUMNS[wholeOf(read.key)];
  const isLength = kind === "length" || kind === "lengths" || kind === "thickness";
  const unit = read.unit ? (UNIT_NAMES[read.unit] ?? read.unit) : `${UNIT_NAMES[plainUnit]}, the heading names no unit`;
  const angle = read.unit === "included" ? "180 less the included angle" : "";
  const words = `${head}${titleOf(read.key).padEnd(READ_WIDTH)}${isLength ? unit : angle}`.trimEnd();
  return why ? `${words}; ${why}` : words;
}

function nearTitle(title: string): string {
  const near = nearestIs(withoutUnit(title).trim(), BILL_KEYS.map(titleOf));
  return near === undefined ? "" : `; ${near}`;
}

/** "3 cells of 2 lines are not understood: 2 unit in doubt, 1 unknown material", then each with row and column. */
export function faultWords(faults: readonly Fault[]): string[] {
  if (faults.length === 0) return [];
  const counts = new Map<string, number>();
  for (const { kind } of faults) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const lines = new Set(faults.map(({ row }) => row)).size;
  const kinds = [...counts].sort((a, b) => b[1] - a[1]).map(([kind, count]) => `${count} ${kind}`);
  const [cells, are] = faults.length === 1 ? ["1 cell", "is"] : [`${faults.length} cells`, "are"];
  return [
    `${cells} of ${lines} ${lines === 1 ? "line" : "lines"} ${are} not understood: ${kinds.join(", ")}`,
    ...grouped(faults).flatMap((same) => (same.length < SAME_FROM ? same.map(placed) : [together(same)])),
    ...materialsWords(faults),
  ];
}

/** How a name of theirs is said to be a grade of ours, once for the whole list. */
function materialsWords(faults: readonly Fault[]): string[] {
  const names = [...new Set(faults.flatMap(({ kind, given }) => (kind === "unknown material" ? [given] : [])))];
  const pairs = names.map((name) => `${name}=...`).join("; ");
  return names.length === 0 ? [] : [`   the grade for the whole list: --materials "${pairs}"`];
}

/** The same cause on so many cells is said once. */
const SAME_FROM = 3;
const MOST_PLACES = 12;

function grouped(faults: readonly Fault[]): Fault[][] {
  const groups = new Map<string, Fault[]>();
  for (const fault of faults) {
    const cause = fault.words + (fault.kind === "unknown material" ? fault.given : "");
    groups.set(cause, [...(groups.get(cause) ?? []), fault]);
  }
  return [...groups.values()];
}

const placed = ({ row, column, title, given, words }: Fault): string =>
  `   row ${row}${column === "" ? "" : `, ${column}`}${title === "" ? "" : ` ${title}`}${given === "" ? "" : ` ${showGiven(given)}`}: ${words}`;

function together(same: readonly Fault[]): string {
  const places = same.slice(0, MOST_PLACES).map(({ column, row }) => `${column}${row}`);
  const more = same.length > MOST_PLACES ? ` and ${same.length - MOST_PLACES} more` : "";
  const [{ given, kind, words }] = same as [Fault];
  return `   ${same.length} cells (${places.join(", ")}${more})${kind === "unknown material" ? ` ${showGiven(given)}` : ""}: ${words}`;
}
