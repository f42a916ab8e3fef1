/** What a line costs and what is asked: metal by the sheets that are pulled, and no line pays for another's place. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SheetUse } from "../../../src/bill/cut/plan-cutting.ts";
import { withoutColor } from "../../../src/bill/money/finish-lots.ts";
import { atCommonWorth, metalShares } from "../../../src/bill/money/metal.ts";
import type { BillPlan } from "../../../src/bill/plan.ts";
import { job, type Line, NONSENSE, rates, SHOP, withCell, without } from "../../cells/example/tables.ts";
import { bracket, planned, quotedOf, shopOf } from "../shop.ts";

/** Nothing on top of the sheets, and nothing beside the lines. */
const NO_SHARES = { "Scrap allowance": 0, "Material mark-up": 0 };
const prices = (plan: BillPlan) => Object.fromEntries(plan.quoted.map((line) => [line.part, plan.priceOf(line)]));
const lines = fc
  .array(
    fc.record({
      Material: fc.constantFrom("A36", "5052-H32", "304"),
      Thickness: fc.constantFrom("1/4", "1/8"),
      Quantity: fc.integer({ min: 1, max: 200 }),
      Width: fc.integer({ min: 2, max: 30 }),
      Flanges: fc.constantFrom("2; 3", "10", "3; 8; 3"),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((all) =>
    all.map((one, i) =>
      bracket({ ...one, Part: `P${i}`, "Bend angles": one.Flanges.includes(";") ? 90 : null, Holes: 0 }),
    ),
  );

describe("the money of a bill", () => {
  it("metal of all lines is the price of all sheets less what the remnants are worth; prices add up to the total", () => {
    fc.assert(
      fc.property(lines, (bill) => {
        const plan = planned(bill, shopOf({ rates: rates({ ...NO_SHARES, "Minimum charge": 0, "Cut effort": 0.01 }) }));
        const all = Object.values(prices(plan));
        const sheets = plan.groups
          .flatMap(({ uses }) => uses)
          .reduce((sum, { sheet, price, remnants }) => {
            // By hand: a remnant of share a is worth a w^(1 - a) of the sheet.
            const kept = remnants.reduce((credit, { length, width }) => {
              const share = (length * width) / (sheet.length * sheet.width);
              return credit + sheet.price! * share * sheet.remnantWorth ** (1 - share);
            }, 0);
            return sum + price! - kept;
          }, 0);
        expect(all.reduce((sum, { material }) => sum + material, 0)).toBeCloseTo(sheets, 6);
        expect(all.reduce((sum, { price }) => sum + price, 0)).toBeCloseTo(plan.money.charges.total, 6);
      }),
      { numRuns: 15 },
    );
  });
  it("the order of the lines and of the stock changes no price", () => {
    fc.assert(
      fc.property(lines, (bill) => {
        const stock = [SHOP.stock[0]!, ...SHOP.stock.slice(1).reverse()];
        const quick = { rates: rates({ "Cut effort": 0.01 }) };
        const turned = planned([...bill].reverse(), shopOf({ ...quick, stock }));
        const there = prices(planned(bill, shopOf(quick)));
        for (const [part, { price, cost }] of Object.entries(prices(turned))) {
          expect(price).toBe(there[part]!.price);
          expect(cost).toBeCloseTo(there[part]!.cost, 9);
        }
      }),
      { numRuns: 10 },
    );
  });
  it("metal is shared by the area of the blanks", () => {
    const plan = planned([bracket(), bracket({ Part: "double", Width: 8 })]);
    const found = prices(plan);
    expect(found["double"]!.material).toBeCloseTo(2 * found["HB1"]!.material, 9);
  });
});

describe("eight small feet of 1/4 stainless, for which a sheet of 800 is pulled", () => {
  // By an estimator's hand 20 to 45 each at 75 to 110 an hour, where a whole sheet made 159 of them (common practice).
  const foot = bracket({ Material: "304", Quantity: 8, Flanges: "2; 4", Holes: 0 });
  const strong = withCell(SHOP.shears, "Shear 1", "Rated thickness", 0.5);
  const priceOf = (Route: string, worth: number | null) => {
    const sheet = withCell(
      withCell(SHOP.stock, "Stainless 1/4", "Price", 800),
      "Stainless 1/4",
      "Remnant worth",
      worth,
    );
    const plan = planned([{ ...foot, Route }], shopOf({ stock: sheet, shears: strong }));
    return plan.priceOf(quotedOf(plan, "HB1")).unitPrice;
  };
  it.each([
    ["shear", 0.5],
    ["shear", 0.25],
    ["waterjet", 0.5],
    ["waterjet", 0.25],
  ] as const)("on the %s, remnants at %d", (route, worth) => {
    expect(priceOf(route, worth)).toBeGreaterThanOrEqual(20);
    expect(priceOf(route, worth)).toBeLessThanOrEqual(45);
  });
  it("a sheet that is bought for this job is charged whole", () => {
    expect(priceOf("shear", 0)).toBeGreaterThan(100);
  });
  it("a shop that says nothing of remnants has what is common practice, and the price says so", () => {
    expect(priceOf("shear", null)).toBe(priceOf("shear", 0.5));
    const plan = planned([foot], shopOf({ stock: withCell(SHOP.stock, "Stainless 1/4", "Remnant worth", null) }));
    expect([...plan.money.commonWorth].map(({ line }) => line.part)).toEqual(["HB1"]);
    expect(planned([foot]).money.commonWorth.size).toBe(0);
  });
  it("whole sheets are the shop's choice", () => {
    const whole = planned([foot], shopOf({ rates: rates({ "Charge whole sheets": 1 }) }));
    const share = planned([foot]);
    const metal = (plan: BillPlan) => plan.priceOf(quotedOf(plan, "HB1")).material;
    // 791 a sheet, 2 % scrap, 10 % on metal.
    expect(metal(whole)).toBeCloseTo(791 * 1.02 * 1.1, 6);
    expect(metal(share)).toBeLessThan(metal(whole) / 4);
  });
});

describe("one lot of coating", () => {
  const coated = (lines: readonly Line[]) => {
    const plan = planned(lines.map((line, i) => bracket({ Part: `C${i}`, Operations: "Coating", ...line })));
    return plan.quoted.map((line) => plan.priceOf(line).outside / 1.1);
  };
  it("of one color and delivery pays one minimum, shared by area", () => {
    const [a, b] = coated([{ Finish: "Black" }, { Finish: " black", Width: 8 }]);
    expect(a! + b!).toBeCloseTo(85, 9);
    expect(b!).toBeCloseTo(2 * a!, 9);
  });
  it("another color, or another delivery, is another lot", () => {
    expect(coated([{ Finish: "Black" }, { Finish: "Red" }])).toEqual([85, 85].map((each) => expect.closeTo(each, 9)));
    const days = [{ Due: 46_090 }, { Due: 46_091 }];
    expect(coated(days)).toEqual([85, 85].map((each) => expect.closeTo(each, 9)));
  });
});

describe("a vendor's lot", () => {
  it("without a price by size is shared evenly: its minimum of 85, by two lines of whatever size", () => {
    const stations = withCell(SHOP.stations, "Coating", "Price each", 0);
    const lines = [{ Part: "A" }, { Part: "B", Width: 8 }].map((line) => bracket({ ...line, Operations: "Coating" }));
    const plan = planned(lines, shopOf({ stations }));
    for (const line of plan.quoted) expect(plan.priceOf(line).outside / 1.1).toBeCloseTo(85 / 2, 9);
  });
  it("without a color is named where the same vendor has others with one, and not else", () => {
    const named = (...lines: Line[]) => {
      const plan = planned(lines.map((line, i) => bracket({ Part: `C${i}`, ...line })));
      const outside = plan.quoted.map((line) => ({ plan: line.plan, outside: plan.workOf(line).outside }));
      return withoutColor(outside).map(({ line }) => line.part);
    };
    const [black, blank] = [
      { Operations: "Coating", Finish: "Black" },
      { Operations: "Coating", Finish: " " },
    ];
    expect(named(black, blank, {}, blank)).toEqual(["C1", "C3"]);
    expect(named(blank, blank)).toEqual([]);
    expect(named(black, black)).toEqual([]);
    expect(named({ Finish: "Black" }, blank)).toEqual([]); // what has a color goes to no vendor
  });
});

describe("what is left of a sheet", () => {
  it("is said to be worth what is common only where something is left and Stock does not say what it is worth", () => {
    const { groups } = planned([bracket()]);
    const [group] = groups;
    const [use] = group!.uses;
    const of = (remnants: SheetUse["remnants"], saysRemnantWorth: boolean) =>
      atCommonWorth([{ ...group!, uses: [{ ...use!, remnants, sheet: { ...use!.sheet, saysRemnantWorth } }] }]).size;
    const left = use!.remnants;
    const unsaid = (each: SheetUse) => ({ ...each, sheet: { ...each.sheet, saysRemnantWorth: false } });
    expect(left.length).toBeGreaterThan(0);
    expect([of(left, false), of(left, true), of([], false), of([], true)]).toEqual([1, 0, 0, 0]);
    const bare = { ...use!, remnants: [] };
    expect(atCommonWorth([{ ...group!, uses: [bare, use!].map(unsaid) }]).size).toBe(1);
  });
});

describe("the metal of lines cut together", () => {
  it("is three times as much for three times the pieces", () => {
    const plan = planned([bracket(), bracket({ Part: "B", Quantity: 60 })], shopOf({ rates: rates(NO_SHARES) }));
    const [few, many] = ["HB1", "B"].map((part) => plan.priceOf(quotedOf(plan, part)).material);
    expect(many! / few!).toBeCloseTo(3, 9);
  });
  it("has no price where one of the sheets has none", () => {
    const [group] = planned([bracket()]).groups;
    const [use] = group!.uses;
    const unpriced = { ...use!, price: undefined, sheet: { ...use!.sheet, price: undefined } };
    const sizes = [[use!], [use!, unpriced], [unpriced]].map((uses) => metalShares([{ ...group!, uses }], false).size);
    expect(sizes).toEqual([1, 0, 0]);
  });
});

describe("extras of a line", () => {
  it("are charged where the line asks for them and the shop has a row", () => {
    const changed = rates({ "Engineering per new part": 45, "First article": 30, Certificate: 12 });
    const plan = (line: Line) => {
      const made = planned([bracket(line)], shopOf({ rates: changed }));
      return made.priceOf(quotedOf(made, "HB1")).extras;
    };
    expect(plan({})).toBe(0);
    expect(plan({ "New part": "yes", "First article": "yes", Certificate: "yes" })).toBe(87);
  });
  it("hardware is bought each and put in by minutes", () => {
    const nuts = ["Insert nut", "count", 2, 0.25, 54, 0, null, 0.4, null, null];
    const made = planned([bracket({ Operations: "Insert nut 3" })], shopOf({ stations: [...SHOP.stations, nuts] }));
    const line = quotedOf(made, "HB1");
    expect(made.priceOf(line).extras).toBeCloseTo(20 * 3 * 0.4, 9);
    const work = made.workOf(line).works.find(({ station }) => station.name === "Insert nut")!;
    expect(work.each).toBeCloseTo(1.2 * 3 * 0.25 * 60, 9);
  });
  it("are not what a vendor asks, whether or not it is known in how many days", () => {
    for (const days of [3, null]) {
      const made = planned(
        [bracket({ Operations: "Coating" })],
        shopOf({ stations: withCell(SHOP.stations, "Coating", "Vendor days", days) }),
      );
      const { extras, outside } = made.priceOf(quotedOf(made, "HB1"));
      expect([extras, outside]).toEqual([0, expect.closeTo(1.1 * 85, 9)]);
    }
  });
  it("are not what a vendor would ask for the work of a station that could also be sent out", () => {
    const nuts = ["Insert nut", "count", 2, 0.25, 54, 0, 3, 0.4, null, null];
    const made = planned([bracket({ Operations: "Insert nut 3" })], shopOf({ stations: [...SHOP.stations, nuts] }));
    expect(made.priceOf(quotedOf(made, "HB1")).extras).toBe(0);
  });
});

describe("charges", () => {
  const charges = (entries: Line, changed: Record<string, number> = {}) =>
    planned([bracket()], shopOf({ job: job(entries), rates: rates(changed) })).money.charges;
  it("the minimum order and the rush are lines of their own", () => {
    const { price } = Object.values(prices(planned([bracket()])))[0]!;
    const order = charges({}, { "Minimum charge": price + 100 });
    expect(order.minimum).toBeCloseTo(100, 9);
    expect(order.total).toBeCloseTo(price + 100, 9);
    const rush = charges({ Pace: "rush" }, { "Minimum charge": 0, Rush: 0.25 });
    expect(rush.rush).toBeCloseTo(0.25 * price, 2);
  });
  it("a mark-up is on cost, a margin in the price", () => {
    const { cost } = Object.values(prices(planned([bracket()])))[0]!;
    const unit = (entries: Line) =>
      Object.values(prices(planned([bracket()], shopOf({ job: job(entries) }))))[0]!.unitPrice;
    expect(unit({ "Profit as": "markup" })).toBe(Math.ceil((cost / 20) * 1.4 * 100 - 1e-9) / 100);
    expect(unit({ "Profit as": "margin" })).toBe(Math.ceil((cost / 20 / (1 - 0.28)) * 100 - 1e-9) / 100);
  });
  it("crate and truck are asked for once an order, a line's minimum of every line, and tax of the whole", () => {
    const none = { "Minimum charge": 0, "Line minimum": 0, Crate: 0, Truck: 0, Tax: 0 };
    const price = charges({}, none).total;
    expect(charges({}, { ...none, Crate: 35, Truck: 60 }).total).toBeCloseTo(price + 95, 9);
    // 20 pieces of 250.00.
    expect(charges({}, { ...none, "Line minimum": 5000 }).total).toBeCloseTo(5000, 9);
    expect(charges({}, { ...none, "Line minimum": 5000, Tax: 0.08 }).total).toBeCloseTo(5400, 9);
  });
  it("a second person's rate is asked for only by what two people do", () => {
    const shop = shopOf({ rates: without(rates({}), "Second person") });
    const plan = planned([bracket(), bracket({ Part: "long", Width: 80 })], shop);
    expect(plan.priceOf(quotedOf(plan, "HB1")).price).toBeGreaterThan(0);
    expect(() => plan.priceOf(quotedOf(plan, "long"))).toThrow(/"Second person"/);
  });
  it("outside work has its vendor's minimum", () => {
    const outside = (Quantity: number) =>
      Object.values(prices(planned([bracket({ Quantity, Operations: "Coating" })])))[0]!.outside;
    expect(outside(20)).toBeCloseTo(1.1 * 85, 9); // and the shop's own mark-up
    // Both faces of every ordered piece: 2 x 4.5292 x 4 in2 at 1.35 a square foot.
    expect(outside(2000)).toBeCloseTo((1.1 * (2 * 4.529197953 * 4 * 2000 * 1.35)) / 144, 4);
  });
});

describe("a line that has no price", () => {
  it("leaves the others theirs, and the total", () => {
    const alone = planned([bracket()]);
    const mixed = planned([NONSENSE, bracket(), bracket({ Part: "stop", Flanges: "1; 3" })]);
    expect(mixed.money.charges).toEqual(alone.money.charges);
    expect(mixed.priceOf(quotedOf(mixed, "HB1"))).toEqual(alone.priceOf(quotedOf(alone, "HB1")));
  });
  it("of sheets without a price says which table lacks it", () => {
    const stock = withCell(SHOP.stock, "Plate 1/4", "Price", null);
    const plan = planned(
      [bracket(), bracket({ Part: "other", Material: "5052-H32", Thickness: "1/8" })],
      shopOf({ stock, rates: rates({ "Minimum charge": 0, Crate: 0, Truck: 0, Tax: 0 }) }),
    );
    expect(() => plan.priceOf(quotedOf(plan, "HB1"))).toThrow(
      expect.objectContaining({ message: "stock must be a table with a price for the sheets of HB1; got none" }),
    );
    const { price } = plan.priceOf(quotedOf(plan, "other"));
    expect(price).toBeGreaterThan(0);
    expect(plan.money.charges.total).toBeCloseTo(price, 9);
  });
  it.each(["stations", "rates", "stock"] as const)("without %s nothing is priced, and that is said", (name) => {
    const plan = planned([bracket()], shopOf({ [name]: undefined }));
    expect(() => plan.money).toThrow(expect.objectContaining({ message: `${name} must be given; got nothing` }));
  });
});
