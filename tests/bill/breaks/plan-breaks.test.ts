/** What a line costs by quantity, against the bills with each quantity as they are planned by themselves. */
import { describe, expect, it } from "vitest";
import { planBreaks } from "../../../src/bill/breaks/plan-breaks.ts";
import type { Shop } from "../../../src/bill/nouns/shop.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import { type Line, rates, SHOP, withCell } from "../../cells/example/tables.ts";
import { bracket, planned, quotedOf, shopOf } from "../shop.ts";

const NO_MINIMUM = { "Minimum charge": 0, "Line minimum": 0 };
const free = shopOf({ rates: rates(NO_MINIMUM) });
const breaks = (lines: readonly Line[], quantities: readonly number[], shop: Shop = free) => {
  const plan = planned(lines, shop);
  return planBreaks(plan, quotedOf(plan, "HB1"), quantities).map(([quantity, found]) => {
    if (found instanceof Refusal) throw found;
    return { ...found, quantity };
  });
};
const alone = (quantity: number, shop: Shop) => {
  const plan = planned([bracket({ Quantity: quantity })], shop);
  return { ...plan.priceOf(quotedOf(plan, "HB1")), order: plan.money.charges.total };
};

describe("the breaks of a line", () => {
  it("stand smallest first, each once, the quantity of the bill among them and alone marked as its own", () => {
    const found = breaks([bracket()], [50, 5, 50, 20]);
    expect(found.map(({ quantity, isInBill }) => [quantity, isInBill])).toEqual([
      [5, false],
      [20, true],
      [50, false],
    ]);
  });
  it("of the only line are the bills with that quantity: each, in all, and the order", () => {
    for (const { quantity, unitPrice, price, order, isHeld } of breaks([bracket()], [5, 50, 200])) {
      const bill = alone(quantity, free);
      expect(isHeld).toBe(false);
      expect(unitPrice).toBe(bill.unitPrice);
      expect(price).toBeCloseTo(quantity * unitPrice, 9);
      expect(order).toBeCloseTo(bill.order, 9);
    }
  });
  it("beside another line make the order dearer by their own price alone", () => {
    const other = bracket({ Part: "HB2", Flanges: "3; 3", Quantity: 8 });
    const plan = planned([bracket(), other], free);
    const others = plan.priceOf(quotedOf(plan, "HB2")).price;
    for (const { price, order } of breaks([bracket(), other], [5, 50])) expect(order).toBeCloseTo(others + price, 9);
  });
  it("are never dearer each nor less in all for more pieces, and say where the reckoning is held to that", () => {
    const whole = shopOf({ rates: rates({ ...NO_MINIMUM, "Charge whole sheets": 1 }) });
    const quantities = [20, 200, 250, 270, 290, 310];
    const found = breaks([bracket()], quantities, whole);
    found.slice(1).forEach(({ unitPrice, price }, i) => {
      expect(unitPrice).toBeLessThanOrEqual(found[i]!.unitPrice);
      expect(price).toBeGreaterThanOrEqual(found[i]!.price - 1e-9);
    });
    for (const { quantity, unitPrice, isHeld } of found)
      expect([quantity, isHeld]).toEqual([quantity, unitPrice !== alone(quantity, whole).unitPrice]);
    expect(new Set(found.map(({ isHeld }) => isHeld)).size).toBe(2);
  });
  it("leave the price of the bill itself as it is, whichever of the quantities it is", () => {
    const whole = shopOf({ rates: rates({ ...NO_MINIMUM, "Charge whole sheets": 1 }) });
    const quantities = [20, 200, 250, 270, 290, 310];
    for (const own of quantities) {
      const found = breaks([bracket({ Quantity: own })], quantities, whole).find(({ isInBill }) => isInBill)!;
      expect([found.quantity, found.unitPrice, found.isHeld]).toEqual([own, alone(own, whole).unitPrice, false]);
    }
  });
  it("leave out what has no price in the bill, before and after", () => {
    const stock = withCell(SHOP.stock, "Aluminum 1/8", "Price", null);
    const unpriced = bracket({ Part: "A", Material: "5052-H32", Thickness: "1/8" });
    const shop = shopOf({ stock, rates: rates(NO_MINIMUM) });
    const plan = planned([bracket(), unpriced], shop);
    expect(() => plan.priceOf(quotedOf(plan, "A"))).toThrow(Refusal);
    for (const { price, order } of breaks([bracket(), unpriced], [50], shop)) expect(order).toBeCloseTo(price, 9);
  });
  it("go on past a quantity that cannot be quoted as if nobody had asked for it", () => {
    const plan = planned([bracket()], free);
    const wide = planned([bracket({ Quantity: 30, Width: 130 })], free);
    const { changed } = plan;
    plan.changed = (at, line) => (line.quantity === 30 ? wide : changed.call(plan, at, line));
    const found = planBreaks(plan, quotedOf(plan, "HB1"), [30, 50]);
    expect(found.map(([quantity, each]) => [quantity, each instanceof Refusal])).toEqual([
      [20, false],
      [30, true],
      [50, false],
    ]);
    expect(found[2]![1]).toMatchObject({ unitPrice: alone(50, free).unitPrice });
  });
  it("leave out a line that has sheets only while this one is small", () => {
    const one = withCell(SHOP.stock, "Plate 1/4", "Sheets", 1);
    const shop = shopOf({ stock: one, rates: rates({ ...NO_MINIMUM, "Cut effort": 0.05 }) });
    const large = bracket({ Flanges: "60", "Bend angles": null, Width: 46, Holes: 0, Quantity: 2 });
    const other = bracket({ Part: "Z", Flanges: "40", "Bend angles": null, Width: 46, Holes: 0, Quantity: 1 });
    const plan = planned([large, other], shop);
    expect(plan.quoted.map(({ part }) => part)).toEqual(["HB1"]);
    const small = planned([{ ...large, Quantity: 1 }, other], shop);
    expect(small.quoted.map(({ part }) => part)).toEqual(["HB1", "Z"]);
    const [first] = breaks([large, other], [1], shop);
    expect(first!.order).toBeCloseTo(first!.price, 9);
    // Nor does this one pay for it.
    expect(first!.unitPrice).toBe(small.priceOf(quotedOf(small, "HB1")).unitPrice);
  });
});
