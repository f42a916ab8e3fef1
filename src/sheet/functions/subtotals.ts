import { CellError, type CellValue } from "../../units/cell.ts";
import { foundIn, topLeft } from "../../units/certain.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { lift } from "../evaluate/lift.ts";
import { areasOf, dereference, toMatrix } from "../evaluate/reference.ts";
import { isMatrix, isReference, VALUE, type Value } from "../evaluate/value.ts";
import { aggregates } from "./aggregates.ts";
import { defineIn, fail } from "./define.ts";
import { statistics } from "./statistics.ts";

/** SUBTOTAL's and AGGREGATE's function numbers; from 14 on AGGREGATE's second number is an argument. */
const BY_NUMBER = `AVERAGE COUNT COUNTA MAX MIN PRODUCT STDEV.S STDEV.P SUM VAR.S VAR.P MEDIAN MODE.SNGL LARGE SMALL
  PERCENTILE.INC QUARTILE.INC PERCENTILE.EXC QUARTILE.EXC`.split(/\s+/);

interface Skip {
  readonly hidden: boolean;
  readonly errors: boolean;
  readonly nested: boolean;
}

/** The cells that count: rows filtered away, and on request hidden rows, errors and other subtotals, are left out. */
function counted(frame: Frame, args: readonly Value[], skip: Skip): CellValue[][] {
  const kept: CellValue[] = [];
  for (const arg of args) {
    if (!isReference(arg)) {
      kept.push(...toMatrix(arg, frame).flat());
      continue;
    }
    for (const area of areasOf(arg)) {
      frame.grid.visit(area, (value, row, column) => {
        if (skip.errors && value instanceof CellError) return;
        if (frame.grid.rowFiltered(area.sheet, row) || (skip.hidden && frame.grid.rowHidden(area.sheet, row))) return;
        if (
          skip.nested &&
          /^=[\s\S]*\b(?:SUBTOTAL|AGGREGATE)\s*\(/i.test(frame.grid.formulaAt(area.sheet, row, column) ?? "")
        )
          return;
        kept.push(value);
      });
    }
  }
  return kept.map((value) => [value]);
}

function compute(frame: Frame, name: string, values: CellValue[][], extra: readonly Value[]): Value {
  const fn = foundIn([...aggregates, ...statistics], (f) => f.name === name);
  const body = fn.body as unknown as (frame: Frame, ...args: Value[]) => Value;
  if (values.length > 0) return body(frame, values, ...extra);
  return ["SUM", "COUNT", "COUNTA", "MAX", "MIN", "PRODUCT"].includes(name) ? 0 : body(frame, [[null]], ...extra);
}

export const subtotals: readonly WorksheetFunction[] = [
  defineIn("SUBTOTAL", "number range...", (frame, ...given) => {
    const [code, ...args] = given as unknown as [number, ...Value[]];
    const number = Math.trunc(code);
    const hidden = number > 100;
    const name = BY_NUMBER[(hidden ? number - 100 : number) - 1];
    if (name === undefined || (hidden ? number - 100 : number) > 11 || args.some((arg) => !isReference(arg)))
      return VALUE;
    return compute(frame, name, counted(frame, args, { hidden, errors: false, nested: true }), []);
  }),
  defineIn("AGGREGATE", "number number array...", (frame, ...given) => {
    const [code, choice, ...args] = given as unknown as [number, number, ...Value[]];
    const number = Math.trunc(code);
    const option = Math.trunc(choice);
    const name = BY_NUMBER[number - 1];
    if (name === undefined || option < 0 || option > 7) return VALUE;
    const skip = { hidden: option % 2 === 1, errors: [2, 3, 6, 7].includes(option), nested: option <= 3 };
    const drop = (values: CellValue[][]): CellValue[][] =>
      skip.errors ? values.filter(([v]) => !(v instanceof CellError)) : values;
    if (number < 14) {
      if (!args.every(isReference)) return args.find((arg) => arg instanceof CellError) ?? VALUE;
      return compute(frame, name, drop(counted(frame, args, skip)), []);
    }
    if (args.length !== 2) fail(VALUE);
    const values = drop(counted(frame, args.slice(0, 1), skip));
    return lift([dereference(args[1], frame)], ([k]) => {
      const found = compute(frame, name, values, [k]);
      return isMatrix(found) ? topLeft(found) : (found as CellValue);
    });
  }),
];
