import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { firstOf, itemAt, topLeft } from "../../units/certain.ts";
import { toBoolean } from "../evaluate/coerce.ts";
import { sameText } from "../evaluate/compare.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import { toMatrix } from "../evaluate/reference.ts";
import { DIV0, NUM, VALUE, type Value } from "../evaluate/value.ts";
import { criterion, type Test } from "./criteria.ts";
import { defineIn, fail } from "./define.ts";
import { sumOf, varianceOf } from "./statistics.ts";

const heading = (cell: CellValue): string => (cell === null || cell instanceof CellError ? "" : String(cell));

const columnOf = (headings: readonly CellValue[], name: string): number =>
  headings.findIndex((h) => sameText(heading(h).trim(), name.trim()));

/** Plain text in a criteria range means "begins with", unlike in COUNTIF. */
function databaseTest(wanted: CellValue): Test {
  if (typeof wanted === "string" && wanted !== "" && !/^[=<>]/.test(wanted)) {
    const number = criterion(wanted);
    const begins = criterion(`${wanted}*`);
    return (value) => number(value) || begins(value);
  }
  return criterion(wanted);
}

/** Rows of a criteria range: within a row every condition holds, any row will do. */
function rowTests(criteria: CellMatrix, headings: readonly CellValue[]): ((row: readonly CellValue[]) => boolean)[] {
  const [titles = [], ...lines] = criteria;
  return lines.map((line) => {
    const tests = line.flatMap((wanted, i) => {
      if (wanted === null || wanted === "") return [];
      const column = columnOf(headings, heading(titles[i] ?? null));
      // A heading that is no field belongs to a computed criterion: its value decides by itself.
      if (column < 0) {
        const truth = toBoolean(wanted);
        return [() => truth === true];
      }
      const test = databaseTest(wanted);
      return [(row: readonly CellValue[]) => test(row[column] ?? null)];
    });
    return (row) => tests.every((test) => test(row));
  });
}

/** Functions that may go without a field, and then count the rows (Microsoft's description, memory). */
const COUNTING = ["DCOUNT", "DCOUNTA"];

/** Values of the field in the rows that meet the criteria. */
function selected(name: string, frame: Frame, database: Value, field: Value, criteria: Value): CellValue[] {
  if (database instanceof CellError) fail(database);
  const [headings = [], ...rows] = toMatrix(database, frame);
  const tests = rowTests(toMatrix(criteria, frame), headings);
  const chosen = rows.filter((row) => tests.some((test) => test(row)));
  const isCounting = COUNTING.includes(name);
  if (field === undefined) return isCounting ? chosen.map(() => 1) : fail(VALUE);
  const asked = topLeft(toMatrix(field, frame));
  if (asked instanceof CellError) fail(asked);
  const column = typeof asked === "string" ? columnOf(headings, asked) : Math.trunc(Number(asked)) - 1;
  // LibreOffice counts the rows, Microsoft says nothing of it.
  if (column === -1 && typeof asked !== "string" && isCounting) keep("unknown-function", `${name} of field 0`);
  if (column < 0 || column >= headings.length) fail(VALUE);
  return chosen.map((row) => itemAt(row, column));
}

const database = (name: string, compute: (values: CellValue[], numbers: number[]) => CellValue): WorksheetFunction =>
  defineIn(name, "array array array", (frame, data, field, criteria) => {
    const values = selected(name, frame, data, field, criteria);
    const error = values.find((v) => v instanceof CellError);
    if (error && !COUNTING.includes(name)) return error;
    return compute(
      values,
      values.filter((v) => typeof v === "number"),
    );
  });

export const databases: readonly WorksheetFunction[] = [
  database("DSUM", (_, n) => sumOf(n)),
  database("DCOUNT", (_, n) => n.length),
  database("DCOUNTA", (v) => v.filter((x) => x !== null).length),
  database("DAVERAGE", (_, n) => (n.length ? sumOf(n) / n.length : DIV0)),
  database("DMAX", (_, n) => n.reduce((a, b) => Math.max(a, b), n[0] ?? 0)),
  database("DMIN", (_, n) => n.reduce((a, b) => Math.min(a, b), n[0] ?? 0)),
  database("DPRODUCT", (_, n) => (n.length ? n.reduce((a, b) => a * b, 1) : 0)),
  database("DGET", (v) => (v.length === 0 ? VALUE : v.length > 1 ? NUM : firstOf(v))),
  database("DVAR", (_, n) => varianceOf(n, false)),
  database("DVARP", (_, n) => varianceOf(n, true)),
  database("DSTDEV", (_, n) => Math.sqrt(varianceOf(n, false))),
  database("DSTDEVP", (_, n) => Math.sqrt(varianceOf(n, true))),
];
