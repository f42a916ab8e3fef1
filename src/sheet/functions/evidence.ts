import * as files from "./evidence-files.ts";

/** What another program answers for a formula; never this engine. */
export interface Evidence {
  readonly function: string;
  /** Reads the cells of grid.json where it names cells. */
  readonly formula: string;
  /** A value, an error as {"error": code}, or rows. */
  readonly value: unknown;
  readonly origin: string;
}

const rows: readonly Evidence[] = Object.values(files).flat();

export const evidenceByFunction: ReadonlyMap<string, readonly Evidence[]> = new Map(
  [...new Set(rows.map((row) => row.function))].map((name) => [name, rows.filter((row) => row.function === name)]),
);
