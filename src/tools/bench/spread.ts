import { itemAt } from "../../units/certain.ts";

/** Median, least and most of some measurements: one number alone says nothing on a machine that does other things too. */
export interface Spread {
  readonly median: number;
  readonly least: number;
  readonly most: number;
}

export const medianOf = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return (itemAt(sorted, sorted.length - 1 - middle) + itemAt(sorted, middle)) / 2;
};

export const spreadOf = (values: readonly number[]): Spread => ({
  median: medianOf(values),
  least: Math.min(...values),
  most: Math.max(...values),
});
