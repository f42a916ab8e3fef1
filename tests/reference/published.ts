/**
 * One published answer: the cell function and its arguments, what a book, a standard or a table says, and where. The
 * tolerance is what the source's rounding allows. None of these values comes from this project.
 */
import type { Argument } from "../../src/cells/call/call.ts";

export type Basis =
  | "read"
  | "memory" // written down from memory, unverified
  | "derived"; // arithmetic on a source that was read, or by definition

export interface Published {
  readonly id: string;
  readonly call: readonly [name: string, ...given: Argument[]];
  readonly expected: number;
  /** Absolute, in the unit of the answer. */
  readonly tolerance: number;
  readonly source: string;
  readonly basis: Basis;
}

/** Answers that need a little arithmetic around a cell function: a worksheet formula instead of a call. */
export interface PublishedFormula extends Omit<Published, "call"> {
  readonly formula: string;
}

/** One cell of a block that a function spills: in the column of this header, the row counted from 0 below it. */
export interface PublishedCell extends Published {
  readonly column: string;
  readonly row: number;
}

export const GROOVER_5 = "Groover, Fundamentals of Modern Manufacturing 5e (Wiley 2012)";
export const GROOVER_4 = "Groover, Fundamentals of Modern Manufacturing 4e (Wiley 2010), solutions to chapter 20";
export const FAA = "FAA-H-8083-31, Aviation Maintenance Technician Handbook, Airframe vol. 1 ch. 4";
export const TABELLENBUCH = "Tabellenbuch Metall (Europa-Lehrmittel), Zuschnittsermittlung after DIN 6935";
export const HANDBOOK = "Machinery's Handbook 28e, sheet-metal bend allowance, as restated in two public sources";
