import { describe, expect, it } from "vitest";
import { blanksNeeded } from "../../../src/calc/cost/blanks-needed.ts";
import { toCent, upToCent } from "../../../src/calc/cost/cent.ts";
import { charges } from "../../../src/calc/cost/charges.ts";
import { laborCost } from "../../../src/calc/cost/labor-cost.ts";
import { linePrice } from "../../../src/calc/cost/line-price.ts";
import { priceBreaks } from "../../../src/calc/cost/price-breaks.ts";
import { priceForMargin } from "../../../src/calc/cost/price-for-margin.ts";
import { seconds } from "../../../src/calc/time/seconds.ts";
import { money } from "../../../src/units/quantity.ts";
import type { Working } from "../../../src/units/working.ts";

describe("cents", () => {
  it.each([
    [1.001, 1.01],
    [1.01, 1.01],
    [0.1 + 0.2, 0.3],
    [19.99 * 3, 59.97],
    [0, 0],
  ])("%d up to the cent is %d", (amount, cents) => {
    expect(upToCent(amount)).toBe(cents);
  });

  it("sums of cents stay cents", () => {
    expect(toCent(0.1 + 0.7)).toBe(0.8);
  });
});

describe("margin is a share of the price, mark-up one of the cost", () => {
  // By definition: price - cost = margin x price; 70 at 30 % margin is 100, with 30 % mark-up 91.
  it.each([
    [70, 0.3, "margin", 100],
    [70, 0.3, "markup", 91],
    [10, 0, "margin", 10],
    [1, 0.35, "margin", 1.54],
  ] as const)("%d at %d %s", (cost, share, basis, price) => {
    expect(priceForMargin(money(cost), share, basis)).toBe(price);
  });
});

describe("blanks", () => {
  it.each([
    [20, 0.02, 1, 21],
    [24, 0.02, 0, 24],
    [25, 0.02, 0, 26],
    [50, 0.02, 1, 52],
    [76, 0.02, 0, 78],
    [7, 0, 0, 7],
  ])("%d ordered, %d scrap, %d first pieces: %d", (ordered, scrap, first, blanks) => {
    expect(blanksNeeded(ordered, scrap, first)).toBe(blanks);
  });
});

describe("parts of a price, by hand", () => {
  it("labor with a second person", () => {
    expect(laborCost(seconds(1800), money(60), 1, money(35))).toBe(30);
    expect(laborCost(seconds(1800), money(60), 2, money(35))).toBe(47.5);
  });

  it("the line is unit price x quantity, and the total the sum of the lines", () => {
    const cost = { material: money(10), labor: money(4), setUp: money(6), outside: money(3), extras: money(0) };
    const line = linePrice(3, cost, {
      overhead: 0.5,
      profit: { share: 0.2, basis: "margin" },
      minimum: money(0),
    });
    // 10 + 4 + 6 + 3 + 5 = 28; 28 / 3 / 0.8 = 11.666..., up to 11.67; x 3 = 35.01
    expect(line).toMatchObject({ overhead: 5, cost: 28, unitPrice: 11.67, price: 35.01 });
  });

  it("first up to the minimum, then the rush on all of it", () => {
    const terms = { minimum: money(75), rush: 0.2, crate: money(0), truck: money(0), tax: 0 };
    expect(charges([money(30), money(20.5)], terms)).toMatchObject({ minimum: 24.5, rush: 15, total: 90 });
    expect(charges([money(100)], { ...terms, rush: 0 })).toMatchObject({ minimum: 0, rush: 0, total: 100 });
  });

  it("crate and truck, then tax on all of it", () => {
    const terms = { minimum: money(75), rush: 0, crate: money(40), truck: money(60), tax: 0.0625 };
    // By hand: 75 + 40 + 60 = 175; 6.25 % of it is 10.9375.
    expect(charges([money(50)], terms)).toEqual({
      ...{ minimum: 25, rush: 0, crate: 40, truck: 60, tax: 10.94, total: 185.94 },
    });
    // Nothing quoted: nothing to pack or to drive.
    expect(charges([], terms)).toMatchObject({ crate: 0, truck: 0 });
  });

  it("a line is never below its minimum", () => {
    const cost = { material: money(2), labor: money(1), setUp: money(1), outside: money(0), extras: money(1) };
    const asked = { overhead: 0, profit: { share: 0, basis: "margin" as const }, minimum: money(20) };
    expect(linePrice(3, cost, asked)).toMatchObject({ cost: 5, unitPrice: 6.67, price: 20.01 });
  });

  it("breaks spread the set-up", () => {
    expect(priceBreaks([1, 7], { setUp: money(70), each: money(0) }, { share: 0.3, basis: "margin" })).toEqual([
      { quantity: 1, unitCost: 70, unitPrice: 100, price: 100 },
      { quantity: 7, unitCost: 10, unitPrice: 14.29, price: 100.03 },
    ]);
  });

  it("breaks add what each piece costs to its share of the set-up", () => {
    // By hand: 70 / 10 + 3 = 10 a piece; 10 x 1.2 = 12; 10 x 12 = 120.
    expect(priceBreaks([10], { setUp: money(70), each: money(3) }, { share: 0.2, basis: "markup" })).toEqual([
      { quantity: 10, unitCost: 10, unitPrice: 12, price: 120 },
    ]);
  });

  it("the working names the basis that was used", () => {
    const said = (basis: "margin" | "markup") => {
      const work: Working = [];
      priceForMargin(money(70), 0.3, basis, work);
      return JSON.stringify(work);
    };
    expect(said("margin")).toMatch(/leaves the margin.*1 - margin/);
    expect(said("markup")).toMatch(/cost and mark-up.*1 \+ mark-up/);
  });
});
