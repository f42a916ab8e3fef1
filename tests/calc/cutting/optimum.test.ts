import highsLoader from "highs";
import { describe, expect, test } from "vitest";
import { planCuts } from "../../../src/calc/cutting/index.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";
import { blank, limits, sheet, sheetsOf } from "./bills.ts";

/**
 * Fewest sheets for strips along w and pieces sized in their strip, no turning, as an integer program over strips opened
 * by their tallest piece (Lodi, Martello & Vigo, J. Comb. Optim. 8:363, 2004; memory, unverified), solved by HiGHS.
 */
async function provedOptimum(w: number, h: number, pieces: readonly (readonly [number, number])[]): Promise<number> {
  const order = [...pieces].sort((a, b) => b[1] - a[1]);
  const n = order.length;
  const rows: string[] = [];
  const binary: string[] = [];
  for (let j = 0; j < n; j++) {
    binary.push(`y${j}`, `q${j}`);
    const opened = Array.from({ length: j }, (_, i) => `x${i}_${j}`);
    binary.push(...opened);
    rows.push(`${[...opened, `y${j}`].join(" + ")} = 1`);
  }
  for (let i = 0; i < n; i++) {
    const inside = Array.from({ length: n - i - 1 }, (_, k) => `${order[i + k + 1]![0]} x${i}_${i + k + 1}`);
    if (inside.length > 0) rows.push(`${inside.join(" + ")} - ${w - order[i]![0]} y${i} <= 0`);
    const earlier = Array.from({ length: i }, (_, k) => `z${k}_${i}`);
    binary.push(...earlier);
    rows.push(`${[...earlier, `q${i}`].join(" + ")} - y${i} = 0`);
    const over = Array.from({ length: n - i - 1 }, (_, k) => `${order[i + k + 1]![1]} z${i}_${i + k + 1}`);
    if (over.length > 0) rows.push(`${over.join(" + ")} - ${h - order[i]![1]} q${i} <= 0`);
  }
  const model = [
    "Minimize",
    ` obj: ${Array.from({ length: n }, (_, k) => `q${k}`).join(" + ")}`,
    "Subject To",
    ...rows.map((row, r) => ` c${r}: ${row}`),
    "Binary",
    ` ${binary.join(" ")}`,
    "End",
  ].join("\n");
  const highs = await highsLoader();
  const answer = highs.solve(model);
  expect(answer.Status).toBe("Optimal");
  return Math.round(answer.ObjectiveValue);
}

describe("small bills whose least number of sheets an integer program proves", () => {
  test.each(Array.from({ length: 12 }, (_, k) => k + 1))(
    "bill %i: bound <= optimum <= plan, and the plan reaches it",
    async (seed) => {
      const unit = randomFrom(seed);
      const w = 60 + Math.floor(unit() * 60);
      const h = 40 + Math.floor(unit() * 60);
      const pieces = Array.from({ length: 9 }, () => {
        return [10 + Math.floor(unit() * w * 0.6), 8 + Math.floor(unit() * h * 0.6)] as const;
      });
      const optimum = await provedOptimum(w, h, pieces);
      const plan = planCuts(
        pieces.map(([x, y], k) => blank(`p${k}`, x, y, 1, "along")),
        [sheet("s", w, h)],
        limits({ stages: 2 }),
        { units: 20_000_000, firstCut: "along w" },
      );
      expect(plan.bound / (w * h)).toBeLessThanOrEqual(optimum + 1e-9);
      expect(sheetsOf(plan)).toBeGreaterThanOrEqual(optimum);
      expect(sheetsOf(plan)).toBe(optimum);
    },
  );
});
