import { expect, it } from "vitest";
import { rootBetween } from "../../../../src/calc/bend/mechanics/root.ts";

/** The root, and where the function was asked. */
function solved(f: (x: number) => number, low: number, high: number, tolerance: number) {
  const asked: number[] = [];
  const watched = (x: number) => {
    asked.push(x);
    return f(x);
  };
  return { root: rootBetween(watched, [low, f(low)], [high, f(high)], tolerance), asked };
}

// Reference: closed forms. Steps: order 1.44 (Dowell & Jarratt 1971, memory), where a bisection would take 40 and more; from
// afar only the bisection in between gets on.
it.each([
  ["a square root", (x: number) => x * x - 2, [0, 2], Math.SQRT2, 10],
  ["a square root from the other side", (x: number) => 2 - x * x, [0, 2], Math.SQRT2, 10],
  ["a logarithm", (x: number) => Math.exp(x) - 5, [-4, 10], Math.log(5), 18],
  ["a logarithm from afar", (x: number) => Math.exp(x) - 5, [-40, 30], Math.log(5), 38],
  ["below zero", (x: number) => x ** 3 + 8, [-5, 3], -2, 14],
  ["an arc", (x: number) => Math.sin(x) - 0.3, [-1.5, 1.2], Math.asin(0.3), 6],
  ["a flat start", (x: number) => x ** 10 - 1, [0, 1.3], 1, 15],
  ["a flat start, falling", (x: number) => 1 - x ** 10, [0, 1.3], 1, 15],
  ["a flat end", (x: number) => 1 - (1.3 - x) ** 10, [0, 1.3], 0.3, 15],
] as const)("%s: the root to the tolerance, in few steps between the ends", (_, f, [low, high], root, most) => {
  const answer = solved(f, low, high, 1e-12);
  expect(Math.abs(answer.root - root)).toBeLessThan(1e-11);
  expect(answer.asked.length).toBeLessThanOrEqual(most);
  for (const x of answer.asked) expect(x >= low && x <= high).toBe(true);
});

it.each([
  [3, 3.5],
  [-0.25, 0.25],
])("asks nothing between %d and %d, no farther apart than the tolerance", (low, high) => {
  const { root, asked } = solved((x) => x - low - 0.1, low, high, 0.5);
  expect(root).toBe(low);
  expect(asked).toEqual([]);
});

it("ends where the tolerance cannot be met", () => {
  const { root, asked } = solved((x) => x * x - 2, 0, 2, 0);
  expect(Math.abs(root - Math.SQRT2)).toBeLessThan(1e-15);
  expect(asked.length).toBeLessThanOrEqual(100);
});
