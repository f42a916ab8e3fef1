/** The bracket worked by hand, asked of the functions about a bill: the same invented shop, to the last digit given. */
import { ARGUMENTS, BRACKET, bill } from "../cells/bill/sample-shop.ts";
import type { PublishedCell } from "./published.ts";
import { WORKED_BRACKET } from "./worked-bracket.ts";

const given = ARGUMENTS(bill(BRACKET));

const worked = (name: string, column: string, line: number, row = 0, unit = 1): PublishedCell => {
  const { what, value } = WORKED_BRACKET[line - 1]!;
  return {
    id: `worked bracket, line ${line}: ${what}`,
    call: [name, ...given[name]!],
    column,
    row,
    expected: value / unit,
    tolerance: 1e-8,
    source: "arithmetic by hand from handbook values and an invented shop's rates (tests/reference/worked-bracket.ts)",
    basis: "derived",
  };
};
const SECONDS = 60;

export const workedBill: readonly PublishedCell[] = [
  worked("BILL.BLANKS", "Length", 14),
  worked("BILL.BLANKS", "Weight each", 15),
  worked("BILL.BLANKS", "Quantity", 16),
  worked("BILL.PRICE", "Material", 18),
  worked("BILL.TIMES", "Each", 20, 0, SECONDS),
  worked("BILL.TIMES", "Each", 28, 1, SECONDS),
  worked("BILL.TIMES", "Each", 26, 2, SECONDS),
  worked("BILL.TIMES", "Set-up", 30, 0, SECONDS),
  worked("BILL.TIMES", "Set-up", 32, 1, SECONDS),
  worked("BILL.TIMES", "Set-up", 31, 2, SECONDS),
  worked("BILL.PRICE", "Labour", 33),
  worked("BILL.PRICE", "Set-up", 34),
  worked("BILL.PRICE", "Overhead", 35),
  worked("BILL.PRICE", "Cost", 36),
  worked("BILL.PRICE", "Unit price", 37),
  worked("BILL.PRICE", "Price", 38),
];
