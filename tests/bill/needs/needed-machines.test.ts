/** The machines a bill asks for, worked by hand, and what each machine of the shop can do of it. */
import { describe, expect, it } from "vitest";
import { isPlanned } from "../../../src/bill/lines/plan-line.ts";
import { neededMachines } from "../../../src/bill/needs/needed-machines.ts";
import type { Shop } from "../../../src/bill/nouns/shop.ts";
import type { Line } from "../../cells/example/tables.ts";
import { bracket, inches, planned, shopOf } from "../shop.ts";

const of = (lines: readonly Line[], shop: Shop = shopOf()) => {
  const plans = planned(lines, shop).lines.flatMap(({ plan }) => (plan && isPlanned(plan) ? [plan] : []));
  const { sizes, shares } = neededMachines(plans, shop);
  return {
    size: (question: string) => sizes.find((each) => each.question === question)!,
    share: (machine: string) => shares.find(({ question }) => question.startsWith(`Lines that ${machine} `))!,
  };
};
const flat = bracket({ Part: "flat", Flanges: "40", Width: 50, "Bend angles": null });
const long = bracket({ Part: "long", Width: 60, Quantity: 2 });

describe("the smallest machines of a bill", () => {
  it("are what the line asks for that needs most, and say which, of how many that are bent or cut", () => {
    const { size } = of([bracket(), long, flat]);
    const bed = size("Shortest brake bed");
    expect([inches(bed.most!.value), bed.most!.part, bed.of]).toEqual([expect.closeTo(60, 9), "long", 2]);
    const force = size("Smallest brake force, expected");
    expect([force.most!.part, force.of]).toEqual(["long", 2]);
    // Lange's formula grows with the bend: 60 in of it take 15 times what 4 in take.
    expect(force.most!.value / of([bracket()]).size("Smallest brake force, expected").most!.value).toBeCloseTo(15, 6);
    expect(size("Smallest brake force, worst case").most!.value).toBeGreaterThan(force.most!.value);
    const shear = size("Shortest shear");
    expect([inches(shear.most!.value), shear.most!.part, shear.of]).toEqual([expect.closeTo(60, 6), "long", 3]);
    expect(inches(of([flat]).size("Shortest shear").most!.value)).toBeCloseTo(50, 6);
  });
  it("are named by the first of lines that ask for the same", () => {
    const { size } = of([bracket(), bracket({ Part: "HB2" })]);
    expect(size("Shortest brake bed").most!.part).toBe("HB1");
  });
  it("are none where nothing is bent", () => {
    const { size } = of([flat]);
    expect([size("Shortest brake bed").most, size("Shortest brake bed").of]).toEqual([undefined, 0]);
    expect(size("Shortest shear").most).toBeDefined();
  });
});

describe("a machine of the shop", () => {
  it("can do so many lines of a bill, and is said which is the first it cannot", () => {
    const wide = bracket({ Part: "wide", Width: 130 }); // beyond 10 ft, the longest of the invented shop
    const { share } = of([bracket(), wide, { ...wide, Part: "wide too" }, flat]);
    for (const brake of ["Brake 1", "Brake 2"]) {
      const { of: all, able, stuck } = share(brake);
      expect([all, able, stuck]).toEqual([3, 1, "wide"]);
    }
  });
  it("is not blamed for a die that is too weak or a flange that falls in: only for itself", () => {
    const { share } = of([
      bracket({ Flanges: "0.7; 3", Die: "V 2", Punch: "Plain" }),
      bracket({ Part: "weak", Die: "V 1", Punch: "Plain" }),
    ]);
    expect(share("Brake 1")).toMatchObject({ of: 2, able: 2, stuck: undefined });
  });
  it("cuts what its plate says: 1/2 in of A36 on no shear of the shop", () => {
    const shop = shopOf();
    const { share } = of([bracket(), bracket({ Part: "half", Thickness: "1/2", Width: 8 })]);
    const able = shop.shears.map(({ name }) => share(name));
    expect(able.every(({ of: all, stuck }) => all === 2 && stuck !== undefined)).toBe(true);
    expect(able.some((each) => each.able === 1 && each.stuck === "half")).toBe(true);
  });
});
