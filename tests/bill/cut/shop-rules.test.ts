/** What the shop's tables say of its shear reaches the plan: stops, stacks, offcuts, seconds, and what is kept low. */
import { describe, expect, it } from "vitest";
import { cutAim } from "../../../src/bill/cut/cut-aim.ts";
import { offcutsOf } from "../../../src/bill/cut/offcuts.ts";
import type { BillPlan } from "../../../src/bill/plan.ts";
import { cutPlanRows } from "../../../src/cells/functions/cut-plan.ts";
import type { CellMatrix } from "../../../src/units/cell.ts";
import { type Line, rates, SHOP, withCell } from "../../cells/example/tables.ts";
import { bracket, kindsOf, planned, shopOf } from "../shop.ts";

const plate = (changed: Line) => bracket({ "Bend angles": null, Holes: 0, ...changed });
/** A column of the first shear's, added where the table lacks it. */
const shear = (column: string, value: string | number, of: CellMatrix = SHOP.shears): CellMatrix =>
  of[0]!.some((header) => String(header).startsWith(column))
    ? withCell(of, "Shear 1", column, value)
    : of.map((row, i) => [...row, i === 0 ? column : row[0] === "Shear 1" ? value : null]);
const cutsOf = (plan: BillPlan) => plan.groups.flatMap(({ plan: cuts }) => cuts?.cuts ?? []);
const offcut = (changed: Record<string, string | number | null>): CellMatrix => {
  const headers = [
    "Stock",
    "Material",
    "Thickness",
    "Length (in)",
    "Width (in)",
    "Sheets",
    "Price",
    "Remnant worth",
    "Remnant",
    "Grain",
    "Edges sheared",
  ];
  const row = {
    Stock: "R1",
    Material: "A36",
    Thickness: "1/4",
    "Length (in)": 24,
    "Width (in)": 12,
    Sheets: 1,
    Price: null,
    "Remnant worth": null,
    Remnant: "yes",
    Grain: null,
    "Edges sheared": "yes",
    ...changed,
  };
  const full = {
    ...row,
    Stock: "Plate",
    "Length (in)": 120,
    "Width (in)": 48,
    Sheets: null,
    Price: 372,
    Remnant: null,
    Grain: null,
    "Edges sheared": null,
  };
  return [
    headers,
    ...[row, full].map((one) =>
      headers.map((header) => (one as Record<string, string | number | null>)[header] ?? null),
    ),
  ];
};
const stocks = (plan: BillPlan) => plan.groups.flatMap(({ uses }) => uses.map(({ sheet }) => sheet.name));

describe("the table of shears", () => {
  const long = [plate({ Flanges: "50", Width: 20, Quantity: 6 })];
  it("a part beyond the back gauge lies against the front stop; without one it is cut to a mark", () => {
    const by = (front: number) =>
      new Set(cutsOf(planned(long, shopOf({ shears: shear("Front stop reach", front) }))).map((cut) => cut.by));
    expect(by(60).has("mark")).toBe(false);
    expect(by(60).has("front stop")).toBe(true);
    expect(by(0).has("mark")).toBe(true);
  });
  it("a shop that cuts to no mark sends what no stop measures to the waterjet, by name", () => {
    const shears = shear(
      "Cut to mark",
      "no",
      shear("Front stop reach", 0, shear("Gauge reach", 12, SHOP.shears.slice(0, 2))),
    );
    const [line] = planned([plate({ Flanges: "20", Width: 20, Quantity: 6 })], shopOf({ shears })).lines;
    expect(kindsOf(line!)).toContain("cutting: note waterjet: no layout");
  });
  it("nothing is set under the nearest gauge", () => {
    const plan = planned(
      [plate({ Flanges: "20", Width: 1, Quantity: 40 })],
      shopOf({ shears: shear("Nearest gauge", 2) }),
    );
    for (const { gauge } of cutsOf(plan)) if (gauge !== null) expect(gauge).toBeGreaterThanOrEqual(2 * 25.4 - 1e-6);
  });
  it("waste is never thinner than the least trim", () => {
    const plan = planned(
      [plate({ Flanges: "7.9", Width: 5.9, Quantity: 40 })],
      shopOf({ shears: shear("Least trim", 0.5) }),
    );
    for (const { falls, stays, axis } of cutsOf(plan))
      for (const out of [...falls, stays])
        if (out.kind === "scrap") expect(out[axis]).toBeGreaterThanOrEqual(12.7 - 1e-6);
  });
  it.each([
    ["Stacks", 0.5, /"Stacks" must be a whole number from 1 to 100; got 0.5/],
    ["Cut to mark", "maybe", /"Cut to mark" must be one of "yes", "no"; got "maybe"/],
    ["Front stop reach", -1, /"Front stop reach" must be a number of at least 0; got -1/],
  ])("%s %s is refused by its cell", (column, value, words) => {
    expect(() => shopOf({ shears: shear(column, value) })).toThrow(words);
  });
});

describe("the rack", () => {
  const part = [plate({ Flanges: "24", Width: 12, Quantity: 1 })];
  const rules = rates({ "Scrap allowance": 0, "First-piece blanks": 0 });
  it("a 24 x 12 part comes from a 24 x 12 offcut, whatever it is worth", () => {
    for (const price of [null, 0, 5])
      expect(stocks(planned(part, shopOf({ stock: offcut({ Price: price }), rates: rules })))).toEqual(["R1"]);
  });
  it("an offcut's grain is its own", () => {
    const grain = (along: string) =>
      stocks(
        planned(
          [plate({ Flanges: "24", Width: 12, Quantity: 1, Grain: "length" })],
          shopOf({ stock: offcut({ Grain: along }), rates: rules }),
        ),
      );
    expect([grain("length"), grain("width")]).toEqual([["R1"], ["Plate"]]);
  });
  it("a layout copied from CUT.PLAN to Pinned stays, whatever is added to the bill", () => {
    const column = (plan: BillPlan, name: string, row: number) => {
      const [headers, ...rows] = cutPlanRows(plan);
      return rows[row]![headers!.findIndex((header) => String(header) === name)];
    };
    const stock = (layout: string | null, count: number | null) =>
      offcut({}).map((row, i) => [
        ...(i === 1 ? row.with(3, 48).with(4, 48).with(5, count) : row),
        i === 0 ? "Pinned" : i === 1 ? layout : null,
      ]);
    const lines = [plate({ Flanges: "24", Width: 12, Quantity: 3 })];
    const more = [...lines, plate({ Part: "more", Flanges: "47", Width: 11, Quantity: 9 })];
    const layout = String(column(planned(lines, shopOf({ stock: stock(null, 1), rates: rules })), "Layout", 0));
    expect(layout).toMatch(/^(along|across)\(/);
    const again = planned(more, shopOf({ stock: stock(layout, 1), rates: rules }));
    const rows = cutPlanRows(again)
      .slice(1)
      .map((_, row) => [column(again, "Stock", row), column(again, "Layout", row)]);
    expect(rows).toContainEqual(["R1", layout]);
    const fewer = planned(
      [plate({ Flanges: "24", Width: 12, Quantity: 2 })],
      shopOf({ stock: stock(layout, 1), rates: rules }),
    );
    expect(JSON.stringify(fewer.lines[0]!.findings)).toContain("must be no more of");
    // It is laid for the shear: the waterjet leaves it uncut.
    const jet = [plate({ Flanges: "24", Width: 12, Quantity: 3, Route: "waterjet" })];
    expect(stocks(planned(jet, shopOf({ stock: stock(layout, 1), rates: rules })))).toEqual(["Plate"]);
    expect(() => shopOf({ stock: stock(layout, null) })).toThrow(/"Count" must be given where a layout is pinned/);
    expect(() => shopOf({ stock: stock("R1", 1) })).toThrow(/"Pinned" must be a layout as CUT.PLAN prints it/);
  });
  it("one sheet is never sold to two thicknesses: what is asked thinner is cut from the same group", () => {
    const lines = ["1/4", "3/16"].map((Thickness) =>
      plate({ Part: Thickness, Thickness, Flanges: "24", Width: 12, Quantity: 1 }),
    );
    // A new sheet holds one of the two.
    const small = offcut({}).map((row, i) => (i === 2 ? row.with(3, 24).with(4, 13) : row));
    const { groups } = planned(lines, shopOf({ stock: small, rates: rules }));
    expect(groups.flatMap(({ uses }) => uses.map(({ sheet, count }) => `${count} ${sheet.name}`)).sort()).toEqual([
      "1 Plate",
      "1 R1",
    ]);
  });
  it("what comes off is a row of Stock that the next bill cuts from", () => {
    const [first] = offcutsOf(planned(part, shopOf({ rates: rules })).groups);
    const { length, width, grain, price } = first!;
    const row = { "Length (in)": length / 25.4, "Width (in)": width / 25.4, Grain: grain, Price: price ?? null };
    expect(stocks(planned(part, shopOf({ stock: offcut(row), rates: rules })))).toEqual(["R1"]);
  });
});

it("lines that are due first come off the first sheets", () => {
  const lines = [11, 13, 17, 19, 23].map((width, i) =>
    plate({ Part: `P${i}`, Flanges: "30", Width: width, Quantity: 12 + 7 * i, Due: `2026-06-${19 - i}` }),
  );
  const { plan, lineOf } = planned(lines, shopOf({ rates: rates({ "Cut effort": 0.1 }) })).groups[0]!;
  const earliest = plan!.patterns.map(({ yields }) =>
    Math.min(...yields.map(({ blank }) => lineOf.get(blank)!.line.due!)),
  );
  expect(earliest.length).toBeGreaterThan(2);
  expect(new Set(earliest).size).toBeGreaterThan(1);
  expect(earliest).toEqual([...earliest].sort((a, b) => a - b));
});

describe("what a cut plan keeps low", () => {
  const aim = (changed: Parameters<typeof rates>[0]) => cutAim(shopOf({ rates: rates(changed) }));
  it("money: a minute counts what the shear's station costs, 78 an hour in the sample", () => {
    expect(aim({}).perMinute).toBeCloseTo(78 / 60, 12);
    expect(aim({ "Cut plan": "fewest sheets" })).toMatchObject({ isSheets: true, perMinute: 1e-6 });
    expect(aim({ "Cut plan": "least time" }).perMinute).toBe(Infinity);
    expect(() => aim({ "Cut plan": "best" })).toThrow(
      /"Cut plan" must be one of "money", "fewest sheets", "least time"/,
    );
  });
  it("the floor's seconds are the shop's", () => {
    expect(aim({ "Gauge setting": 50, "Shear stroke": 12, "Scribe line": 90 }).pace).toMatchObject({
      setting: 50,
      stroke: 12,
      mark: 90,
    });
  });
  it("least time takes no longer, and money never costs more with its minutes, than the other", () => {
    const lines = [3, 5, 7, 11, 13].map((width, i) =>
      plate({ Part: `P${i}`, Flanges: "20", Width: width, Quantity: 30 }),
    );
    const [money, time, sheets] = ["money", "least time", "fewest sheets"].map((aimed) => {
      const found = planned(lines, shopOf({ rates: rates({ "Cut plan": aimed }) })).groups[0]!;
      return { minutes: found.plan!.minutes, sheets: found.uses.reduce((sum, { count }) => sum + count, 0) };
    });
    expect(time!.minutes).toBeLessThanOrEqual(money!.minutes + 1e-9);
    expect(sheets!.sheets).toBeLessThanOrEqual(money!.sheets);
  });
});
