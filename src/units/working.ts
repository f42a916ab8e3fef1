import type { Quantity } from "./quantity.ts";

/**
 * The working of a calculation: every calc function writes its steps while it computes, so that what WORKING shows is
 * the calculation itself and not a second telling of it. A calc function takes `work?: Working` as its last parameter
 * and passes each intermediate figure through `step`; without a Working, `step` only returns the value.
 */
export interface Step {
  /** The formula's letter or letters, e.g. "BA". */
  readonly symbol: string;
  readonly meaning: string;
  readonly value: number | string;
  /** Unit the value is in (internal units: mm, N, kg, MPa, deg ...); "" for ratios and words. */
  readonly unit: string;
  /** Where the formula or the figure comes from, with its mark: read, derived, memory, common practice. */
  readonly source: string;
}

export type Working = Step[];

/** A quantity's own unit; any for a plain number, whose unit nothing says yet. */
type UnitOf<T> = T extends Quantity<infer Unit> ? Unit : string;

export function step<T extends number | string>(
  work: Working | undefined,
  symbol: string,
  meaning: string,
  value: T,
  unit: UnitOf<T>,
  source: string,
): T {
  work?.push({ symbol, meaning, value, unit, source });
  return value;
}
