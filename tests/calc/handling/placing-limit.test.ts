import { describe, expect, it } from "vitest";
import { liftLimit } from "../../../src/calc/handling/lift-limit.ts";
import { placingLimit } from "../../../src/calc/handling/placing-limit.ts";
import { degrees, hours, mm } from "../../../src/units/quantity.ts";

const inch = (value: number) => mm(value * 25.4);
const lift = {
  horizontal: inch(10),
  vertical: inch(30),
  asymmetry: degrees(0),
  liftsPerMinute: 0.2,
  coupling: "fair" as const,
  hours: hours(1),
};
const at = (horizontal: number, vertical: number, asymmetry = 0) => ({
  horizontal: inch(horizontal),
  vertical: inch(vertical),
  asymmetry: degrees(asymmetry),
});

describe("placing with control (NIOSH 94-110, memory): origin and destination, the smaller", () => {
  it("by hand: from 10 in reach at 30 in to 20 in reach at 40 in: 51 x 0.5 x 0.925 x 1 lb", () => {
    expect(placingLimit(lift, at(20, 40)) / 0.45359237).toBeCloseTo(51 * 0.5 * 0.925, 9);
  });

  it("is the origin's limit where that is the harder end", () => {
    const hard = { ...lift, horizontal: inch(24) };
    expect(placingLimit(hard, at(10, 35))).toBe(liftLimit({ ...hard, travel: inch(5) }));
  });

  it("the same both ways", () => {
    const back = { ...lift, ...at(20, 45, 30) };
    expect(placingLimit(lift, at(20, 45, 30))).toBeCloseTo(placingLimit(back, at(10, 30)), 12);
  });
});
