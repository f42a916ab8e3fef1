/** Where a row of evidence was seen; never this engine. */
export interface Evidence {
  readonly function: string;
  readonly formula: string;
  /** Cells the formula reads, by name. */
  readonly cells?: Readonly<Record<string, number | string | boolean>>;
  /** The answer: a value, an error code as {"error": code}, or rows. */
  readonly value: unknown;
  readonly origin: string;
}

const rows: readonly Evidence[] = [];

export const evidenceByFunction: ReadonlyMap<string, readonly Evidence[]> = new Map(
  [...new Set(rows.map((row) => row.function))].map((name) => [name, rows.filter((row) => row.function === name)]),
);
