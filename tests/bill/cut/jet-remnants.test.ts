/** What is left of a sheet that the waterjet has cut, worked by hand: a sheet of 100 x 50 in, half an inch of web. */
import { describe, expect, it } from "vitest";
import { jetRemnants } from "../../../src/bill/cut/jet-remnants.ts";
import type { JetSheet } from "../../../src/calc/cutting/jet-sheets.ts";
import { mm } from "../../../src/units/quantity.ts";
import { rates } from "../../cells/example/tables.ts";
import { inches, shopOf } from "../shop.ts";

const IN = 25.4;
const left = (
  placed: readonly (readonly [x: number, y: number, w: number, h: number])[],
  repeats = 1,
  changed: Parameters<typeof rates>[0] = {},
) => {
  const sheet = {
    stock: "s",
    w: mm(100 * IN),
    h: mm(50 * IN),
    repeats,
    placed: placed.map(([x, y, w, h]) => ({ x: x * IN, y: y * IN, w: w * IN, h: h * IN })),
  } as unknown as JetSheet;
  const shop = shopOf({ rates: rates({ "Waterjet web": 0.5, ...changed }) });
  return jetRemnants(sheet, shop.rates).map(({ length, width }) => [
    Number(inches(length).toFixed(6)),
    Number(inches(width).toFixed(6)),
  ]);
};

describe("what is left beside what the waterjet cut", () => {
  it("is cut off across the sheet where the largest piece is got so, with what is left above", () => {
    // Laid up to 41 x 31: 59 x 50 and 41 x 19 across, or 100 x 19 and 59 x 31 along.
    expect(left([[0.5, 0.5, 40, 30]])).toEqual([
      [59, 50],
      [41, 19],
    ]);
  });
  it("is cut off along the sheet where the largest piece is got so; what is narrower than 12 in is scrap", () => {
    // Laid up to 91 x 11: 9 x 50 and 91 x 39 across, or 100 x 39 and 9 x 11 along.
    expect(left([[0.5, 0.5, 90, 10]])).toEqual([[100, 39]]);
  });
  it("is beyond all that is laid, whichever part reaches farthest each way", () => {
    const two = [
      [0.5, 0.5, 40, 10],
      [0.5, 11, 20, 19.5],
    ] as const;
    expect(left(two)).toEqual(left([[0.5, 0.5, 40, 30]]));
    expect(left([...two].reverse())).toEqual(left(two));
  });
  it("is left of every copy of the layout, as wide as the shop keeps at least", () => {
    expect(left([[0.5, 0.5, 40, 30]], 2, { "Least remnant": 20 })).toEqual([
      [59, 50],
      [59, 50],
    ]);
    expect(left([[0.5, 0.5, 40, 30]], 1, { "Least remnant": 19 })).toHaveLength(2);
  });
  it("is nothing of a sheet laid full", () => {
    expect(left([[0.5, 0.5, 95, 45]])).toEqual([]);
  });
});
