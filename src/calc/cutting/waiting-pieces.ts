/** Pieces not on any sheet, as item kinds, in the order in which a place is looked for. */
import { missing } from "../../units/certain.ts";
import type { Problem } from "./problem.ts";
import type { Random } from "./random.ts";

/** How far pieces may change places in the order, as a share of their value. */
const ORDER_SPREAD = 0.3;

export class WaitingPieces {
  kinds: number[] = [];
  private keys = new Float64Array(64);
  private fresh = new Uint8Array(64);

  constructor(
    private readonly problem: Problem,
    private readonly random: Random,
  ) {}

  /** Value of the pieces. */
  get value(): number {
    let sum = 0;
    for (const item of this.kinds) sum += this.problem.items[item]?.value ?? missing();
    return sum;
  }

  /** Sorts the pieces, dear ones first but not strictly; those from `waitedBefore` on are fresh. */
  sort(waitedBefore: number): void {
    const { random, kinds } = this;
    const { items } = this.problem;
    const count = kinds.length;
    if (this.keys.length < count) {
      this.keys = new Float64Array(count * 2);
      this.fresh = new Uint8Array(count * 2);
    }
    const { keys, fresh } = this;
    const spread = ORDER_SPREAD * random.unit();
    for (let i = 0; i < count; i++) {
      const item = kinds[i] ?? missing();
      const key = (items[item]?.value ?? missing()) * (1 + spread * (random.unit() - 0.5));
      let j = i - 1;
      while (j >= 0 && (keys[j] ?? missing()) < key) {
        keys[j + 1] = keys[j] ?? missing();
        kinds[j + 1] = kinds[j] ?? missing();
        fresh[j + 1] = fresh[j] ?? missing();
        j--;
      }
      keys[j + 1] = key;
      kinds[j + 1] = item;
      fresh[j + 1] = i >= waitedBefore ? 1 : 0;
    }
  }

  /**
   * Tries every piece in turn; `insert` says whether there was room. One that waited before has been refused by all sheets
   * not touched since, so only fresh ones are tried everywhere.
   */
  insertAll(insert: (item: number, everywhere: boolean) => boolean): void {
    const { kinds, fresh } = this;
    let left = 0;
    let refused = -1;
    for (let i = 0; i < kinds.length; i++) {
      const item = kinds[i] ?? missing();
      const isFresh = fresh[i] === 1;
      if ((item === refused && !isFresh) || !insert(item, isFresh)) {
        kinds[left++] = item;
        if (!isFresh) refused = item;
      }
    }
    kinds.length = left;
  }
}
