/** Tools are set up once for all lines of a set and shared by brake minutes. Common practice. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LinePlan } from "../../../src/bill/lines/plan-line.ts";
import { planLines } from "../../../src/bill/lines/plan-lines.ts";
import { setKey } from "../../../src/bill/lines/tools.ts";
import { bendingWorks } from "../../../src/bill/time/bending-work.ts";
import { type Line, rates, SHOP, without } from "../../cells/example/tables.ts";
import { bracket, planned, rowsOf, shopOf } from "../shop.ts";

/** A line's own set-up and nothing on top: what is left is the share of the tools. */
const PLAIN = rates({ Allowance: 1, "Set-up per further bend": 0, "Set-up by bend length": 0 });
const SHOP_NOW = shopOf({ rates: PLAIN });
const SET_UP = 1500; // 25 min of the invented shop's brake station
const LINE_SET_UP = 4.5 * 60; // a line's own

const worksOf = (lines: readonly Line[], shop = SHOP_NOW) => {
  const plans = planLines(rowsOf(...lines), shop).lines.map((plan) => plan as LinePlan);
  return { plans, works: bendingWorks(plans, shop) };
};
const lines = fc
  .array(
    fc.record({
      Thickness: fc.constantFrom("1/4", "3/16"),
      Quantity: fc.integer({ min: 1, max: 300 }),
      Flanges: fc.constantFrom("2; 3", "3; 6; 3", "2; 2"),
      Width: fc.integer({ min: 2, max: 40 }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((all) => all.map((changed, i) => bracket({ ...changed, Part: `P${i}` })));

describe("the set-ups of a brake", () => {
  it("the shares of a set add up to the set, to the second a line is rounded up by", () => {
    fc.assert(
      fc.property(lines, (bill) => {
        const { plans, works } = worksOf(bill);
        for (const key of new Set(plans.map(({ tools }) => setKey(tools!)))) {
          const own = plans.filter(({ tools }) => setKey(tools!) === key);
          const shared = own.reduce((sum, plan) => sum + works.get(plan)!.setUp - LINE_SET_UP, 0);
          expect(shared).toBeGreaterThanOrEqual(SET_UP);
          expect(shared).toBeLessThan(SET_UP + own.length);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("are shared by minutes at the brake: twice the run, twice the share", () => {
    const { plans, works } = worksOf([bracket({ Part: "A", Quantity: 49 }), bracket({ Part: "B", Quantity: 98 })]);
    const [a, b] = plans.map((plan) => works.get(plan)!);
    // 49 and one scrap, 98 and two.
    expect([a!.pieces, b!.pieces]).toEqual([50, 100]);
    expect(a!.setUp).toBe(LINE_SET_UP + Math.ceil((SET_UP * a!.run) / (a!.run + b!.run)));
    expect(b!.setUp - LINE_SET_UP).toBeGreaterThan(1.9 * (a!.setUp - LINE_SET_UP));
    expect([a!.share, b!.share]).toEqual([a!.setUp - LINE_SET_UP, b!.setUp - LINE_SET_UP]);
  });

  it("the order of the lines changes no line's time", () => {
    fc.assert(
      fc.property(lines, (bill) => {
        const times = (of: readonly Line[]) => {
          const { plans, works } = worksOf(of);
          return Object.fromEntries(
            plans.map((plan) => [plan.line.part, works.get(plan)!.setUp + works.get(plan)!.run]),
          );
        };
        expect(times([...bill].reverse())).toEqual(times(bill));
      }),
      { numRuns: 20 },
    );
  });

  it("a shop without a line set-up pays the station's, and the set more by its factor", () => {
    const shop = shopOf({ rates: without(PLAIN, "Brake line set-up") });
    const { plans, works } = worksOf([bracket()], shop);
    expect(works.get(plans[0]!)!.setUp).toBe(Math.ceil(SET_UP + SET_UP * 0.4));
  });
});

describe("people at the brake", () => {
  const people = (Width: number, Thickness = "1/4", Flanges = "2; 2") => {
    const { plans, works } = worksOf([bracket({ Width, Thickness, Flanges, Brake: "Brake 1" })]);
    const { people: count, note } = works.get(plans[0]!)!;
    return [count, note];
  };
  it("a bend over 6 ft takes two, whatever it weighs", () => {
    expect(people(72, "3/16")[0]).toBe(1);
    expect(people(72.5, "3/16")).toEqual([2, "two people, long bend"]);
  });
  it("are one where the piece is short and light, and two by its weight where that asks for them, however long", () => {
    expect(people(4)).toEqual([1, "one person"]);
    // 80 x some 10.5 x 1/4 in of steel of 0.284 lb/in3: about 60 lb, and one person lifts 45.
    expect(people(80, "1/4", "5; 6")).toEqual([2, "two people"]);
  });
});

describe("a tray", () => {
  const tray = (along: string, across: string) =>
    bracket({
      Material: "5052-H32",
      Thickness: "1/8",
      Width: null,
      Flanges: along,
      "Cross flanges": across,
      Holes: 0,
      "Cross angles": 90,
    });
  it("takes two people where the bends of one direction are over 6 ft, whichever direction that is", () => {
    for (const made of [tray("2; 8", "2; 80"), tray("2; 80", "2; 8")]) {
      const { plans, works } = worksOf([made]);
      expect(works.get(plans[0]!)).toMatchObject({ people: 2, note: "two people, long bend" });
    }
  });
  it("is picked up once: of one bend each way the second has the handling of further bends", () => {
    const each = (factor: number) => {
      const shop = shopOf({ rates: rates({ Allowance: 1, "Handling at next bends": factor }) });
      const { plans, works } = worksOf([tray("2; 8", "2; 9")], shop);
      return works.get(plans[0]!)!.each;
    };
    const [whole, half, none] = [each(1), each(0.5), each(0.25)] as const;
    expect(whole - half).toBeGreaterThan(0.5);
    expect(whole - none).toBeCloseTo(1.5 * (whole - half), 6);
  });
});

describe("what is not bent", () => {
  it("has no time at the brake, and asks for no station of it", () => {
    const flat = bracket({ Flanges: "5", "Bend angles": null });
    const shop = shopOf({ stations: without(SHOP.stations, "Brake") });
    expect(worksOf([flat], shop).works.size).toBe(0);
    expect(planned([flat], shop).quoted).toHaveLength(1);
  });
});
