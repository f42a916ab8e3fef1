/** One spill feeds the next: blanks to the cut plan, the plan to price and purchase, the routes to times. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { ARGUMENTS, BRACKET, bill, columnOf, range, STOCK } from "./sample-shop.ts";

const ask = (name: string, args: (CellMatrix | CellValue)[]): CellMatrix => {
  const { value } = shopFunctions.call(name, args);
  if (isCellError(value)) throw new Error(value.message);
  return value as CellMatrix;
};
const NONSENSE: CellValue[] = ["??", "cheese", 1, 1, 4, "2; 3", 90];
const THIN: CellValue[] = ["Thin", "5052-H32", 0.125, 30, 6, "1; 2; 1", 90];
const of = bill(BRACKET, NONSENSE, THIN);
const args = ARGUMENTS(of);
const LIMITS = range(["Cut length (in)"], [120]);
const plan = ask("CUT.PLAN", [ask("BILL.BLANKS", args["BILL.BLANKS"]!), STOCK, LIMITS]);

describe("from the blanks to the price", () => {
  it("a refused line has no blank, and stops nobody's plan", () => {
    const totals = plan.slice(1).filter((row) => row[0] === "Total");
    expect(totals.map((row) => row[2])).toEqual(["A36", "5052-H32"]);
  });

  it("the material of all lines is the price of all sheets", () => {
    const price = ask("BILL.PRICE", [...args["BILL.PRICE"]!, plan]);
    const material = columnOf(price, "Material").filter((value) => typeof value === "number") as number[];
    const sheets = plan.slice(1).filter((row) => row[0] === "Total");
    const paid = sheets.reduce((sum, row) => sum + (row[plan[0]!.indexOf("Price")] as number), 0);
    expect(material).toHaveLength(2);
    expect(material[0]! + material[1]!).toBeCloseTo(paid, 8);
  });

  it("what is bought is what the plan pulls", () => {
    const sheets = ask("BILL.SHEETS", [...args["BILL.SHEETS"]!, plan]);
    const pulled = plan
      .slice(1)
      .filter((row) => row[0] === "Total")
      .map((row) => row[plan[0]!.indexOf("Sheets")]);
    expect(columnOf(sheets, "Sheets").slice(0, 2)).toEqual(pulled);
    expect(columnOf(sheets, "Message").at(-1)).toMatch(/^bill row 3 column "Material"/);
  });

  it("times follow the routes", () => {
    const routes = ask("BILL.ROUTE", args["BILL.ROUTE"]!);
    const times = ask("BILL.TIMES", [...args["BILL.TIMES"]!, routes]);
    const cut = new Map(columnOf(routes, "Part").map((part, i) => [part, columnOf(routes, "Route")[i]]));
    const stations = columnOf(times, "Part").map((part, i) => [part, columnOf(times, "Station")[i]]);
    for (const [part, route] of cut) {
      const station = route === "" ? "" : route === "shear" ? "Shear" : "Waterjet";
      expect(stations).toContainEqual([part, station]);
    }
  });
});
