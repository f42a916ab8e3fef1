/** What is wrong with an answer; undefined where it is a finite number, a text, a truth value, or an error in the one grammar. */
import { RECORDS } from "../../cells/catalogue.ts";
import { publicName } from "../../cells/record/record.ts";
import { CellError, ERROR_CODES } from "../../units/cell.ts";
import { GRAMMAR, MOST_LETTERS } from "./grammar.ts";

/** Ours alone: what shows that a fault of the program, and not the caller's, stopped the call. */
const FAULTS = /free of faults of its own|\bundefined\b|\bNaN\b|\bInfinity\b|\[object |is not a function|Cannot read/;

export function problemOf(value: unknown, given: readonly unknown[]): string | undefined {
  if (!Array.isArray(value)) return problemOfCell(value, given);
  const rows = value as unknown[];
  if (rows.length === 0 || !rows.every(Array.isArray)) return "a block without rows";
  const width = (rows[0] as unknown[]).length;
  if (width === 0 || rows.some((row) => (row as unknown[]).length !== width)) return "a ragged block";
  for (const each of rows.flat()) {
    const problem = problemOfCell(each, given);
    if (problem) return problem;
  }
  return undefined;
}

function problemOfCell(value: unknown, given: readonly unknown[]): string | undefined {
  if (value instanceof CellError) return problemOfError(value, given);
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `the number ${value}`;
  if (value === null || typeof value === "string" || typeof value === "boolean") return undefined;
  return `a value of type ${typeof value}`;
}

function problemOfError({ code, message }: CellError, given: readonly unknown[]): string | undefined {
  if (!ERROR_CODES.includes(code)) return `the code ${code}`;
  // Errors that came in go out as they are; where a range is too short Excel's own #N/A stands.
  if (message === undefined) return code === "#N/A" || cameIn(code, given) ? undefined : `${code} without a sentence`;
  if (code !== "#VALUE!" && code !== "#N/A") return `${code} with a sentence, which Excel does not show: ${message}`;
  const match = GRAMMAR.exec(message);
  if (!match) return `a sentence outside the grammar: ${message}`;
  if (message.length > MOST_LETTERS) return `a sentence of ${message.length} letters: ${message}`;
  const quoted = message.replace(/"[^"]*(?:"|$)/g, '""'); // what the caller wrote is not our fault
  if (FAULTS.test(quoted) && !given.flat(2).some(isNameOfAFault)) return `a fault of our own: ${message}`;
  return isKnown(match.groups?.["subject"] ?? "") ? undefined : `an unknown parameter: ${message}`;
}

/** Parts of an argument that the arithmetic names by themselves: one flange, one bend. */
const PART = /^(?:flange \d+|(?:angle|inside radius|deduction) of bend \d+|place along the bed)$/;
const NAMES = RECORDS.flatMap(({ parameters }) => Object.keys(parameters).map(publicName));

/** A sentence begins with a parameter, alone or with its row and column, with a part of one, or with all arguments. */
const isKnown = (subject: string): boolean =>
  PART.test(subject) || [...NAMES, "arguments"].some((name) => subject === name || subject.startsWith(`${name} `));

const cameIn = (code: string, given: readonly unknown[]): boolean =>
  given.flat(2).some((each) => each instanceof CellError && each.code === code);

/** A machine may be called "NaN", and then a sentence about it says so. */
const isNameOfAFault = (each: unknown): boolean =>
  (typeof each === "string" || typeof each === "number") && /^(?:NaN|-?Infinity|undefined)$/.test(String(each));
