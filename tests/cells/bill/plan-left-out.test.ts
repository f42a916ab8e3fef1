import { expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import {
  EXAMPLE_CUTTERS,
  EXAMPLE_RATES,
  EXAMPLE_STATIONS,
  EXAMPLE_STOCK,
} from "../../../src/cells/example/example-bill.ts";
import { evaluateFormula } from "../../../src/sheet/recalculate/calculate-one.ts";
import type { CellMatrix } from "../../../src/units/cell.ts";

const PLAN = (blanks: string): string =>
  `{"Pattern","Stock","Material","Thickness (in)","Length (in)","Width (in)","Sheets","Blanks","Price";"1","48 x 96","A36",0.25,96,48,1,"${blanks}",220}`;
const priced = (blanks: string) =>
  evaluateFormula(
    `=SHOP.BILL.PRICE(${EXAMPLE_CUTTERS},${EXAMPLE_STOCK},${EXAMPLE_STATIONS},${EXAMPLE_RATES},${PLAN(blanks)})`,
    shopFunctions,
  ).value as CellMatrix;

it("a line whose blanks the plan cuts bears the price of the sheet", () => {
  const [header, row] = priced("HB1 x 40");
  expect(row![header!.indexOf("Material")]).toBe(220);
  expect(row![header!.indexOf("Message")]).toBe("");
});

it("a line that the plan leaves out is refused instead of priced with metal it does not get", () => {
  const [header, row] = priced("another x 40");
  expect(row![header!.indexOf("Message")]).toMatch(/^plan must be one that cuts all \d+ blanks of HB1; got 0; /);
});
