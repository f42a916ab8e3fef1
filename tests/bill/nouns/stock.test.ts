/** Which sheets a line is cut from: its own thickness, the next thicker one, or none. */
import { describe, expect, it } from "vitest";
import { fitsOn, type StockSheet, sheetsToCut } from "../../../src/bill/nouns/stock.ts";
import { kilograms, mm, money } from "../../../src/units/quantity.ts";
import { material } from "../../calc/bend/check/set-up.ts";

const sheet = (name: string, thickness: number, changed: Partial<StockSheet> = {}): StockSheet => ({
  name,
  material: material("A36"),
  thickness: mm(thickness),
  length: mm(2400),
  width: mm(1200),
  weight: kilograms(1),
  price: money(100),
  count: undefined,
  leadDays: undefined,
  isRemnant: false,
  grain: "long",
  edgesSheared: false,
  remnantWorth: 0,
  saysRemnantWorth: true,
  ...changed,
});
const STOCK = [sheet("six", 6.35), sheet("five", 4.76), sheet("stainless", 5, { material: material("304") })];
const found = (thickness: number, stock = STOCK, of = "A36") => {
  const answer = sheetsToCut(material(of), mm(thickness), stock);
  return answer && [answer.isThicker, ...answer.sheets.map(({ name }) => name)];
};

describe("sheets to cut", () => {
  it.each([
    ["its own thickness", 4.76, [false, "five"]],
    ["the same, written in another unit", 4.764, [false, "five"]],
    ["thicker than the thin one by more than a way of writing", 4.77, [true, "six"]],
    ["the next thicker, not the thickest", 3, [true, "five"]],
    ["none is thick enough", 6.4, undefined],
  ])("%s", (_, thickness, answer) => expect(found(thickness)).toEqual(answer));

  it("of another material there is none", () => {
    expect(found(5, STOCK, "304")).toEqual([false, "stainless"]);
    expect(found(3, STOCK, "5052-H32")).toBeUndefined();
    expect(found(3, [])).toBeUndefined();
  });

  it("all sizes of a thickness, cheapest by area first, whatever the table's order", () => {
    const sizes = [
      sheet("dear", 6.35, { price: money(200) }),
      sheet("small", 6.35, { length: mm(1200), price: money(50) }),
      sheet("large", 6.35),
      sheet("counted", 6.35, { count: 0 }),
    ];
    const order = [false, "counted", "large", "small", "dear"];
    expect(found(6.35, sizes)).toEqual(order);
    expect(found(6.35, [...sizes].reverse())).toEqual(order);
  });
});

describe("a blank on a sheet", () => {
  const blank = (length: number, width: number) => ({ length: mm(length), width: mm(width) });
  it.each([
    [2400, 1200, true],
    [1200, 2400, true],
    [2400.1, 1200, false],
    [1200.1, 2400, false],
    [2400 + 1e-7, 1200, true], // what a conversion leaves behind
  ])("%d x %d mm: %s", (length, width, fits) => {
    expect(fitsOn({ length: mm(2400), width: mm(1200) }, blank(length, width))).toBe(fits);
  });
});
