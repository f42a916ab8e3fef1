import { itemAt } from "../../units/certain.ts";

/** How many at the begin of a list this holds of, where it holds of none after the first it does not hold of: by halving. */
export function beginCount<T>(list: readonly T[], holds: (item: T) => boolean): number {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(itemAt(list, middle))) low = middle + 1;
    else high = middle;
  }
  return low;
}
