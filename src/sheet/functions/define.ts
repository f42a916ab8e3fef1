import type { CellError, CellMatrix, CellValue } from "../../units/cell.ts";
import type { ArgumentKind, Frame, WorksheetFunction } from "../evaluate/frame.ts";
import type { Value } from "../evaluate/value.ts";

/** What a body is handed for a parameter of each kind (see ArgumentKind). */
interface Handed {
  number: number;
  text: string;
  boolean: boolean;
  value: CellValue;
  any: CellValue;
  "number?": number | undefined;
  "text?": string | undefined;
  "boolean?": boolean | undefined;
  "value?": CellValue | undefined;
  range: Value;
  array: Value;
  whole: CellValue | CellMatrix;
  lazy: () => Value;
  lazyWhole: () => CellValue | CellMatrix;
}

type One<Word extends string> = Word extends `[${infer Kind}]`
  ? One<Kind> | undefined
  : Word extends `${infer Kind}...`
    ? One<Kind>
    : Word extends keyof Handed
      ? Handed[Word]
      : never;

/** Of words that repeat, alone or the last two by turns: "[any...] [value...]". */
type Each<Words extends string> = Words extends `${infer Word} ${infer Rest}`
  ? Each<Word> | Each<Rest>
  : Words extends `[${infer Word}]`
    ? One<Word>
    : One<Words>;

/** Arguments by a line of kinds: "[number]" may be left out, "range..." repeats. */
export type Arguments<Words extends string> = Words extends ""
  ? []
  : Words extends `${infer Word} ${infer Rest}`
    ? Word extends `${string}...${"" | "]"}`
      ? Each<Words>[]
      : [One<Word>, ...Arguments<Rest>]
    : Words extends `${string}...${"" | "]"}`
      ? Each<Words>[]
      : [One<Words>];

function describe(name: string, spec: string, body: WorksheetFunction["body"], dynamic: boolean): WorksheetFunction {
  const words = spec === "" ? [] : spec.split(" ");
  const repeats = words.filter((word) => word.includes("...")).length;
  return {
    name,
    kinds: words.map((word) => word.replace(/^\[|\.{3}|\]$/g, "") as ArgumentKind),
    least: words.filter((word) => !word.startsWith("[")).length,
    most: repeats > 0 ? 255 : words.length,
    repeats,
    dynamic,
    body,
  };
}

/** A function of its arguments alone. Throwing a CellError answers with it. */
export function define<Words extends string>(
  name: string,
  spec: Words,
  body: (...args: Arguments<Words>) => Value,
): WorksheetFunction {
  return describe(name, spec, (_frame, ...args) => body(...(args as unknown as Arguments<Words>)), false);
}

/** A function that also looks at the cell it stands in or at other cells. */
export function defineIn<Words extends string>(
  name: string,
  spec: Words,
  body: (frame: Frame, ...args: Arguments<Words>) => Value,
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
