/** The bracket worked by hand against the functions, line by line and to the cent. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import type { CellMatrix } from "../../../src/units/cell.ts";
import { WORKED_BRACKET } from "../../reference/worked-bracket.ts";
import { answer, BRACKET, bill, columnOf, given, underRule } from "../example/tables.ts";

const worked = (line: number): number => WORKED_BRACKET[line - 1]!.value;
const figure = (name: string, column: string, row = 0): number =>
  columnOf(answer(name, [BRACKET]), column)[row] as number;

describe("the worked bracket", () => {
  it.each([
    ["BILL.BLANKS", "Length", 14],
    ["BILL.BLANKS", "Weight each", 15],
    ["BILL.BLANKS", "Quantity", 16],
    ["BILL.SHEETS", "Sheets", 17],
    ["BILL.PRICE", "Material", 18],
    ["BILL.PRICE", "Labor", 33],
    ["BILL.PRICE", "Set-up", 34],
    ["BILL.PRICE", "Overhead", 35],
    ["BILL.PRICE", "Cost", 36],
    ["BILL.PRICE", "Unit price", 37],
    ["BILL.PRICE", "Price", 38],
  ] as const)("%s %s is line %i", (name, column, line) => {
    // Cut plans work on a grid of 1/320 mm: remnants are that much shorter than by hand.
    expect(figure(name, column)).toBeCloseTo(worked(line), line === 18 || line === 36 ? 3 : 8);
  });

  it("times at shear, drill and brake are lines 20 to 32", () => {
    const times = answer("BILL.TIMES", [BRACKET]);
    expect(columnOf(times, "Station")).toEqual(["Shear", "Drill", "Brake"]);
    const seconds = (column: string) => columnOf(times, column).map((minutes) => (minutes as number) * 60);
    const close = (found: number[], lines: number[]) =>
      found.forEach((value, i) => {
        expect(value).toBeCloseTo(worked(lines[i]!), 7);
      });
    close(seconds("Each"), [20, 28, 26]);
    close(seconds("Set-up"), [30, 32, 31]);
    const runs = seconds("Total").map((total, i) => total - worked([30, 32, 31][i]!));
    close(runs, [21, 29, 27]);
  });

  it("the last step of the working of the price is the total", () => {
    const steps = shopFunctions.call("WORKING", ["BILL.PRICE", ...underRule("BILL.PRICE", given(bill(BRACKET)))])
      .value as CellMatrix;
    expect(steps.at(-1)![2]).toBe(Math.max(250, worked(38))) /* the order minimum */;
    expect(steps.map((step) => step[0])).toContain("BD");
  });
});
