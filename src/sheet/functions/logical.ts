import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { topLeft } from "../../units/certain.ts";
import { toBoolean } from "../evaluate/coerce.ts";
import { sameValue } from "../evaluate/compare.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { lift } from "../evaluate/lift.ts";
import { areasOf, dereference, toMatrix } from "../evaluate/reference.ts";
import { isMatrix, isReference, NA, VALUE, type Value } from "../evaluate/value.ts";
import { define, defineIn, fail } from "./define.ts";

type Thunk = () => Value;
type Plain = CellValue | CellMatrix;

/** Truth values among the arguments: text counts only when typed in, not in a range. Without any: #VALUE!. */
function* truths(frame: Frame, args: readonly Value[]): Generator<boolean> {
  let any = false;
  for (const arg of args) {
    const fromRange = isReference(arg) || isMatrix(arg);
    const matrices = isReference(arg) ? areasOf(arg).map((area) => frame.grid.matrix(area)) : [toMatrix(arg, frame)];
    for (const value of matrices.flat(2)) {
      if (fromRange && (value === null || typeof value === "string")) continue;
      const truth = toBoolean(value);
      if (truth instanceof CellError) fail(truth);
      any = true;
      yield truth;
    }
  }
  if (!any) fail(VALUE);
}

/** IF over an array: both branches are evaluated, each element picks its own. */
function ifEach(frame: Frame, condition: CellMatrix, yes: Value, no: Value): CellMatrix {
  return lift([condition, dereference(yes, frame), dereference(no, frame)], ([test, a, b]) => {
    const truth = toBoolean(test);
    return truth instanceof CellError ? truth : truth ? a : b;
  });
}

function orElse(value: Plain, other: Thunk, frame: Frame, applies: (error: CellError) => boolean): Value {
  if (!isMatrix(value)) return value instanceof CellError && applies(value) ? other() : value;
  if (!value.flat().some((v) => v instanceof CellError && applies(v))) return value;
  return lift([value, dereference(other(), frame)], ([v, instead]) =>
    v instanceof CellError && applies(v) ? instead : v,
  );
}

/** Pairs of condition and answer, first true one wins; arrays pick element by element. */
function firstTrue(frame: Frame, args: readonly (Thunk | (() => Plain))[], at: number): Value {
  if (at >= args.length) return NA;
  const condition = (args[at] as () => Plain)();
  const answer = args[at + 1] as Thunk;
  if (isMatrix(condition)) return ifEach(frame, condition, answer(), firstTrue(frame, args, at + 2));
  const truth = toBoolean(condition);
  if (truth instanceof CellError) return truth;
  return truth ? answer() : firstTrue(frame, args, at + 2);
}

function switchOn(value: CellValue, args: readonly Thunk[], frame: Frame): Value {
  if (value instanceof CellError) return value;
  const [first, second, ...rest] = args;
  if (!first) return NA;
  if (!second) return first();
  const candidate = dereference(first(), frame);
  if (candidate instanceof CellError) return candidate;
  if (!isMatrix(candidate) && sameValue(candidate ?? 0, value ?? 0)) return second();
  return switchOn(value, rest, frame);
}

export const logical: readonly WorksheetFunction[] = [
  defineIn("IF", "whole lazy [lazy]", (frame, condition, yes, no) => {
    const otherwise = (): Value => (no ? no() : false);
    if (isMatrix(condition)) return ifEach(frame, condition, yes(), otherwise());
    const truth = toBoolean(condition);
    if (truth instanceof CellError) return truth;
    return truth ? yes() : otherwise();
  }),
  defineIn("IFS", "lazyWhole... lazy...", (frame, ...args) => (args.length % 2 ? NA : firstTrue(frame, args, 0))),
  defineIn("SWITCH", "whole lazy lazy...", (frame, value, ...rest) => {
    const args = rest as Thunk[];
    if (!isMatrix(value)) return switchOn(value, args, frame);
    return value.map((row) => row.map((v) => topLeft(toMatrix(switchOn(v, args, frame), frame))));
  }),
  defineIn("CHOOSE", "whole lazy...", (frame, index, ...rest) => {
    const choices = rest as Thunk[];
    const pick = (n: CellValue): Value => {
      const number = typeof n === "number" ? Math.trunc(n) : typeof n === "boolean" ? Number(n) : Number.NaN;
      if (n instanceof CellError) return n;
      const asked = typeof n === "string" ? Math.trunc(Number(n)) : number;
      return choices[asked - 1]?.() ?? (asked >= 1 && asked <= choices.length ? null : VALUE);
    };
    if (!isMatrix(index)) return pick(index);
    // CHOOSE({1,2},A,B) sets columns side by side: every choice may itself be an array.
    const picked = choices.map((choice) => dereference(choice(), frame));
    return lift([index, ...picked], ([n, ...values]) =>
      n instanceof CellError ? n : (values[Number(n) - 1] ?? VALUE),
    );
  }),
  defineIn("IFERROR", "whole lazy", (frame, value, other) => orElse(value, other, frame, () => true)),
  defineIn("IFNA", "whole lazy", (frame, value, other) =>
    orElse(value, other, frame, (error) => error.code === "#N/A"),
  ),
  defineIn("AND", "range...", (frame, ...args) => [...truths(frame, args)].every(Boolean)),
  defineIn("OR", "range...", (frame, ...args) => [...truths(frame, args)].some(Boolean)),
  defineIn("XOR", "range...", (frame, ...args) => [...truths(frame, args)].filter(Boolean).length % 2 === 1),
  define("NOT", "boolean", (truth) => !truth),
  define("TRUE", "", () => true),
  define("FALSE", "", () => false),
];
