/**
 * The bound against every pattern there is: all patterns of two levels of a small bill are listed by trial, and the
 * linear program over them is put to an independent solver (HiGHS, as the `highs` package).
 */
import loadHighs from "highs";
import { expect, test } from "vitest";
import { planCuts } from "../../../src/calc/cutting/index.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";
import { blank, limits, sheet, sheetsOf } from "./bills.ts";

const highs = await loadHighs();
const W = 20;
const H = 14;

function bill(seed: number) {
  const unit = randomFrom(seed);
  return Array.from({ length: 4 }, (_, k) => {
    const w = 4 + Math.floor(unit() * 9);
    const h = 3 + Math.floor(unit() * 7);
    return blank(`b${k}`, w, h, 3 + Math.floor(unit() * 12), "along");
  });
}

/** Counts of every item on a sheet cut into strips along `length` and strips into pieces, each set of counts once. */
function patternsOf(sizes: readonly (readonly [along: number, across: number])[], length: number, height: number) {
  const strips: { height: number; counts: number[] }[] = [];
  const fill = (k: number, left: number, counts: number[]) => {
    if (k === sizes.length) {
      const tallest = Math.max(0, ...sizes.map(([, across], i) => (counts[i]! > 0 ? across : 0)));
      if (tallest > 0) strips.push({ height: tallest, counts: [...counts] });
      return;
    }
    for (let n = 0; n * sizes[k]![0] <= left; n++) {
      counts[k] = n;
      fill(k + 1, left - n * sizes[k]![0], counts);
    }
    counts[k] = 0;
  };
  fill(
    0,
    length,
    sizes.map(() => 0),
  );
  const all = new Set<string>();
  const stack = (k: number, left: number, counts: number[]) => {
    all.add(counts.join());
    for (let next = k; next < strips.length; next++) {
      const strip = strips[next]!;
      if (strip.height <= left)
        stack(
          next,
          left - strip.height,
          counts.map((count, i) => count + strip.counts[i]!),
        );
    }
  };
  stack(
    0,
    height,
    sizes.map(() => 0),
  );
  return all;
}

test.each([1, 2, 3, 4, 5, 6])(
  "bill %i: never above the best plan, never below the program over all patterns",
  (seed) => {
    const blanks = bill(seed);
    const size = ({ w, h }: (typeof blanks)[number]): [number, number] => [w, h];
    const all = new Set([
      ...patternsOf(blanks.map(size), W, H),
      ...patternsOf(
        blanks.map((line) => size(line).reverse() as [number, number]),
        H,
        W,
      ),
    ]);
    const patterns = [...all].map((key) => key.split(",").map(Number));
    const rows = blanks.map(({ quantity }, i) => {
      const terms = patterns.flatMap((counts, k) => (counts[i]! > 0 ? [`${counts[i]} x${k}`] : []));
      return ` r${i}: ${terms.join(" + ")} >= ${quantity}`;
    });
    const objective = patterns.flatMap((counts, k) => (counts.some((n) => n > 0) ? [`x${k}`] : [])).join(" + ");
    const program = `Minimize\n obj: ${objective}\nSubject To\n${rows.join("\n")}\nEnd`;
    const least = Math.ceil(highs.solve(program).ObjectiveValue - 1e-6);
    const plan = planCuts(blanks, [sheet("s", W, H)], limits({ stages: 2 }), { units: 30_000_000 });
    // Strips keep to the demand, so that our program may be the closer one.
    expect(plan.bound / (W * H)).toBeGreaterThanOrEqual(least - 1e-9);
    expect(plan.bound / (W * H)).toBeLessThanOrEqual(sheetsOf(plan));
  },
);

test("bars are a bound where the area is a poor one", () => {
  // Two of 11 x 8 fit neither beside nor above each other on 20 x 14: five sheets, by hand; the area says two.
  const plan = planCuts([blank("b", 11, 8, 5, "along")], [sheet("s", W, H)], limits(), { units: 1_000_000 });
  expect(Math.ceil((5 * 11 * 8) / (W * H))).toBe(2);
  expect(plan.bound).toBeGreaterThanOrEqual(3 * W * H);
  expect(sheetsOf(plan)).toBe(5);
});
