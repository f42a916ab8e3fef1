/**
 * Minutes that a shop believes: six parts against what an estimator of a US shop writes down for them (common practice;
 * no published source has them). The model and the rates of the invented shop must come within a quarter. A 10 ft
 * ledger needs a longer brake and a longer shear than the sample's.
 */
import { describe, expect, it } from "vitest";
import type { BillPlan } from "../../../src/bill/plan.ts";
import { PARTS } from "../../../src/tools/sample/stage-job/bill/job.ts";
import { type Line, rates, SHOP, withCell } from "../../cells/example/tables.ts";
import { planned, quotedOf, shopOf } from "../shop.ts";

const lineOf = (part: string): Line => {
  const found = PARTS.find((each) => each.part === part)!;
  return {
    ...{ Part: found.part, Material: found.material, Thickness: found.thickness, Quantity: found.quantity },
    ...{ Width: found.bendLength, Flanges: found.flanges, "Bend angles": found.bendAngles },
    ...{ Die: found.die, Punch: found.punch, Grain: found.grain },
  };
};
const LEDGER: Line = { ...lineOf("DF-01"), Part: "10 ft ledger", Width: 120 };
const PARTS_OF_IT = ["CS-01", "DF-01", "DF-04", "WW-04", "LC-05"].map(lineOf);

/** Tools that stand in the brake already: what is left is the line's own set-up. */
const shop = shopOf({
  brakes: withCell(SHOP.brakes, "Brake 1", "Between housings", 126),
  shears: withCell(SHOP.shears, "Shear 1", "Cut length", 122),
  stations: withCell(SHOP.stations, "Brake", "Set-up", 0),
});
const plan: BillPlan = planned([...PARTS_OF_IT, LEDGER], shop);
const workOf = (part: string, station: string) =>
  plan.workOf(quotedOf(plan, part)).works.find((work) => work.station.name === station)!;

const WITHIN = 0.25;
const near = (found: number, typical: number) => {
  expect(found).toBeGreaterThanOrEqual(typical * (1 - WITHIN));
  expect(found).toBeLessThanOrEqual(typical * (1 + WITHIN));
};

describe("minutes within a quarter of what a shop believes", () => {
  it.each([
    ["CS-01", 5, 0.2, 0.22, 1],
    ["DF-01", 8, 0.3, 0.5, 1],
    ["DF-04", 10, 0.65, 0.7, 1],
    ["10 ft ledger", 12, 1, undefined, 2],
    ["WW-04", 10, 0.45, 0.4, 1],
    ["LC-05", 18, 0.9, 0.4, 1],
  ] as const)("%s: %d + %d each at the brake, %s at the shear, by %d", (part, setUp, each, shear, people) => {
    const brake = workOf(part, "Brake");
    near(brake.setUp / 60, setUp);
    near(brake.each / 60, each);
    expect(brake.people).toBe(people);
    if (shear !== undefined) near(workOf(part, "Shear").each / 60, shear);
  });
  it("a change of 10 ft tools takes 20 to 30 minutes, the shop's allowance not counted", () => {
    const whole = planned([lineOf("DF-01")]);
    const { setUp } = whole.workOf(quotedOf(whole, "DF-01")).works.find(({ station }) => station.name === "Brake")!;
    const change = (setUp - workOf("DF-01", "Brake").setUp) / 60 / 1.2;
    expect(change).toBeGreaterThanOrEqual(20);
    expect(change).toBeLessThanOrEqual(30);
  });
});

/** Seconds of a hit by the length of its bend: under 2 ft, 2 to 4, 4 to 8, 10 ft. Without the allowance, as a watch has it. */
describe("seconds of a hit", () => {
  const sheets = withCell(SHOP.stock, "Sheet 10 ga long", "Sheets", null);
  const long = shopOf({ brakes: withCell(SHOP.brakes, "Brake 1", "Between housings", 126), stock: sheets });
  const seconds = (Width: number, Flanges: string) => {
    const line = { Part: "A", Material: "A1011 CS", Thickness: "10 ga", Quantity: 10, Width, Flanges };
    const made = planned([{ ...line, "Bend angles": 90, Die: "V 1", Punch: "Plain", Brake: "Brake 1" }], long);
    const brake = made.workOf(quotedOf(made, "A")).works.find(({ station }) => station.name === "Brake")!;
    return brake.each / 1.2;
  };
  it.each([
    [12, 10, 8],
    [36, 18, 12],
    [72, 28, 20],
    [120, 50, 35],
  ])("%d in: first %d, next %d", (width, first, next) => {
    const one = seconds(width, "2; 3");
    near(one, first);
    near(seconds(width, "1.5; 2; 1.5") - one, next);
  });
});

describe("seconds of a cut at the shear, the allowance counted", () => {
  const each = (Width: number) => {
    const flat = {
      Part: "A",
      Material: "A1011 CS",
      Thickness: "10 ga",
      Quantity: 10,
      Width,
      Flanges: "6",
      Shear: "Shear 2",
    };
    const made = planned([{ ...flat, Route: "shear" }], shopOf({ rates: rates({ "Sheet loading": 0 }) }));
    return made.workOf(quotedOf(made, "A")).works[0]!.each / 2.5;
  };
  it.each([
    [6, 7],
    [48, 12],
    [120, 35],
  ])("%d in: %d", (width, typical) => {
    near(each(width), typical);
  });
});

/**
 * T = 2 (1 + Nb) + 0.05 (2 + Nb) (L + W) s, L and W in cm: the press brake cycle of Boothroyd, Dewhurst & Knight, Product
 * Design for Manufacture and Assembly, ch. 9, after Ostwald (memory, unverified; every hit positioned, no walking). A job
 * shop is slower on small parts, so that half to double of it is what can be asked.
 */
describe("the textbook's cycle", () => {
  it.each([
    ["DF-01", 4.65, 24, 1],
    ["DF-04", 6.5, 46, 2],
    ["WW-04", 8.06, 4, 2],
    ["LC-05", 10.99, 12, 4],
  ] as const)("%s", (part, length, width, bends) => {
    const cycle = 2 * (1 + bends) + 0.05 * (2 + bends) * (length + width) * 2.54;
    const found = workOf(part, "Brake").each / 1.2;
    expect(found).toBeGreaterThan(cycle / 2);
    expect(found).toBeLessThan(cycle * 2);
  });
});

it("deburring takes 0.15 to 0.2 minutes a foot", () => {
  const made = planned([{ ...lineOf("DF-01"), Operations: "Deburr" }]);
  const { each } = made.workOf(quotedOf(made, "DF-01")).works.find(({ station }) => station.name === "Deburr")!;
  const feet = (2 * (4.647 + 24)) / 12;
  expect(each / 60 / 1.2 / feet).toBeGreaterThanOrEqual(0.15);
  expect(each / 60 / 1.2 / feet).toBeLessThanOrEqual(0.2);
});
