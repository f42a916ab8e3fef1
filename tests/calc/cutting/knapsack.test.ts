import { expect, test } from "vitest";
import { Knapsack } from "../../../src/calc/cutting/knapsack.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";

interface Option {
  readonly length: number;
  readonly value: number;
  readonly copies: number;
}

/** Best value by trying every filling. */
function byTrying(options: readonly Option[], cells: number, at = 0): number {
  if (at === options.length) return 0;
  const { length, value, copies } = options[at]!;
  let best = 0;
  for (let n = 0; n <= copies && n * length <= cells; n++) {
    best = Math.max(best, n * value + byTrying(options, cells - n * length, at + 1));
  }
  return best;
}

test.each(Array.from({ length: 25 }, (_, k) => k))(
  "filling %i is worth what trying everything finds, and reads back so",
  (seed) => {
    const unit = randomFrom(seed);
    const cells = 20 + Math.floor(unit() * 20);
    const options = Array.from({ length: 6 }, (): Option => {
      return {
        length: 2 + Math.floor(unit() * 9),
        value: 1 + Math.floor(unit() * 20),
        copies: 1 + Math.floor(unit() * 9),
      };
    });
    const knapsack = new Knapsack();
    knapsack.reset(cells);
    const marks = options.map(({ length, value, copies }, k) => {
      knapsack.add(k, length, value, copies);
      return { mark: knapsack.mark(), best: knapsack.best(cells) };
    });
    // Also as it stood before the last options came.
    for (const [k, { mark, best }] of marks.entries()) {
      expect(best).toBe(byTrying(options.slice(0, k + 1), cells));
      let value = 0;
      let length = 0;
      knapsack.read(mark, cells, (option, copies) => {
        value += copies * options[option]!.value;
        length += copies * options[option]!.length;
        expect(copies).toBeLessThanOrEqual(options[option]!.copies);
      });
      expect(value).toBe(best);
      expect(length).toBeLessThanOrEqual(cells);
    }
  },
);

test("a filling that was held is gone on from as if nothing had been added since", () => {
  const knapsack = new Knapsack();
  knapsack.reset(10);
  knapsack.add(0, 4, 5, 1);
  knapsack.hold();
  knapsack.add(1, 3, 50, 9);
  expect(knapsack.best(10)).toBe(150);
  knapsack.goOn();
  expect(knapsack.best(10)).toBe(5);
  knapsack.add(2, 5, 1, 1);
  const read: number[][] = [];
  knapsack.read(knapsack.mark(), 10, (option, copies) => read.push([option, copies]));
  expect(read).toEqual([
    [2, 1],
    [0, 1],
  ]);
});
