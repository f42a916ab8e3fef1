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

/** Some options of one filling after another, by the seed. */
const drawn = (unit: () => number, most: number): Option[] =>
  Array.from({ length: 1 + Math.floor(unit() * most) }, () => ({
    length: 1 + Math.floor(unit() * 12),
    value: 1 + Math.floor(unit() * 20),
    copies: 1 + Math.floor(unit() * 9),
  }));
const readOf = (knapsack: Knapsack, mark: number, cells: number): number[][] => {
  const read: number[][] = [];
  knapsack.read(mark, cells, (option, copies) => read.push([option, copies]));
  return read;
};

test("one knapsack that is emptied fills anew, larger or smaller, at every length as if it were the first", () => {
  const unit = randomFrom(32);
  const knapsack = new Knapsack();
  for (const cells of [14, 30, 9, 30, 31, 12]) {
    knapsack.reset(cells);
    expect(knapsack.best(cells)).toBe(0);
    const options = drawn(unit, 5);
    for (const [k, { length, value, copies }] of options.entries()) knapsack.add(k, length, value, copies);
    for (let x = 0; x <= cells; x++) {
      expect(knapsack.best(x)).toBe(byTrying(options, x));
      const read = readOf(knapsack, knapsack.mark(), x);
      expect(read.reduce((sum, [option, copies]) => sum + copies! * options[option!]!.value, 0)).toBe(knapsack.best(x));
      expect(read.reduce((sum, [option, copies]) => sum + copies! * options[option!]!.length, 0)).toBeLessThanOrEqual(
        x,
      );
    }
  }
});

test("a filling that is held is gone on from in a knapsack of any size, and again and again", () => {
  const unit = randomFrom(7);
  const knapsack = new Knapsack();
  knapsack.reset(12);
  knapsack.hold();
  // Larger in between, so that what is held is shorter than the store that it is taken from.
  for (const cells of [12, 20, 12, 25]) {
    knapsack.reset(40);
    knapsack.reset(cells);
    const first = drawn(unit, 3);
    for (const [k, { length, value, copies }] of first.entries()) knapsack.add(k, length, value, copies);
    knapsack.hold();
    for (let again = 0; again < 3; again++) {
      knapsack.goOn();
      const more = drawn(unit, 3);
      for (const [k, { length, value, copies }] of more.entries()) knapsack.add(100 + k, length, value, copies);
      for (let x = 0; x <= cells; x++) expect(knapsack.best(x)).toBe(byTrying([...first, ...more], x));
      const worth = (option: number) => (option < 100 ? first[option]! : more[option - 100]!).value;
      const read = readOf(knapsack, knapsack.mark(), cells);
      expect(read.reduce((sum, [option, copies]) => sum + copies! * worth(option!), 0)).toBe(knapsack.best(cells));
    }
  }
});

test("an option as long as the knapsack fits, a longer one and one of no copy do not, and below nothing there is nothing", () => {
  const knapsack = new Knapsack();
  knapsack.reset(10);
  knapsack.add(0, 11, 99, 1);
  knapsack.add(1, 3, 99, 0);
  expect([knapsack.best(10), knapsack.mark()]).toEqual([0, -1]);
  knapsack.add(2, 10, 7, 1);
  expect([knapsack.best(10), knapsack.best(9), knapsack.best(-1)]).toEqual([7, 0, -Infinity]);
  expect(readOf(knapsack, knapsack.mark(), 10)).toEqual([[2, 1]]);
  expect(readOf(knapsack, knapsack.mark(), 9)).toEqual([]);
});

test("more options than it was made for are all taken and all read back", () => {
  const knapsack = new Knapsack();
  const many = 700;
  knapsack.reset(many);
  for (let k = 0; k < many; k++) knapsack.add(k, 1, 1 + (k % 3), 1);
  expect(knapsack.best(many)).toBe(Array.from({ length: many }, (_, k) => 1 + (k % 3)).reduce((a, b) => a + b));
  const read = readOf(knapsack, knapsack.mark(), many);
  expect(read.map(([option]) => option).sort((a, b) => a! - b!)).toEqual(Array.from({ length: many }, (_, k) => k));
});

test("its work is counted by the cells that are gone through, and begins anew with it", () => {
  const knapsack = new Knapsack();
  const work = (copies: number, length: number) => {
    knapsack.reset(99);
    knapsack.add(0, length, 1, copies);
    return knapsack.work;
  };
  const once = work(1, 10); // 90 cells of 100 hold it
  expect(once).toBeGreaterThan(0);
  expect(work(1, 40)).toBeCloseTo((once * 60) / 90, 9);
  expect(work(3, 10)).toBeCloseTo((once * (90 + 80)) / 90, 9); // shares of 1 and 2
  expect(work(20, 10)).toBeCloseTo((once * 100) / 90, 9); // as many as find room: one pass of all
});
