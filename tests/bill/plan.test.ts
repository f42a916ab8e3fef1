/** The one plan of a bill: what it counts, what it was not given, what it is called, and what an edit changes of it. */
import { describe, expect, it } from "vitest";
import { planBill, planBillAnew } from "../../src/bill/plan.ts";
import { changesSay } from "../../src/bill/plan-changes.ts";
import type { Step } from "../../src/units/working.ts";
import { job, type Line, MONDAY, NONSENSE, range, SHOP, withCell } from "../cells/example/tables.ts";
import { answerOf, bracket, kindsOf, planned, quotedOf, rowsOf, shopOf } from "./shop.ts";

const wide = bracket({ Part: "wide", Width: 130 });

describe("the totals of a bill", () => {
  it("count its lines by status, what is quoted and priced, pieces, weight and sheets", () => {
    const stock = withCell(SHOP.stock, "Aluminum 1/8", "Price", null);
    const unpriced = bracket({ Part: "A", Material: "5052-H32", Thickness: "1/8", Quantity: 5 });
    const plan = planned([bracket(), wide, unpriced, NONSENSE], shopOf({ stock }));
    const { lines, of, quoted, unpriced: without, pieces, weight, sheets } = plan.totals;
    expect([lines, of.stop, of.clear + of.check, quoted, without, pieces]).toEqual([4, 2, 2, 2, 3, 25]);
    const aluminum = quotedOf(plan, "A").plan;
    // 1.286 lb each of the bracket, worked by hand in tests/reference.
    expect(weight - 5 * aluminum.blank.weight).toBeCloseTo(20 * 1.286 * 0.45359237, 1);
    expect(sheets).toBe(2); // one of each
    expect(planned([bracket({ Quantity: 500 })]).totals.sheets).toBeGreaterThan(1);
  });
});

describe("a table that was not given", () => {
  it("is named, unless nothing is missed without it", () => {
    const { outlines: _, ...tables } = { ...SHOP, outlines: undefined };
    expect(planned([bracket()], shopOf(tables)).notChecked).toEqual([]);
    expect(planned([bracket()], shopOf({ stock: undefined, shears: undefined, job: undefined })).notChecked).toEqual([
      "shears",
      "stock",
    ]);
  });
  it.each([
    [{ calendar: undefined }, "calendar must be given; got nothing"],
    [
      { job: range(["Job", "Entry"], ["Due", MONDAY]) },
      'job must be a table with an entry at "Work can begin"; got none',
    ],
    [
      { job: range(["Job", "Entry"], ["Start", MONDAY]) },
      'job must be a table with an entry at "Must leave by"; got none',
    ],
  ])("is asked for where dates need it: %#", (tables, message) => {
    expect(() => planned([bracket()], shopOf(tables)).dates).toThrow(expect.objectContaining({ message }));
  });
  it("of the stock leaves no sheets, and every line that the machines can make", () => {
    const plan = planned([bracket()], shopOf({ stock: undefined }));
    expect([plan.groups, plan.quoted.length]).toEqual([[], 1]);
  });
});

describe("rows that nobody has confirmed", () => {
  it("are named where the bill uses them", () => {
    const plates = (table: typeof SHOP.dies, named: readonly string[]) =>
      table.map((row, i) => [
        ...row,
        i === 0 ? "From the plate" : named.includes(String(row[0])) ? null : "A. Person, 3 March",
      ]);
    const read = {
      brakes: plates(SHOP.brakes, []),
      dies: plates(SHOP.dies, ["V 2"]),
      punches: plates(SHOP.punches, ["Knife"]),
      shears: plates(SHOP.shears, []),
      waterjets: plates(SHOP.waterjets, []),
    };
    const lines = [bracket({ Die: "V 2", Punch: "Plain" })];
    expect(planned(lines, shopOf(read)).notFromPlate).toEqual(["V 2"]);
    expect(planned(lines).notFromPlate.length).toBeGreaterThan(2);
  });
});

describe("the number of a plan", () => {
  const lines = [bracket(), bracket({ Part: "B", Width: 5 }), NONSENSE];
  const { number } = planned(lines);
  it("is the same for the same inputs, in whatever order lines and tables stand, and whenever it is quoted", () => {
    expect(planned(lines).number).toBe(number);
    expect(planned([...lines].reverse()).number).toBe(number);
    const turned = Object.fromEntries(
      (["brakes", "dies", "punches", "shears", "waterjets", "stations", "rates", "stock", "calendar"] as const).map(
        (name) => {
          const [header, ...rows] = SHOP[name];
          return [name, [header!, ...rows.reverse()]];
        },
      ),
    );
    expect(planned(lines, shopOf(turned)).number).toBe(number);
    const dated = shopOf({ job: job({ "Date of the quote": MONDAY, "Valid for (days)": 30 }) });
    expect(planned(lines, dated).number).toBe(number);
  });
  it.each<[string, Line[], Parameters<typeof shopOf>[0]]>([
    ["a line", [bracket({ Quantity: 21 }), ...lines.slice(1)], {}],
    ["a line more", [...lines, bracket({ Part: "C" })], {}],
    ["what could not be read", [...lines.slice(0, 2), { ...NONSENSE, Thickness: -5 }], {}],
    ["a die", lines, { dies: withCell(SHOP.dies, "V 2", "Opening", 2.01) }],
    ["a brake", lines, { brakes: SHOP.brakes.slice(0, 2) }],
    ["a punch", lines, { punches: SHOP.punches.slice(0, -1) }],
    ["a shear", lines, { shears: SHOP.shears.slice(0, 2) }],
    ["a station", lines, { stations: withCell(SHOP.stations, "Brake", "Rate", 96) }],
    ["a price", lines, { stock: withCell(SHOP.stock, "Plate 1/4", "Price", 373) }],
    ["a rate", lines, { rates: withCell(SHOP.rates, "Overhead", "Value", 0.5) }],
    ["a shift", lines, { calendar: SHOP.calendar.slice(0, -1) }],
    ["the time it must leave", lines, { job: job({ Due: MONDAY + 9 }) }],
  ])("is another one with %s that differs", (_, of, tables) => {
    expect(planned(of, shopOf(tables)).number).not.toBe(number);
  });
});

describe("what an edit changes", () => {
  const say = (before: Line[], after: Line[]) => changesSay(planned(before), planned(after));
  // Flat, so that no tool of it is chosen with those of others.
  const b = bracket({ Part: "B", Flanges: "5", "Bend angles": null, Holes: 0 });
  it("is counted by lines, and by the status that they come to have", () => {
    expect(say([bracket(), b], [bracket(), b])).toBe("No line changed.");
    expect(say([bracket(), b], [bracket({ Width: 130 }), b])).toBe("1 line changed, 1 now stop.");
    expect(say([wide, b], [bracket(), b])).toBe("1 line changed, 1 now clear.");
    expect(say([wide, { ...wide, Part: "w" }], [bracket(), bracket({ Part: "w" })])).toBe(
      "2 lines changed, 2 now clear.",
    );
    expect(say([bracket(), wide], [bracket({ Width: 130 }), bracket()])).toBe(
      "2 lines changed, 1 now clear, 1 now stop.",
    );
  });
  it("is seen of the flat, of the blanks, of tools and of the machine, though the status stays", () => {
    for (const changed of [
      { Width: 5 },
      { Flanges: "2; 4" },
      { Quantity: 60 },
      { Brake: "Brake 1" },
      { Route: "waterjet" },
    ])
      expect(say([bracket(), b], [bracket(changed), b]), JSON.stringify(changed)).toBe("1 line changed.");
    expect(say([bracket(), b], [bracket({ Area: "Deck" }), b])).toBe("No line changed.");
  });
});

describe("a line of a plan", () => {
  it("has its fix in the whole bill, and none where it is clear or could not be read", () => {
    const plan = planned([bracket(), bracket({ Part: "F", Die: "V 1", Punch: "Plain", Holes: 0 }), NONSENSE]);
    expect(plan.fix(answerOf(plan, "HB1"))).toBeUndefined();
    expect(plan.fix(plan.lines[2]!)).toBeUndefined();
    const fix = plan.fix(answerOf(plan, "F"))!;
    expect(fix.changes[0]).toMatchObject({ kind: "tools" });
    const changed = plan.changed(1, { ...plan.rows[1]!, ...fix.changes[0], kind: undefined } as never);
    expect(answerOf(changed, "F").status).toBe(fix.reaches);
  });
  it("that the waterjet cuts has what is found there, and one that nothing cuts what the shear would find", () => {
    const plan = planned([bracket({ Part: "jet", Route: "waterjet" }), wide]);
    expect([answerOf(plan, "jet").cutter, answerOf(plan, "wide").cutter]).toEqual(["waterjet", undefined]);
    expect(answerOf(plan, "wide").isQuoted).toBe(false);
    expect(kindsOf(answerOf(plan, "wide")).some((kind) => kind.startsWith("room: stop"))).toBe(true);
  });
  it("is planned once for the same bill in the same shop", () => {
    const [shop, rows] = [shopOf(), rowsOf(bracket())];
    expect(planBill(shop, rows)).toBe(planBill(shop, rowsOf(bracket())));
    expect(planBill(shop, rows)).not.toBe(planBill(shop, rowsOf(bracket({ Quantity: 3 }))));
  });
  it("has its route beside the others that are quoted, in the order of the bill", () => {
    const plan = planned([bracket({ Part: "z" }), wide, bracket({ Part: "a", Route: "waterjet" }), NONSENSE]);
    expect(plan.routed.map(({ line }) => line.part)).toEqual(["z", "a"]);
    expect(plan.route.cutters[1]).toBe("waterjet");
  });
  it("is planned anew where its working is asked for, to the same price", () => {
    const [shop, rows] = [shopOf(), rowsOf(bracket(), bracket({ Part: "B", Width: 5 }))];
    const work: Step[] = [];
    const anew = planBillAnew(shop, rows, work);
    const remembered = planBill(shop, rows);
    for (const part of ["HB1", "B"])
      expect(anew.priceOf(quotedOf(anew, part))).toEqual(remembered.priceOf(quotedOf(remembered, part)));
    expect(work.map(({ meaning }) => meaning).join()).toMatch(/HB1.*B/);
  });
});
