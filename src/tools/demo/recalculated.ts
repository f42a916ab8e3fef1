import { shopFunctions } from "../../cells/catalogue.ts";
import { recalculateBytes } from "../../sheet/recalculate/recalculate-bytes.ts";

export interface Recalculated {
  readonly formulas: number;
  /** Formula cells whose stored answer was another one. */
  readonly changed: number;
  /** The workbook with every answer in its cell. */
  readonly bytes: Uint8Array;
}

/** Recalculates a workbook from its formulas. Throws when any formula keeps its old value. */
export function recalculated(bytes: Uint8Array, name: string): Recalculated {
  // A copy: a Buffer shares its memory with others, and its slices are no copies.
  const { result, output } = recalculateBytes(new Uint8Array(bytes), {
    functions: shopFunctions,
    now: undefined,
    verify: false,
    in: name,
    out: null,
  });
  const { status, formulas, changed, kept, refused } = result.report;
  if (!output || status !== "fresh") {
    const why = refused?.message ?? kept.map(({ cell, detail }) => `${cell} ${detail}`).join("; ");
    throw new Error(`${name} must be a workbook that is calculated whole; got ${status}: ${why}`);
  }
  return { formulas, changed, bytes: output };
}
