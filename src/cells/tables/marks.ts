/**
 * Marks of the floor beside the lines of a bill. They are no part of what is planned for the bill itself, so that a mark
 * never plans it anew: "Done" yes or stations ("Shear; Deburr"), "Started" stations, "Pinned" stations with a time.
 */
import type { Marks, Pin } from "../../bill/nouns/marks.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { wrong } from "../../units/refusal.ts";
import { readInstant } from "../parameters/instant.ts";
import { type Columns, readTable } from "../parameters/read-table.ts";

export const MARK_COLUMNS = {
  done: { headers: ["Done"], kind: "text", optional: true },
  started: { headers: ["Started"], kind: "text", optional: true },
  pinned: { headers: ["Pinned"], kind: "text", optional: true },
} as const satisfies Columns;

const PIN = /^(\S.*?)\s+(\d{4}-\d{2}-\d{2}(?:[T ]\d{2}:\d{2}(?::\d{2})?)?)$/;
const LONGEST_LIST = 500;

/** By the row of the bill, the header being row 1. */
export function readMarks(bill: CellMatrix, name: string): ReadonlyMap<number, Marks> {
  const found = new Map<number, Marks>();
  for (const { row, done, started, pinned } of readTable(bill, MARK_COLUMNS, name, "in")) {
    const isDone = /^(?:yes|all|x)$/i.test(done ?? "");
    const marks: Marks = {
      isDone,
      done: isDone ? [] : listed(done),
      started: listed(started),
      pins: listed(pinned).map((item) => pinOf(item, `${name} line ${row - 1} column "Pinned"`)),
    };
    if (isDone || [marks.done, marks.started, marks.pins].some(({ length }) => length > 0)) found.set(row, marks);
  }
  return found;
}

const listed = (text: string | undefined): string[] =>
  (text ?? "")
    .slice(0, LONGEST_LIST)
    .split(";")
    .map((item) => item.trim())
    .filter((item) => item !== "");

function pinOf(item: string, label: string): Pin {
  const [, station, at] = PIN.exec(item) ?? [];
  if (station === undefined || at === undefined)
    throw wrong(label, 'a station and a time, such as "Brake 2026-05-19 07:00"', item);
  return { station, at: readInstant(at, label) };
}
