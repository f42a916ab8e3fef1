import type { CellError, CellMatrix, CellValue } from "../../units/cell.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import type { Value } from "../evaluate/value.ts";

/**
 * Kinds of parameters, one letter each:
 * n number, t text, b logical, v any value, e any value or error: one value, stretched over arrays element by element;
 * N T B V the same, but an argument left empty between commas counts as not given;
 * s range or values, taken as they come (SUM); a the same, its expression evaluated as an array formula;
 * c one value or an array, not stretched; l and k evaluated on demand (IF), k read like c. "?" begins the optional ones, "*" repeats the last letter, "**" the last two.
 */
interface Kinds {
  n: number;
  t: string;
  b: boolean;
  v: CellValue;
  e: CellValue;
  N: number | undefined;
  T: string | undefined;
  B: boolean | undefined;
  V: CellValue | undefined;
  s: Value;
  a: Value;
  c: CellValue | CellMatrix;
  l: () => Value;
  k: () => CellValue | CellMatrix;
}

export type Arguments<P extends string, Optional extends boolean = false> = P extends `?${infer Rest}`
  ? Arguments<Rest, true>
  : P extends `${infer K}${infer Rest}`
    ? K extends keyof Kinds
      ? Rest extends "*"
        ? Kinds[K][]
        : Rest extends `${infer L}**`
          ? L extends keyof Kinds
            ? (Kinds[K] | Kinds[L])[]
            : [Optional extends true ? Kinds[K] | undefined : Kinds[K], ...Arguments<Rest, Optional>]
          : [Optional extends true ? Kinds[K] | undefined : Kinds[K], ...Arguments<Rest, Optional>]
      : never
    : [];

function describe(name: string, spec: string, body: WorksheetFunction["body"], dynamic: boolean): WorksheetFunction {
  const repeats = spec.endsWith("**") ? 2 : spec.endsWith("*") ? 1 : 0;
  const marked = spec.replaceAll("*", "");
  const optionalAt = marked.indexOf("?");
  const letters = marked.replace("?", "");
  return {
    name,
    letters,
    least: optionalAt >= 0 ? optionalAt : letters.length,
    most: repeats > 0 ? 255 : letters.length,
    repeats,
    dynamic,
    body,
  };
}

/** A function of its arguments alone. Throwing a CellError answers with it. */
export function define<P extends string>(
  name: string,
  spec: P,
  body: (...args: Arguments<P>) => Value,
): WorksheetFunction {
  return describe(name, spec, (_frame, ...args) => body(...(args as unknown as Arguments<P>)), false);
}

/** A function that also looks at the cell it stands in or at other cells. */
export function defineIn<P extends string>(
  name: string,
  spec: P,
  body: (frame: Frame, ...args: Arguments<P>) => Value,
  dynamic = false,
): WorksheetFunction {
  return describe(name, spec, body as unknown as WorksheetFunction["body"], dynamic);
}

/** The same function under an older or newer name. */
export const alias = (name: string, original: WorksheetFunction): WorksheetFunction => ({ ...original, name });

/** Stops a body with an error value. */
export function fail(error: CellError): never {
  throw error;
}
