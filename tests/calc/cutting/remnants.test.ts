import { describe, expect, test } from "vitest";
import { buildProblem } from "../../../src/calc/cutting/build-problem.ts";
import { areaFromGrid, gridDown } from "../../../src/calc/cutting/grid.ts";
import { planCuts } from "../../../src/calc/cutting/index.ts";
import { patternOf } from "../../../src/calc/cutting/pattern.ts";
import { usableArea } from "../../../src/calc/cutting/remnants.ts";
import { reseat } from "../../../src/calc/cutting/reseat.ts";
import { randomBill } from "../../../src/tools/bench/cutting/shop-bills.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, limits, sheet } from "./bills.ts";

const QUICK = { units: 2_000_000 };

describe("what is left of a sheet", () => {
  // A 1000 x 300 blank: 1000 x 100 of the small sheet is scrap; of the large one 1000 x 700 goes back on the rack.
  // Worth nothing it costs 400,000 against 1,000,000 mm2; worth as much as new 400,000 against 300,000. By hand.
  const stock = [sheet("small", 1000, 400), sheet("large", 1000, 1000)];
  test.each([
    [0, "small"],
    [0.8, "small"],
    [0.9, "large"],
    [1, "large"],
  ])("at a worth of %s of new metal the blank is cut from the %s sheet", (remnantWorth, id) => {
    const plan = planCuts([blank("b", 1000, 300, 1)], stock, limits({ leastRemnant: 200, remnantWorth }), QUICK);
    expect(plan.sheets).toEqual([{ stock: id, count: 1 }]);
    expect(plan.value).toBe(plan.sheetArea);
  });

  test("a piece alone on its sheet leaves what lies beside it and what lies before it", () => {
    const problem = buildProblem(
      [blank("b", 600, 300, 1)],
      [sheet("s", 1000, 1000)],
      limits({ leastRemnant: 200, remnantWorth: 1 }),
      {},
    );
    const left = (w: number, h: number) =>
      areaFromGrid(usableArea(problem, { item: 0, turned: false }, [gridDown(mm(w)), gridDown(mm(h))]));
    expect(left(600, 300)).toBe(0);
    expect(left(1000, 300)).toBe(400 * 300);
    expect(left(600, 1000)).toBe(600 * 700);
    expect(left(1000, 1000)).toBe(400 * 1000 + 600 * 700);
    expect(left(700, 1000)).toBe(600 * 700); // 100 mm beside it is scrap
  });

  test("is counted as the cut list leaves it", () => {
    let seen = 0;
    for (let seed = 1; seed <= 30; seed++) {
      const { blanks, stock, limits } = randomBill(seed);
      const untrimmed = stock.map((line) => ({ ...line, trim: mm(0) }));
      const plan = planCuts(blanks, untrimmed, limits, QUICK);
      const problem = buildProblem(blanks, untrimmed, limits, {});
      const area = plan.patterns.reduce((sum, { layout, w, h, repeats }) => {
        return sum + repeats * areaFromGrid(usableArea(problem, layout, [gridDown(w), gridDown(h)]));
      }, 0);
      expect(area).toBeCloseTo(plan.remnantArea, 3);
      if (area > 0) seen++;
    }
    expect(seen).toBeGreaterThan(10);
  });
});

describe("every pattern lies on the kind of sheet that counts least with it", () => {
  const problem = buildProblem(
    [blank("b", 400, 300, 4, "along")],
    [sheet("large", 1000, 1000), sheet("small", 800, 600, { quantity: 1 }), sheet("turned", 800, 600, { grain: "h" })],
    limits(),
    {},
  );
  const four = patternOf(0, {
    direction: 1,
    parts: [0, 1].map(() => ({ direction: 0, parts: [0, 1].map(() => ({ item: 0, turned: false })) })),
  });

  const seated = (repeats: number) =>
    reseat(problem, [{ pattern: four, repeats }], ({ sheet: kind }) => problem.sheets[kind]!.cost);
  test("but not where the stock does not suffice, nor where the grain would run the wrong way", () => {
    expect(seated(1)[0]!.pattern.sheet).toBe(1);
    expect(seated(2)[0]!.pattern.sheet).toBe(0);
  });
});
