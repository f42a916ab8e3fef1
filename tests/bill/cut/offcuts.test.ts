/** What goes back on the rack, of a cut plan made for the purpose: which sheet it was, its grain, its tag and its worth. */
import { describe, expect, it } from "vitest";
import { offcutsOf } from "../../../src/bill/cut/offcuts.ts";
import type { CutGroup } from "../../../src/bill/cut/plan-cutting.ts";
import type { StockSheet } from "../../../src/bill/nouns/stock.ts";

const sheet = (name: string, grain: "long" | "short", price?: number) =>
  ({ name, length: 2000, width: 1000, grain, price, remnantWorth: 0.5 }) as unknown as StockSheet;
const group = {
  plan: {
    patterns: [
      { id: "1", stock: "a" },
      { id: "2", stock: "b" },
    ],
    remnants: [
      { piece: "1d1", w: 500, h: 400, count: 1 },
      { piece: "1d2", w: 300, h: 400, count: 2 },
      { piece: "1d3", w: 500, h: 400, count: 3 },
      { piece: "2d1", w: 500, h: 400, count: 1 },
      { piece: "2d2", w: 300, h: 400, count: 1 },
    ],
  },
  sheetOf: new Map([
    ["a", sheet("A", "long", 800)],
    ["b", sheet("B", "short")],
  ]),
} as unknown as CutGroup;

describe("offcuts", () => {
  const found = offcutsOf([group]);
  it("alike of one pattern are one entry with one tag, counted; those of another sheet are others", () => {
    expect(found.map(({ tag, sheet: { name }, count, pieces }) => [tag, name, count, pieces])).toEqual([
      ["R1", "A", 4, ["1d1", "1d3"]],
      ["R2", "A", 2, ["1d2"]],
      ["R3", "B", 1, ["2d1"]],
      ["R4", "B", 1, ["2d2"]],
    ]);
  });
  it("are as long as their longer side, rolled along it where that lay along the rolling of the sheet", () => {
    expect(found.map(({ length, width, grain }) => [length, width, grain])).toEqual([
      [500, 400, "length"],
      [400, 300, "width"],
      [500, 400, "width"],
      [400, 300, "length"],
    ]);
  });
  it("are worth their share of the sheet by the worth of its remnants, to the cent, and nothing known without its price", () => {
    expect(found.map(({ price }) => price)).toEqual([40, 24, undefined, undefined]);
  });
  it("are none of a group without a plan", () => {
    expect(offcutsOf([{ ...group, plan: undefined }])).toEqual([]);
  });
});
