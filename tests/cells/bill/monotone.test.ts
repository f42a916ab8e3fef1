/** For one line with route, die, stock and set-ups held fixed, time and price never fall as it grows. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { ARGUMENTS, columnOf, range } from "./sample-shop.ts";

interface Line {
  readonly thickness: number;
  readonly quantity: number;
  readonly width: number;
  readonly leg: number;
}
const HEADER = [
  "Part",
  "Material",
  "Thickness (in)",
  "Quantity",
  "Width (in)",
  "Flanges (in)",
  "Bend angles",
  "Die",
  "Route",
];

function answers({ thickness, quantity, width, leg }: Line, route: string): { time: number; price: number } {
  const row: CellValue[] = ["A", "A36", thickness, quantity, width, `${leg}; 4; ${leg}`, "90; -60", "V2", route];
  const given = ARGUMENTS(range(HEADER, row));
  const ask = (name: string): CellMatrix => {
    const { value } = shopFunctions.call(name, given[name]!);
    if (isCellError(value)) throw new Error(value.message);
    return value as CellMatrix;
  };
  const [times, prices] = [ask("BILL.TIMES"), ask("BILL.PRICE")];
  expect(columnOf(prices, "Message")[0]).toBe("");
  return {
    time: columnOf(times, "Total").reduce((sum: number, value) => sum + (value as number), 0),
    price: columnOf(prices, "Price")[0] as number,
  };
}

const line = fc.record({
  thickness: fc.integer({ min: 8, max: 24 }).map((n) => n / 100),
  quantity: fc.integer({ min: 1, max: 400 }),
  width: fc.integer({ min: 2, max: 80 }).map((n) => n / 2),
  leg: fc.integer({ min: 8, max: 60 }).map((n) => n / 4),
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
          expect(after.time).toBeGreaterThanOrEqual(before.time);
          // The unit price is rounded up to the cent: that alone may take back a cent a piece.
          const rounding = key === "quantity" ? 0.01 * large.quantity : 0;
          expect(after.price + rounding).toBeGreaterThanOrEqual(before.price);
        }),
        { numRuns: 60 },
      );
    });
});
