/** What kind of thing a cell of a part list is not taken for; counted by these words. */
export type FaultKind =
  | "unit in doubt"
  | "figure in doubt"
  | "unreadable"
  | "unknown material"
  | "unknown area"
  | "missing"
  | "not allowed"
  | "does not fit together";

/** Thrown for a cell that is not taken as it stands. */
export class Doubt {
  constructor(
    readonly kind: FaultKind,
    /** What is open and how to write it: "10 in thick? Write its unit". */
    readonly words: string,
  ) {}
}

export interface Fault {
  /** Of the file, from 1. */
  readonly row: number;
  /** "C"; "" of the line as a whole. */
  readonly column: string;
  readonly title: string;
  readonly given: string;
  readonly kind: FaultKind;
  readonly words: string;
}
