import type { Code } from "./frame.ts";

/** A reference a formula makes before it is evaluated; relative parts are distances from the cell. */
export interface Precedent {
  /** Sheet index, or -1 for the formula's own. */
  readonly sheet: number;
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly relativeTop: boolean;
  readonly relativeLeft: boolean;
  readonly relativeBottom: boolean;
  readonly relativeRight: boolean;
}

/** A compiled formula, shared by all cells with the same key. */
export interface Template {
  readonly code: Code;
  readonly precedents: readonly Precedent[];
  /** Literals of the text it was compiled from; cells that share the template bring their own. */
  readonly literals: readonly (number | string)[];
  /** May read cells no precedent names (OFFSET, INDIRECT, a name that does). */
  readonly dynamic: boolean;
  /** Means something else in another cell, so it is not shared. */
  readonly local: boolean;
  /** Canonical custom function when the root is a call of one: it decides the unit of the answer. */
  readonly rootCustom: string | undefined;
}
