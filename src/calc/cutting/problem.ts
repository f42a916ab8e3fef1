/**
 * The cutting problem as the search sees it: whole numbers only, usable sheet sizes, and the shear's limits. Which way a
 * piece may lie is settled here, so that nothing further down thinks about grain.
 */
import type { GaugeRule } from "./gauge-rule.ts";

/** Children of a node lie side by side along x (cuts run along y) or along y (cuts run along x). */
export const ALONG_X = 0;
export const ALONG_Y = 1;
export type Direction = typeof ALONG_X | typeof ALONG_Y;

export interface SheetKind {
  /** Size left after the edge trims, in grid units. */
  readonly w: number;
  readonly h: number;
  /** Sheets available; Infinity where the stock is not limited. */
  readonly available: number;
  /** What one sheet counts in the objective: money or area. */
  readonly cost: number;
  /** What a usable left-over counts, as a share of the same area of the sheet. */
  readonly remnantWorth: number;
  /** Directions in which the sheet's own parts may lie, i.e. which first cuts the blade can make. */
  readonly roots: readonly Direction[];
  /** Longest first part whose long edge the blade can still trim, where the sheet's own is too long; else Infinity. */
  readonly trimPartLimit: number;
}

export interface ItemKind {
  readonly w: number;
  readonly h: number;
  readonly quantity: number;
  /** What a piece left out costs in the objective. */
  readonly value: number;
}

export interface Problem {
  readonly sheets: readonly SheetKind[];
  readonly items: readonly ItemKind[];
  /** plain[sheet][item]: the piece may lie as given; turned[sheet][item]: a quarter turn round. 1 or 0. */
  readonly plain: readonly Uint8Array[];
  readonly turned: readonly Uint8Array[];
  /** Levels of cuts, the sizing of a single piece not counted; 2 and up. */
  readonly stages: number;
  readonly rule: GaugeRule;
  /** Shortest side of a usable left-over; 0: none is kept. */
  readonly leastRemnant: number;
}
