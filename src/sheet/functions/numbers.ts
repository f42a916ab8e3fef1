import { CellError, type CellValue } from "../../units/cell.ts";
import { toNumber } from "../evaluate/coerce.ts";
import type { Frame } from "../evaluate/frame.ts";
import { areasOf } from "../evaluate/reference.ts";
import { isMatrix, isReference, Lambda, VALUE, type Value } from "../evaluate/value.ts";
import { fail } from "./define.ts";

/**
 * The numbers among a function's arguments as SUM sees them: in ranges and arrays only true numbers count, a value typed
 * into the call is converted ("3", TRUE) or refused. The first error ends it.
 */
export function eachNumber(frame: Frame, args: readonly Value[], see: (value: number) => void): void {
  for (const arg of args) {
    if (isReference(arg)) {
      for (const area of areasOf(arg)) {
        frame.grid.visit(area, (value) => {
          if (typeof value === "number") see(value);
          else if (value instanceof CellError) fail(value);
        });
      }
    } else if (isMatrix(arg)) {
      for (const row of arg) {
        for (const value of row) {
          if (typeof value === "number") see(value);
          else if (value instanceof CellError) fail(value);
        }
      }
    } else if (arg instanceof Lambda) fail(VALUE);
    else {
      const value = toNumber(arg as CellValue | undefined);
      if (value instanceof CellError) fail(value);
      see(value);
    }
  }
}

export function numbersOf(frame: Frame, args: readonly Value[]): number[] {
  const numbers: number[] = [];
  eachNumber(frame, args, (value) => numbers.push(value));
  return numbers;
}

/** Like numbersOf, but text in a range counts 0 and TRUE 1: AVERAGEA, MAXA and their kin. */
export function numbersA(frame: Frame, args: readonly Value[]): number[] {
  const numbers: number[] = [];
  const see = (value: CellValue): void => {
    if (value instanceof CellError) fail(value);
    if (typeof value === "number") numbers.push(value);
    else if (typeof value === "boolean") numbers.push(value ? 1 : 0);
    else if (typeof value === "string") numbers.push(0);
  };
  for (const arg of args) {
    if (isReference(arg)) for (const area of areasOf(arg)) frame.grid.visit(area, see);
    else if (isMatrix(arg)) for (const row of arg) row.forEach(see);
    else eachNumber(frame, [arg], (value) => numbers.push(value));
  }
  return numbers;
}
