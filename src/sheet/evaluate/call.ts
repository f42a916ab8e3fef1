import type { AstExpression } from "@borgar/fx/xlsx";
import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { topLeft } from "../../units/certain.ts";
import { SyntaxRefusal } from "../formula/parse.ts";
import { toBoolean, toNumber, toText } from "./coerce.ts";
import type { Compiling } from "./compiling.ts";
import type { ArgumentKind, Code, Frame, ScalarKind, WorksheetFunction } from "./frame.ts";
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

function kindAt({ kinds, repeats }: WorksheetFunction, index: number): ArgumentKind {
  const start = kinds.length - repeats;
  return kinds[index < kinds.length ? index : start + ((index - start) % repeats)] ?? "array";
}

type Read = (value: CellValue | undefined) => unknown;

const number: Read = (value) => (typeof value === "number" ? value : toNumber(value));
const asItIs: Read = (value) => (value === undefined ? null : value);
const ifGiven =
  (read: Read): Read =>
  (value) =>
    value === undefined ? undefined : read(value);

const SCALARS: Readonly<Record<ScalarKind, Read>> = {
  number,
  text: toText,
  boolean: toBoolean,
  value: asItIs,
  any: asItIs,
  "number?": ifGiven(number),
  "text?": ifGiven(toText),
  "boolean?": ifGiven(toBoolean),
  "value?": ifGiven(asItIs),
};
const isScalar = (kind: ArgumentKind): kind is ScalarKind => kind in SCALARS;

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
  const scalars: {
    readonly at: number;
    readonly read: Read;
    readonly takesErrors: boolean;
    readonly takesNumbers: boolean;
  }[] = [];
  const readers = given.map((node, at): ((frame: Frame) => unknown) => {
    const kind = kindAt(fn, at);
    if (isScalar(kind)) {
      scalars.push({
        at,
        read: SCALARS[kind],
        takesErrors: kind === "any",
        takesNumbers: !/^(?:text|boolean)/.test(kind),
      });
      return node === null ? () => undefined : compiler.single(node, array, names);
    }
    const isLazy = kind === "lazy" || kind === "lazyWhole";
    if (node === null) return isLazy ? () => () => null : () => undefined;
    const code =
      kind === "whole" || kind === "lazyWhole"
        ? compiler.single(node, array, names)
        : compiler.code(node, kind === "array" || array, names);
    return isLazy ? (frame) => () => code(frame) : code;
  });

  const run = (frame: Frame, args: unknown[]): Value => {
    for (const { at, read, takesErrors, takesNumbers } of scalars) {
      const asGiven = args[at] as CellValue | undefined;
      if (takesNumbers && typeof asGiven === "number") continue;
      const value = read(asGiven);
      if (value instanceof CellError && !takesErrors) return value;
      args[at] = value;
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
    for (let at = 0; at < readers.length; at++) {
      const value = readers[at]?.(frame);
      args[at] = value;
      if (Array.isArray(value)) stretched = true;
    }
    if (stretched && scalars.some(({ at }) => isMatrix(args[at]))) {
      return lift(
        scalars.map(({ at }) => args[at] as CellValue | CellMatrix | undefined),
        (values) => {
          const one = args.slice();
          for (const [k, { at }] of scalars.entries()) one[at] = values[k];
          const result = dereference(run(frame, one), frame);
          return isMatrix(result) ? topLeft(result) : result;
        },
      );
    }
    return run(frame, args);
  };
}
