/** BILL.BREAKS: a line by quantity in its bill, against the bill itself and the bracket that is worked by hand. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, isCellError } from "../../../src/units/cell.ts";
import { WORKED_BRACKET } from "../../reference/worked-bracket.ts";
import { answer, bill, bracket, columnOf, given, type Line, rates, SHOP, underRule } from "../example/tables.ts";

const NO_MINIMUM = { rates: rates({ "Minimum charge": 0, "Line minimum": 0 }) };
function asked(part: unknown, quantities: string, lines: readonly Line[], tables = {}): CellMatrix | string {
  const args = underRule("BILL.BREAKS", [part as string, quantities, ...given(bill(...lines), { ...SHOP, ...tables })]);
  const { value } = shopFunctions.call("BILL.BREAKS", args);
  return isCellError(value) ? (value.message ?? value.code) : (value as CellMatrix);
}
const rowsOf = (spill: CellMatrix | string) => {
  if (typeof spill === "string") throw new Error(spill);
  return columnOf(spill, "Quantity").map((quantity, i) => [quantity, columnOf(spill, "Unit price")[i]]);
};

describe("BILL.BREAKS", () => {
  it("of the bracket alone is what the bill asks for with that quantity; of its own the figure worked by hand", () => {
    const found = rowsOf(asked("hb1", "40; 10", [bracket()], NO_MINIMUM));
    const alone = (Quantity: number) =>
      columnOf(answer("BILL.PRICE", [bracket({ Quantity })], NO_MINIMUM), "Unit price")[0];
    expect(found).toEqual([
      [10, alone(10)],
      [20, WORKED_BRACKET[36]!.value],
      [40, alone(40)],
    ]);
  });
  it("beside another line it takes what the order costs more, and the other keeps its price", () => {
    const other = bracket({ Part: "HB2", Flanges: "3; 3", Quantity: 8 });
    const total = (Quantity: number) =>
      columnOf(answer("BILL.PRICE", [bracket({ Quantity }), other], NO_MINIMUM), "Price") as number[];
    const [, second] = total(20);
    const [first40, second40] = total(40);
    const [, , [, each]] = rowsOf(asked("HB1", "10; 40", [bracket(), other], NO_MINIMUM)) as [[], [], number[]];
    expect(each).toBeCloseTo(Math.ceil(((first40! + second40! - second!) / 40) * 100 - 1e-6) / 100, 9);
  });
  it.each([
    ["a part that is not there", "HB9", [bracket()], /^part must be a part of the bill; got "HB9"; nearest is "HB1"/],
    ["one on two lines", "HB1", [bracket(), bracket()], /^part must be .* once; got "HB1"; 2 lines have it/],
    [
      "one that is not quoted",
      "HB1",
      [bracket({ Width: 130 })],
      /^part must be a line that is quoted; got "HB1"; no quote: /,
    ],
    ["no part", null, [bracket()], /^part must be a part of the bill; got nothing/],
  ])("refuses %s", (_, part, lines, says) => {
    expect(asked(part, "10", lines)).toMatch(says);
  });
  it("names the line that is lost where a quantity uses up the counted sheets", () => {
    const counted = SHOP.stock.map((row, i) => (i === 0 ? row : row.with(SHOP.stock[0]!.indexOf("Sheets"), 1)));
    const found = asked("HB1", "20; 20000", [bracket()], { stock: counted }) as CellMatrix;
    expect(columnOf(found, "Message")[1]).toMatch(/same lines are quoted; got 20000; HB1 is not/);
    expect(columnOf(found, "Unit price")[1]).toBe("");
  });
});
