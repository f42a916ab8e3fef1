/** A figure from outside the project with everything needed to judge it. */
export type Mark = "read" | "derived" | "memory" | "common practice" | "fitted" | "given";

export interface Fact {
  readonly value: number;
  readonly unit: string;
  readonly mark: Mark;
  readonly source: string;
}

export const fact = (value: number, unit: string, mark: Mark, source: string): Fact => ({ value, unit, mark, source });

/** "Groover 5e eq. 19.8 (read)": how a source is written in working and catalogue. */
export const cite = (f: Pick<Fact, "source" | "mark">): string => `${f.source} (${f.mark})`;
