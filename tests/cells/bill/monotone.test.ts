/** For one line with route, die, stock and set-ups held fixed, time and price never fall as it grows. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { answer, columnOf, type Line as Row, range, rates, SHOP } from "../example/tables.ts";

interface Line {
  readonly thickness: number;
  readonly quantity: number;
  readonly width: number;
  readonly leg: number;
}
/** Little effort for the cut plan, one price a pound: a thicker sheet of the same size weighs and costs more. */
const QUICK = { rates: rates({ "Cut effort": 0.01 }) };
const stockOf = (thickness: number) =>
  range(SHOP.stock[0]!, ["It", "A36", thickness, 120, 48, null, 120 * 48 * thickness * 0.284, 1]);

function answers(
  { thickness, quantity, width, leg }: Line,
  route: string,
): { time: number; metal: number; price: number } {
  const row: Row = {
    ...{ Part: "A", Material: "A36", Thickness: thickness, Quantity: quantity, Width: width },
    ...{
      Flanges: `${leg}; 4; ${leg}`,
      "Bend angles": "90; -60",
      Die: "V 2",
      Punch: "Plain",
      Brake: "Brake 1",
      Route: route,
    },
  };
  const tables = { ...QUICK, stock: stockOf(thickness) };
  const [times, prices] = [answer("BILL.TIMES", [row], tables), answer("BILL.PRICE", [row], tables)];
  expect(columnOf(prices, "Message")[0]).toBe("");
  return {
    time: columnOf(times, "Total").reduce((sum: number, value) => sum + (value as number), 0),
    metal: columnOf(prices, "Material")[0] as number,
    price: columnOf(prices, "Price")[0] as number,
  };
}

const line = fc.record({
  thickness: fc.integer({ min: 17, max: 24 }).map((n) => n / 100),
  quantity: fc.integer({ min: 1, max: 200 }),
  width: fc.integer({ min: 8, max: 60 }).map((n) => n / 2),
  leg: fc.integer({ min: 8, max: 40 }).map((n) => n / 4),
});
const more: Record<keyof Line, (value: number, by: number) => number> = {
  thickness: (value, by) => value + 0.001 * (1 + (by % 10)),
  quantity: (value, by) => value + by,
  width: (value, by) => value + by / 8,
  leg: (value, by) => value + by / 16,
};

describe("more is never less", () => {
  for (const route of ["shear", "waterjet"])
    it.each(Object.keys(more) as (keyof Line)[])(`%s, on the ${route}`, (key) => {
      fc.assert(
        fc.property(line, fc.integer({ min: 1, max: 40 }), (small, by) => {
          const large = { ...small, [key]: more[key](small[key], by) };
          const [before, after] = [answers(small, route), answers(large, route)];
          expect(after.time + 1e-9).toBeGreaterThanOrEqual(before.time);
          // A plan of the sheets is found, not proved: it may be a sheet better for the larger one.
          if (after.metal < before.metal) return;
          // The unit price is rounded up to the cent: that alone may take back a cent a piece.
          const rounding = key === "quantity" ? 0.01 * large.quantity : 0;
          expect(after.price + rounding + 1e-9).toBeGreaterThanOrEqual(before.price);
        }),
        { numRuns: 15 },
      );
    });
});
