import { CellError } from "../../units/cell.ts";
import { finite } from "../evaluate/coerce.ts";
import type { WorksheetFunction } from "../evaluate/frame.ts";
import { areasOf } from "../evaluate/reference.ts";
import { DIV0, isMatrix, isReference, NUM } from "../evaluate/value.ts";
import { defineIn } from "./define.ts";
import { eachNumber, numbersA, numbersOf } from "./numbers.ts";
import { runningSum } from "./running-sum.ts";

export const aggregates: readonly WorksheetFunction[] = [
  defineIn("SUM", "range...", (frame, ...args) => {
    if (args.length === 1) {
      const running = runningSum(frame, args[0]);
      if (running !== undefined) return finite(running, NUM);
    }
    let sum = 0;
    eachNumber(frame, args, (value) => {
      sum += value;
    });
    return finite(sum, NUM);
  }),
  defineIn("PERCENTOF", "array array", (frame, part, all) => {
    const [some, whole] = [part, all].map((given) => numbersOf(frame, [given]).reduce((a, b) => a + b, 0)) as [
      number,
      number,
    ];
    return whole === 0 ? DIV0 : finite(some / whole, NUM);
  }),
  defineIn("AVERAGE", "range...", (frame, ...args) => {
    let sum = 0;
    let count = 0;
    eachNumber(frame, args, (value) => {
      sum += value;
      count++;
    });
    return count === 0 ? DIV0 : finite(sum / count, NUM);
  }),
  defineIn("AVERAGEA", "range...", (frame, ...args) => {
    const numbers = numbersA(frame, args);
    return numbers.length === 0 ? DIV0 : finite(numbers.reduce((a, b) => a + b, 0) / numbers.length, NUM);
  }),
  defineIn("MIN", "range...", (frame, ...args) => extreme(numbersOf(frame, args), Math.min)),
  defineIn("MAX", "range...", (frame, ...args) => extreme(numbersOf(frame, args), Math.max)),
  defineIn("MINA", "range...", (frame, ...args) => extreme(numbersA(frame, args), Math.min)),
  defineIn("MAXA", "range...", (frame, ...args) => extreme(numbersA(frame, args), Math.max)),
  defineIn("PRODUCT", "range...", (frame, ...args) => {
    const numbers = numbersOf(frame, args);
    return numbers.length === 0
      ? 0
      : finite(
          numbers.reduce((a, b) => a * b, 1),
          NUM,
        );
  }),
  defineIn("COUNT", "range...", (frame, ...args) => {
    let count = 0;
    for (const arg of args) {
      if (isReference(arg)) {
        for (const area of areasOf(arg)) {
          frame.grid.visit(area, (value) => {
            if (typeof value === "number") count++;
          });
        }
      } else if (isMatrix(arg)) count += arg.flat().filter((value) => typeof value === "number").length;
      else {
        // A value typed into the call counts when it can be a number; errors do not, and do not stop the count.
        try {
          eachNumber(frame, [arg], () => count++);
        } catch (error) {
          if (!(error instanceof CellError)) throw error;
        }
      }
    }
    return count;
  }),
  defineIn("COUNTA", "range...", (frame, ...args) => {
    let count = 0;
    for (const arg of args) {
      if (isReference(arg)) {
        for (const area of areasOf(arg)) {
          frame.grid.visit(area, () => count++);
        }
      } else if (isMatrix(arg)) count += arg.flat().filter((value) => value !== null).length;
      else count++;
    }
    return count;
  }),
];

function extreme(numbers: readonly number[], better: (a: number, b: number) => number): number {
  let best = numbers[0] ?? 0;
  for (const number of numbers) best = better(best, number);
  return best;
}
