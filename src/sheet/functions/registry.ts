import type { WorksheetFunction, WorksheetFunctions } from "../evaluate/frame.ts";
import * as families from "./families.ts";

let byName: Map<string, WorksheetFunction> | undefined;

// Filled on first use.
function table(): Map<string, WorksheetFunction> {
  byName ??= new Map(Object.values(families).flatMap((family) => family.map((f) => [f.name, f] as const)));
  return byName;
}

/** Spellings of operators in files (A1#, @A1), not functions a person calls; LET and LAMBDA are syntax but called. */
const OPERATORS = ["ANCHORARRAY", "SINGLE"];

export const worksheetFunctionNames = (): readonly string[] =>
  [...table().keys(), "LAMBDA", "LET"].filter((name) => !OPERATORS.includes(name)).sort();

/** What the engine hands to its compiler. */
export const worksheetFunctions: WorksheetFunctions = {
  find: (name) => table().get(name),
  names: worksheetFunctionNames,
};
