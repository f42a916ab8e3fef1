import { describe, expect, test } from "vitest";
import { planCuts, replay } from "../../../src/calc/cutting/index.ts";
import { randomBill, shopBill } from "../../../src/tools/bench/cutting/shop-bills.ts";
import { mm, money } from "../../../src/units/quantity.ts";
import { blank, limits, sheet, sheetsOf } from "./bills.ts";

const QUICK = { units: 3_000_000 };

describe("planCuts on bills whose answer is plain", () => {
  test("sixteen quarter-by-quarter plates fill one sheet without waste", () => {
    const plan = planCuts([blank("q", 250, 200, 16)], [sheet("s", 1000, 800)], limits(), QUICK);
    expect(sheetsOf(plan)).toBe(1);
    expect(plan).toMatchObject({ gap: 0, stopReason: "bound", leftOut: [] });
    // Three strips fall and one stays, and so across each of the four strips: two settings.
    expect(plan.settings).toBe(2);
  });

  test("a blank as large as its sheet needs no cut", () => {
    const plan = planCuts([blank("all", 1000, 800, 2)], [sheet("s", 1000, 800)], limits(), QUICK);
    expect(sheetsOf(plan)).toBe(2);
    expect(plan.cuts).toEqual([]);
  });

  test("grain decides which way a blank may lie, and so how many fit", () => {
    const stock = [sheet("s", 1000, 300)];
    const count = (grain: "along" | "across") =>
      sheetsOf(planCuts([blank("b", 300, 100, 9, grain)], stock, limits(), QUICK));
    // Along: 3 in a row, 3 rows, 9 on a sheet. Across: 10 in one row, 9 asked.
    expect(count("along")).toBe(1);
    expect(count("across")).toBe(1);
    const half = [sheet("s", 500, 150)];
    expect(sheetsOf(planCuts([blank("b", 300, 100, 2, "along")], half, limits(), QUICK))).toBe(2);
  });

  test("the cheaper of two sheets is pulled when money is counted, the smaller when metal is", () => {
    const stock = [
      sheet("small but dear", 1000, 500, { price: money(90) }),
      sheet("large but cheap", 1200, 600, { price: money(50) }),
    ];
    const pulled = (least: "metal" | "money") =>
      planCuts([blank("b", 900, 400, 1)], stock, limits(), { ...QUICK, least }).sheets.map(({ stock }) => stock);
    expect(pulled("money")).toEqual(["large but cheap"]);
    expect(pulled("metal")).toEqual(["small but dear"]);
  });

  test("a remnant on stock is used before a full sheet", () => {
    const stock = [sheet("full", 2500, 1250), sheet("offcut", 700, 500, { quantity: 1, remnant: true })];
    const plan = planCuts([blank("b", 340, 240, 4)], stock, limits(), QUICK);
    expect(plan.sheets).toEqual([{ stock: "offcut", count: 1 }]);
  });

  test("what the stock cannot give is left out and said so", () => {
    const plan = planCuts([blank("b", 400, 400, 9)], [sheet("s", 1000, 1000, { quantity: 2 })], limits(), QUICK);
    expect(plan.leftOut).toEqual([{ blank: "b", count: 1, reason: "the stock on hand does not suffice" }]);
  });

  test("a left-over of the stated size is kept as a remnant", () => {
    const plan = planCuts([blank("b", 1000, 300, 1)], [sheet("s", 1000, 800)], limits({ leastRemnant: 200 }), QUICK);
    expect(plan.remnants).toEqual([{ piece: "1.2", w: 1000, h: 500, count: 1 }]);
  });
});

describe("blanks that cannot be cut are named with the limit they break, the rest is planned", () => {
  const good = blank("good", 300, 200, 3);
  const stock = [sheet("s", 2000, 1000, { trim: mm(5) })];
  test.each([
    [
      "larger than every sheet",
      blank("bad", 1999, 400, 2),
      {},
      /larger than every sheet on stock after its edge trims/,
    ],
    ["against the grain", blank("bad", 1500, 400, 2, "across"), {}, /only across the grain it must keep/],
    ["beyond the reach, with too little over to cut off", blank("bad", 800, 700, 1), { reach: 650 }, /gauge reach/],
    [
      "too narrow to drop and too narrow to hold",
      blank("bad", 20, 20, 1),
      { leastDrop: 25, leastHold: 25 },
      /least drop/,
    ],
    [
      "no blade long enough",
      blank("bad", 1500, 900, 1),
      { longestCut: 1000, reach: 700 },
      /longest cut|gauge reach|several/,
    ],
  ])("%s", (_, bad, more, reason) => {
    const plan = planCuts([good, bad], stock, limits(more), QUICK);
    expect(plan.leftOut).toHaveLength(1);
    expect(plan.leftOut[0]).toMatchObject({ blank: "bad", count: bad.quantity });
    expect(plan.leftOut[0]!.reason).toMatch(reason);
    expect(plan.patterns.flatMap(({ yields }) => yields.map((line) => line.blank))).toContain("good");
  });
});

describe("the same everywhere", () => {
  test("input and work units alone decide the plan", () => {
    const { blanks, stock, limits } = shopBill(3);
    const once = planCuts(blanks, stock, limits, { units: 20_000_000 });
    const again = planCuts(blanks, stock, limits, { units: 20_000_000, stop: () => false });
    expect(again).toEqual(once);
    expect(once.stopReason).toBe("units");
  });

  test("a plan cut short by the clock says so and is whole all the same", () => {
    const { blanks, stock, limits } = shopBill(3);
    const plan = planCuts(blanks, stock, limits, { stop: () => true });
    expect(plan.stopReason).toBe("time");
    expect(plan.warnings).toHaveLength(1);
    expect(plan.leftOut).toEqual([]);
  });

  test("more work never makes the plan worse", () => {
    const { blanks, stock, limits } = shopBill(2);
    const values = [1e6, 3e7, 1e8].map((units) => planCuts(blanks, stock, limits, { units }).value);
    expect([...values].sort((a, b) => b - a)).toEqual(values);
  });
});

test.each(Array.from({ length: 40 }, (_, k) => 2000 + k))(
  "random bill %i with random limits passes the replay",
  (seed) => {
    const bill = randomBill(seed);
    const plan = planCuts(bill.blanks, bill.stock, bill.limits, QUICK);
    expect(replay(plan, bill.blanks, bill.stock, bill.limits)).toEqual([]);
    expect(plan.value).toBeGreaterThanOrEqual(plan.bound * (1 - 1e-9));
  },
);

describe("planCuts refuses what no plan can be made from", () => {
  const b = blank("b", 100, 100, 1);
  const s = sheet("s", 1000, 1000);
  test.each([
    ["no blanks", [], [s], {}, "blanks must be at least one line; got none"],
    ["no stock", [b], [], {}, "stock must be at least one line; got none"],
    [
      "a blank without width",
      [{ ...b, w: mm(0) }],
      [s],
      {},
      "b first size must be above 0 and at most 100000 mm; got 0",
    ],
    [
      "a size that is no number",
      [{ ...b, h: mm(Number.NaN) }],
      [s],
      {},
      "b second size must be above 0 and at most 100000 mm; got NaN",
    ],
    ["half a piece", [{ ...b, quantity: 0.5 }], [s], {}, "b quantity must be a whole number, 0 or more; got 0.5"],
    [
      "two sizes of one part",
      [b, { ...b, w: mm(90) }],
      [s],
      {},
      "b size and grain must be the same in every line of the part; got 90 x 100 free beside 100 x 100 free",
    ],
    [
      "a trim as wide as the sheet",
      [b],
      [{ ...s, trim: mm(1000) }],
      {},
      "s trim must be 0 or more and less than the sheet; got 1000",
    ],
    ["one stage", [b], [s], { stages: 1 }, "stages must be a whole number, 2 or more; got 1"],
    ["a blade of no length", [b], [s], { longestCut: 0 }, "longest cut must be above 0; got 0"],
    [
      "too many pieces",
      [{ ...b, quantity: 30_000 }],
      [s],
      {},
      "pieces in all must be at most 20000; got 30000; plan the bill in parts",
    ],
  ])("%s", (_, blanks, stock, more, message) => {
    expect(() => planCuts(blanks, stock, limits(more))).toThrow(expect.objectContaining({ code: "#VALUE!", message }));
  });
});
