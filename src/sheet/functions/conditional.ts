import { CellError, type CellValue } from "../../units/cell.ts";
import { firstOf, itemAt, widthOf } from "../../units/certain.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { DIV0, isMatrix, RangeRef, VALUE, type Value } from "../evaluate/value.ts";
import { criterion, type Test } from "./criteria.ts";
import { type Block, positionsMeeting } from "./criteria-index.ts";
import { defineIn, fail } from "./define.ts";

function block(frame: Frame, value: Value): Block {
  if (isMatrix(value)) {
    return {
      rows: value.length,
      columns: widthOf(value),
      used: value.length,
      key: undefined,
      at: (r, c) => value[r]?.[c] ?? null,
    };
  }
  if (!(value instanceof RangeRef)) fail(value instanceof CellError ? value : VALUE);
  const { sheet, top, left, bottom, right } = value;
  const columns = Array.from({ length: right - left + 1 }, (_, i) => frame.grid.column(sheet, left + i, top, bottom));
  return {
    rows: value.rows,
    columns: value.columns,
    used: Math.max(0, Math.min(bottom, frame.grid.lastRow(sheet)) - top + 1),
    key: `${sheet} ${top} ${left} ${bottom} ${right}`,
    at: (r, c) => columns[c]?.[top + r] ?? null,
  };
}

/** A sum range takes the shape of the range that is tested, from its own corner. */
function reshaped(frame: Frame, value: Value, like: Block): Block {
  if (!(value instanceof RangeRef)) return block(frame, value);
  const { sheet, top, left } = value;
  return block(frame, new RangeRef(sheet, top, left, top + like.rows - 1, left + like.columns - 1));
}

interface Conditions {
  readonly tested: readonly Block[];
  readonly tests: readonly Test[];
  readonly used: number;
  /** Places where the first plain criterion is met; only they need to be looked at. */
  readonly candidates: readonly number[] | undefined;
}

/** Visits every position where all tests hold. Answers how many positions below the used part hold as well. */
function whereAll(
  { tested, tests, candidates }: Conditions,
  used: number,
  see: (r: number, c: number) => void,
): number {
  const { rows, columns } = firstOf(tested);
  const visit = (row: number, column: number): void => {
    for (let i = 0; i < tests.length; i++) if (!itemAt(tests, i)(itemAt(tested, i).at(row, column))) return;
    see(row, column);
  };
  if (candidates) {
    for (const position of candidates) visit(Math.floor(position / columns), position % columns);
    return 0;
  }
  for (let row = 0; row < Math.min(rows, used); row++) {
    for (let column = 0; column < columns; column++) visit(row, column);
  }
  return tests.every((test) => test(null)) ? Math.max(0, rows - used) * columns : 0;
}

/** The pairs of range and criterion that end the arguments of the *IFS functions. */
function conditions(frame: Frame, args: readonly (Value | CellValue)[]): Conditions {
  if (args.length === 0 || args.length % 2) fail(VALUE);
  const tested: Block[] = [];
  const tests: Test[] = [];
  let candidates: readonly number[] | undefined;
  for (let i = 0; i < args.length; i += 2) {
    const wanted = (args[i + 1] ?? null) as CellValue;
    const cells = block(frame, args[i]);
    tested.push(cells);
    tests.push(criterion(wanted));
    candidates ??= positionsMeeting(frame, cells, wanted);
  }
  const { rows, columns } = firstOf(tested);
  if (tested.some((b) => b.rows !== rows || b.columns !== columns)) fail(VALUE);
  return { tested, tests, candidates, used: Math.max(...tested.map((b) => b.used)) };
}

function numbersWhere(frame: Frame, source: Value, args: readonly (Value | CellValue)[], sameShape: boolean): number[] {
  const all = conditions(frame, args);
  const { tested, used } = all;
  const values = sameShape ? block(frame, source) : reshaped(frame, source, firstOf(tested));
  if (sameShape && (values.rows !== firstOf(tested).rows || values.columns !== firstOf(tested).columns)) fail(VALUE);
  const numbers: number[] = [];
  whereAll(all, Math.max(used, values.used), (row, column) => {
    const value = values.at(row, column);
    if (value instanceof CellError) fail(value);
    if (typeof value === "number") numbers.push(value);
  });
  return numbers;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
const mean = (numbers: readonly number[]): number | CellError =>
  numbers.length ? sum(numbers) / numbers.length : DIV0;
const extreme = (numbers: readonly number[], better: (a: number, b: number) => number): number =>
  numbers.length ? numbers.reduce((a, b) => better(a, b)) : 0;

export const conditional: readonly WorksheetFunction[] = [
  defineIn("COUNTIF", "array any", (frame, range, wanted) => {
    const all = conditions(frame, [range, wanted]);
    let count = 0;
    const below = whereAll(all, all.used, () => count++);
    return count + below;
  }),
  defineIn("COUNTIFS", "array... any...", (frame, ...args) => {
    const all = conditions(frame, args);
    let count = 0;
    const below = whereAll(all, all.used, () => count++);
    return count + below;
  }),
  defineIn("SUMIF", "array any [array]", (frame, range, wanted, source) =>
    sum(numbersWhere(frame, source ?? range, [range, wanted], false)),
  ),
  defineIn("AVERAGEIF", "array any [array]", (frame, range, wanted, source) =>
    mean(numbersWhere(frame, source ?? range, [range, wanted], false)),
  ),
  defineIn("SUMIFS", "array array... any...", (frame, source, ...args) => sum(numbersWhere(frame, source, args, true))),
  defineIn("AVERAGEIFS", "array array... any...", (frame, source, ...args) =>
    mean(numbersWhere(frame, source, args, true)),
  ),
  defineIn("MAXIFS", "array array... any...", (frame, source, ...args) =>
    extreme(numbersWhere(frame, source, args, true), Math.max),
  ),
  defineIn("MINIFS", "array array... any...", (frame, source, ...args) =>
    extreme(numbersWhere(frame, source, args, true), Math.min),
  ),
  defineIn("COUNTBLANK", "array", (frame, range) => {
    const cells = block(frame, range);
    let filled = 0;
    for (let row = 0; row < cells.used; row++) {
      for (let column = 0; column < cells.columns; column++) {
        const value = cells.at(row, column);
        if (value !== null && value !== "") filled++;
      }
    }
    return cells.rows * cells.columns - filled;
  }),
];
