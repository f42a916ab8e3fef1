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
    ["half a thousandth of an inch thicker", 4.7727, [false, "five"]],
    ["thicker than the thin one by more than a way of writing", 4.773, [true, "six"]],
    ["the next thicker, not the thickest", 3, [true, "five"]],
    ["none is thick enough", 6.4, undefined],
  ])("%s", (_, thickness, answer) => expect(found(thickness)).toEqual(answer));

  // 1 in = 25.4 mm exactly (international yard and pound agreement of 1959): 4 mm is 0.1575 in.
  it.each([
    ["4 mm from a sheet of 0.157 in", 4, 0.157],
    ["4 mm from a sheet of 0.1575 in", 4, 0.1575],
    ["0.157 in from a sheet of 4 mm", 0.157 * 25.4, 4 / 25.4],
    ["10 ga, 0.1345 in, from a sheet of 0.135 in", 0.1345 * 25.4, 0.135],
    ["10 ga, 0.1345 in, from a sheet of 0.134 in", 0.1345 * 25.4, 0.134],
  ])("%s is the same sheet", (_, thickness, inches) => {
    expect(found(thickness, [sheet("it", inches * 25.4)])).toEqual([false, "it"]);
  });

  it("a thousandth of an inch is another sheet", () => {
    expect(found(0.157 * 25.4, [sheet("it", 0.158 * 25.4)])).toEqual([true, "it"]);
    expect(found(0.157 * 25.4, [sheet("it", 0.156 * 25.4)])).toBeUndefined();
  });

  it("the cheapest by area come first, then the larger, then those whose name does", () => {
    const large = { length: mm(3000), width: mm(1500), price: money(156.25) }; // 34.72 a square meter, as 100 for 2400 x 1200
    const stock = [
      sheet("dear", 5, { price: money(101) }),
      sheet("b", 5),
      sheet("c", 5),
      sheet("a", 5),
      sheet("large", 5, large),
      sheet("cheap", 5, { price: money(99) }),
    ];
    const order = [false, "cheap", "large", "a", "b", "c", "dear"];
    expect(found(5, stock)).toEqual(order);
    expect(found(5, [...stock].reverse())).toEqual(order);
  });

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
