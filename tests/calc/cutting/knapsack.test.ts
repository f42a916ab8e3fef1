import { expect, test } from "vitest";
import { Knapsack } from "../../../src/calc/cutting/knapsack.ts";
import { seeded } from "../../../src/tools/bench/cutting/shop-bills.ts";

interface Option {
  readonly length: number;
  readonly value: number;
  readonly copies: number;
  readonly front: boolean;
}

/** Best value by trying every filling; with `front` exactly one front part. */
function byTrying(options: readonly Option[], cells: number, front: boolean, at = 0): number {
  if (at === options.length) return front ? Number.NEGATIVE_INFINITY : 0;
  const { length, value, copies, front: isFront } = options[at]!;
  let best = byTrying(options, cells, front, at + 1);
  for (let n = 1; n <= (isFront ? 1 : copies) && n * length <= cells; n++) {
    if (isFront && !front) break;
    best = Math.max(best, n * value + byTrying(options, cells - n * length, front && !isFront, at + 1));
  }
  return best;
}

test.each(Array.from({ length: 25 }, (_, k) => k))(
  "filling %i is worth what trying everything finds, and reads back so",
  (seed) => {
    const unit = seeded(seed);
    const cells = 20 + Math.floor(unit() * 20);
    const options = Array.from({ length: 6 }, (): Option => {
      return {
        length: 2 + Math.floor(unit() * 9),
        value: 1 + Math.floor(unit() * 20),
        copies: 1 + Math.floor(unit() * 9),
        front: unit() < 0.3,
      };
    });
    const knapsack = new Knapsack();
    knapsack.reset(cells, true);
    options.forEach(({ length, value, copies, front }, k) => {
      knapsack.add(k, length, value, copies, front);
    });
    for (const front of [false, true]) {
      const best = knapsack.best(cells, front);
      expect(best).toBe(byTrying(options, cells, front));
      if (best === Number.NEGATIVE_INFINITY) continue;
      let value = 0;
      let length = 0;
      knapsack.read(knapsack.mark(), cells, front, (option, copies) => {
        value += copies * options[option]!.value;
        length += copies * options[option]!.length;
        expect(copies).toBeLessThanOrEqual(options[option]!.copies);
      });
      expect(value).toBe(best);
      expect(length).toBeLessThanOrEqual(cells);
    }
  },
);
