import { expect, test } from "vitest";
import { cutsInOrder } from "../../../src/bill/cut/cuts-in-order.ts";
import { offcutsOf } from "../../../src/bill/cut/offcuts.ts";
import { SHOP, withCell } from "../../cells/example/tables.ts";
import { bracket, planned, shopOf } from "../shop.ts";

// By hand: a flat plate of 20 x 30 in off a sheet of 48 x 120, 1/4 in A36 (0.284 lb/in3): the sheet weighs 409 lb.
const plate = (changed: object) => bracket({ Flanges: "20", "Bend angles": null, Width: 30, Holes: 0, ...changed });
const listed = (shop = shopOf(), changed: object = {}) => {
  const plan = planned([plate({ Part: "CS-02", Quantity: 7, ...changed })], shop);
  const offcuts = offcutsOf(plan.groups);
  return { plan, offcuts, rows: plan.groups.flatMap((group) => cutsInOrder(group, plan.shop, offcuts)) };
};

test("a row says how many pieces, what is set, what drops and who lifts", () => {
  const { rows, plan } = listed();
  const blanks = rows.flatMap(({ drops, onTable }) => [drops, onTable]).join(", ");
  const count = [...blanks.matchAll(/(\d+) x CS-02/g)].reduce((sum, [, n]) => sum + Number(n), 0);
  expect(count).toBe(plan.quoted[0]!.plan.blanks);
  expect(rows[0]!.piece).toBe("sheet 120 x 48");
  expect(rows[0]!.lift).toBe("409 lb, hoist");
  expect(rows.map(({ onTape }) => onTape)).toContain("20");
  for (const { row, note } of rows) expect(note).toMatch(row.by === "gauge" ? /, setting \d+$/ : /, measure what /);
});

test("an offcut bears a tag and comes back as a row of Stock, at what the job was credited", () => {
  const { offcuts, rows } = listed();
  const [first] = offcuts;
  expect(first).toBeDefined();
  expect(rows.map(({ drops, onTable }) => `${drops} ${onTable}`).join("; ")).toContain(`offcut ${first!.tag}, `);
  const { length, width, price, sheet } = first!;
  // Plate 1/4: 372 a sheet, remnants worth half.
  expect(price).toBeCloseTo((0.5 * 372 * (length * width)) / (sheet.length * sheet.width), 2);
  // What is as long as the sheet is wide was rolled across its length.
  expect(length).toBeCloseTo(48 * 25.4, 6);
  expect(first!.grain).toBe("width");
});

test("what no back gauge reaches is set by the front stop, or by a mark where there is none", () => {
  const by = (reach: number, front: number) => {
    const shears = withCell(
      withCell(SHOP.shears, "Shear 1", "Gauge reach", reach),
      "Shear 1",
      "Front stop reach",
      front,
    );
    return new Set(listed(shopOf({ shears }), { Quantity: 3 }).rows.map(({ row }) => row.by));
  };
  expect(by(42, 60)).toEqual(new Set(["gauge"]));
  expect(by(12, 60)).toEqual(new Set(["front stop"]));
  expect(by(12, 0)).toEqual(new Set(["mark"]));
});
