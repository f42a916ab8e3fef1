/** Who lifts a blank. Two together lift two thirds of the sum of their single limits (HSE, read in a quotation). */
import { describe, expect, it } from "vitest";
import { liftingFinding, liftOf } from "../../../src/bill/lines/lifting.ts";
import { Rates } from "../../../src/bill/nouns/rates.ts";
import { kilograms, mm } from "../../../src/units/quantity.ts";

const rates = (values: Record<string, number>) => new Rates("rates", new Map(Object.entries(values)));
const ONE = { "One-person limit": 20 };
const HOIST = { ...ONE, "Hoist above": 40 };

describe("who lifts", () => {
  it.each([
    [20, ONE, "one person"],
    [20.1, ONE, "two people"],
    [26.6, ONE, "two people"], // 2 x 20 x 2/3 = 26.67
    [26.7, ONE, "too heavy"],
    [26.7, HOIST, "two people"], // the shop says from where on it takes the hoist
    [40, HOIST, "two people"],
    [40.1, HOIST, "hoist"],
    [1000, {}, "one person"], // the shop states no limit
  ] as const)("%d kg with the rates %j: %s", (weight, values, lift) =>
    expect(liftOf(kilograms(weight), rates(values))).toBe(lift),
  );
});

describe("what is found about lifting", () => {
  const found = (weight: number, values: Record<string, number>, bend?: number) => {
    const finding = liftingFinding(kilograms(weight), bend === undefined ? undefined : mm(bend), rates(values));
    return finding && `${finding.status} ${finding.kind}`;
  };
  it.each([
    [20, ONE, undefined, undefined],
    [21, ONE, undefined, "note two people"],
    [27, ONE, undefined, "stop too heavy"],
    [41, HOIST, undefined, "check hoist"],
    [5, ONE, 72 * 25.4, undefined],
    [5, ONE, 72.1 * 25.4, "note long bend"],
  ] as const)("%d kg with the rates %j, a bend of %s mm: %s", (weight, values, bend, says) =>
    expect(found(weight, values, bend)).toBe(says),
  );
});
