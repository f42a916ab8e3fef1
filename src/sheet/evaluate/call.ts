import type { AstExpression } from "@borgar/fx/xlsx";
import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { topLeft } from "../../units/certain.ts";
import { SyntaxRefusal } from "../formula/parse.ts";
import { toBoolean, toNumber, toText } from "./coerce.ts";
import type { Compiling } from "./compiling.ts";
import type { Code, Frame, WorksheetFunction } from "./frame.ts";
import { lift } from "./lift.ts";
import { dereference } from "./reference.ts";
import { isMatrix, NUM, type Value } from "./value.ts";

type Body = (frame: Frame, ...args: unknown[]) => Value;

/** Excel's own wording of arity stands nowhere; say how many there may be. */
function checkCount(fn: WorksheetFunction, count: number): void {
  if (count >= fn.least && count <= fn.most) return;
  const range =
    fn.most === fn.least ? `${fn.least}` : fn.most === 255 ? `at least ${fn.least}` : `${fn.least} to ${fn.most}`;
  throw new SyntaxRefusal(
    `${fn.name} takes ${range} argument${range === "1" || range === "at least 1" ? "" : "s"}; got ${count}`,
  );
}

function letterAt(fn: WorksheetFunction, index: number): string {
  const { letters, repeats } = fn;
  if (index < letters.length || repeats === 0) return letters[index] ?? "a";
  const start = letters.length - repeats;
  return letters[start + ((index - start) % repeats)]!;
}

const SCALAR = "ntbveNTBV";

function convert(letter: string, value: CellValue | undefined): unknown {
  if (value === undefined && letter < "a") return undefined;
  switch (letter) {
    case "n":
    case "N":
      return typeof value === "number" ? value : toNumber(value);
    case "t":
    case "T":
      return toText(value);
    case "b":
    case "B":
      return toBoolean(value);
    default:
      return value === undefined ? null : value;
  }
}

/** Excel knows neither infinity nor NaN: what overflows or has no value is #NUM!. */
function representable(value: Value): Value {
  if (typeof value === "number") return Number.isFinite(value) ? value : NUM;
  if (!isMatrix(value) || !value.some((row) => row.some(isBeyond))) return value;
  return value.map((row) => row.map((v) => (isBeyond(v) ? NUM : v)));
}

const isBeyond = (value: CellValue): boolean => typeof value === "number" && !Number.isFinite(value);

/** Compiles a call of a worksheet function: arguments by kind, array arguments of scalar parameters stretched. */
export function compileCall(
  compiler: Compiling,
  fn: WorksheetFunction,
  nodes: readonly (AstExpression | null)[],
  array: boolean,
  names: readonly string[],
): Code {
  const given = nodes.length === 1 && nodes[0] === null && fn.most === 0 ? [] : nodes;
  checkCount(fn, given.length);
  const body = fn.body as unknown as Body;
  const letters = given.map((_, i) => letterAt(fn, i));
  const scalars: number[] = [];
  const readers = given.map((node, i): ((frame: Frame) => unknown) => {
    const letter = letters[i]!;
    if (SCALAR.includes(letter)) {
      scalars.push(i);
      return node === null ? () => undefined : compiler.single(node, array, names);
    }
    if (node === null) return letter === "l" || letter === "k" ? () => () => null : () => undefined;
    if (letter === "c") return compiler.single(node, array, names);
    if (letter === "k") {
      const code = compiler.single(node, array, names);
      return (frame) => () => code(frame);
    }
    if (letter === "l") {
      const code = compiler.code(node, array, names);
      return (frame) => () => code(frame);
    }
    return compiler.code(node, letter === "a" || array, names);
  });

  const run = (frame: Frame, args: unknown[]): Value => {
    for (const i of scalars) {
      const letter = letters[i]!;
      const value = convert(letter, args[i] as CellValue | undefined);
      if (value instanceof CellError && letter !== "e") return value;
      args[i] = value;
    }
    try {
      return representable(body(frame, ...args));
    } catch (error) {
      if (error instanceof CellError) return error;
      throw error;
    }
  };

  return (frame) => {
    const args: unknown[] = new Array(readers.length);
    let stretched = false;
    for (let i = 0; i < readers.length; i++) {
      const value = readers[i]!(frame);
      args[i] = value;
      if (Array.isArray(value)) stretched = true;
    }
    if (stretched && scalars.some((i) => isMatrix(args[i]))) {
      return lift(
        scalars.map((i) => args[i] as CellValue | CellMatrix | undefined),
        (values) => {
          const one = args.slice();
          for (let k = 0; k < scalars.length; k++) one[scalars[k]!] = values[k];
          const result = dereference(run(frame, one), frame);
          return isMatrix(result) ? topLeft(result) : result;
        },
      );
    }
    return run(frame, args);
  };
}
