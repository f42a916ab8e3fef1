import { itemAt } from "../../units/certain.ts";

/** How many items at the start of a list pass a test, where none passes after the first that fails: by halving. */
export function beginCount<T>(list: readonly T[], holds: (item: T) => boolean): number {
  let [low, high] = [0, list.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(itemAt(list, middle))) low = middle + 1;
    else high = middle;
  }
  return low;
}
