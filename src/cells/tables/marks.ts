/**
 * Marks of the floor beside the lines of a bill. They are no part of what is planned for the bill itself, so that a mark
 * never plans it anew: "Done" yes or stations ("Shear; Deburr"), "Started" stations with the time at which they began
 * ("Brake 2026-05-18 06:30"), "Pinned" stations with a time.
 */
import { type Begun, type Marks, NO_MARKS, type Pin } from "../../bill/nouns/marks.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { Refusal, wrong } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { readInstant } from "../parameters/instant.ts";
import { type Columns, isWrong, readRows } from "../parameters/read-table.ts";

export const MARK_COLUMNS = {
  done: { headers: ["Done"], kind: "text", optional: true },
  started: { headers: ["Started"], kind: "text", optional: true },
  pinned: { headers: ["Pinned"], kind: "text", optional: true },
} as const satisfies Columns;

interface ReadMarks {
  /** By the row of the bill, the header being row 1. */
  readonly marks: ReadonlyMap<number, Marks>;
  /** Marks that nobody understands, a sentence each; the others count. */
  readonly faults: readonly string[];
}

const TIMED = /^(\S.*?)\s+(\d{4}-\d{2}-\d{2}(?:[T ]\d{2}:\d{2}(?::\d{2})?)?)$/;
const LOOKS_TIMED = /\d{4}-\d|\d:\d{2}|\d\/\d/;
const MOST_ITEMS = 50; // chosen: more stations than a line meets

/** @param above rows of the sheet above the header: a mark is named by the row it stands in. */
export function readMarks(bill: CellMatrix, name: string, above = 0): ReadMarks {
  const marks = new Map<number, Marks>();
  const faults: string[] = [];
  const place = (row: number) => `${name} row ${row + above}`;
  const items = (
    key: keyof typeof MARK_COLUMNS,
    take: (row: number, item: string, label: string) => Partial<Marks>,
  ) => {
    const column = MARK_COLUMNS[key];
    for (const read of readRows(bill, { cell: column } as const, place, { name, system: "in" })) {
      if (isWrong(read)) {
        faults.push(read.refusal.message);
        continue;
      }
      const label = `${place(read.row)} column "${column.headers[0]}"`;
      const found = (read.cell ?? "").split(";", MOST_ITEMS + 1).map((item) => item.trim());
      if (found.length > MOST_ITEMS) faults.push(wrong(label, `at most ${MOST_ITEMS} stations`, found.length).message);
      for (const item of found.slice(0, MOST_ITEMS).filter((each) => each !== "")) {
        const taken = refusalOr(() => take(read.row, item, label));
        if (taken instanceof Refusal) faults.push(taken.message);
        else marks.set(read.row, { ...(marks.get(read.row) ?? NO_MARKS), ...taken });
      }
    }
  };
  const of = (row: number): Marks => marks.get(row) ?? NO_MARKS;
  items("done", (row, item) => {
    if (/^(?:no|false)$/i.test(item)) return {};
    return /^(?:yes|all|x|true)$/i.test(item) ? { isDone: true } : { done: [...of(row).done, item] };
  });
  items("started", (row, item, label) => ({ started: [...of(row).started, begunOf(item, label)] }));
  items("pinned", (row, item, label) => ({ pins: [...of(row).pins, timed(item, label, "2026-05-19 07:00")] }));
  return { marks, faults };
}

const begunOf = (item: string, label: string): Begun =>
  LOOKS_TIMED.test(item) ? timed(item, label, "2026-05-18 06:30") : { station: item, at: undefined };

function timed(item: string, label: string, example: string): Pin {
  const [, station, at] = TIMED.exec(item) ?? [];
  if (station === undefined || at === undefined)
    throw wrong(label, `a station and a time, such as "Brake ${example}"`, item, "this mark is left out");
  const rule = `a station and a time, such as "Brake ${example}"`;
  return { station, at: readInstant(at, label, rule) };
}
