/** The bracket worked by hand, asked of the functions about a bill: the same invented shop, to the last digit given. */
import { BRACKET, bill, given } from "../cells/example/tables.ts";
import type { PublishedCell } from "./published.ts";
import { WORKED_BRACKET } from "./worked-bracket.ts";

const call = given(bill(BRACKET));

const worked = (name: string, column: string, line: number, row = 0, unit = 1): PublishedCell => {
  const { what, value } = WORKED_BRACKET[line - 1]!;
  return {
    id: `worked bracket, line ${line}: ${what} (${name})`,
    call: [name, ...call],
    column,
    row,
    expected: value / unit,
    tolerance: 1e-8,
    source:
      "arithmetic by hand from handbook values and an invented shop's figures (tests/reference/worked-bracket.ts)",
    basis: "derived",
  };
};
/** Cut plans work on a grid of 1/320 mm: remnants are that much shorter than by hand. */
const onTheGrid = (row: PublishedCell): PublishedCell => ({ ...row, tolerance: 1e-3 });
const SECONDS = 60;
const line = (number: number): number => WORKED_BRACKET[number - 1]!.value;

/** One more line of arithmetic on the lines of the bracket. */
const by = (what: string, name: string, column: string, expected: number, row = 0): PublishedCell => ({
  ...worked(name, column, 1, row),
  id: `worked bracket: ${what} (${name})`,
  expected,
});

/** (1 + 4 t / V) UTS L t^2 / V with an ordinary A36 of 65 ksi, in US tons. */
const force = (name: string, column: string): PublishedCell => ({
  ...by(
    "force at the brake",
    name,
    column,
    ((1 + (4 * line(1)) / line(8)) * 65 * line(4) * line(1) ** 2) / line(8) / 2,
  ),
  source: "Lange, Umformtechnik Bd. 3: (1 + 4 s/w) Rm b s^2 / w; 65 ksi between the 58 and 80 of ASTM A36 (memory)",
  basis: "memory",
});

export const workedBill: readonly PublishedCell[] = [
  worked("BILL.BLANKS", "Length", 14),
  worked("BILL.BLANKS", "Weight each", 15),
  worked("BILL.BLANKS", "Quantity", 16),
  onTheGrid(worked("BILL.PRICE", "Material", 18)),
  worked("BILL.TIMES", "Each", 20, 0, SECONDS),
  worked("BILL.TIMES", "Each", 28, 1, SECONDS),
  worked("BILL.TIMES", "Each", 26, 2, SECONDS),
  worked("BILL.TIMES", "Set-up", 30, 0, SECONDS),
  worked("BILL.TIMES", "Set-up", 32, 1, SECONDS),
  worked("BILL.TIMES", "Set-up", 31, 2, SECONDS),
  worked("BILL.PRICE", "Labor", 33),
  worked("BILL.PRICE", "Set-up", 34),
  worked("BILL.PRICE", "Overhead", 35),
  onTheGrid(worked("BILL.PRICE", "Cost", 36)),
  worked("BILL.PRICE", "Unit price", 37),
  worked("BILL.PRICE", "Price", 38),
  { ...worked("BILL.BREAKS", "Unit price", 37), call: ["BILL.BREAKS", "HB1", 20, ...call] },
  { ...worked("BILL.BREAKS", "Price", 38), call: ["BILL.BREAKS", "HB1", 20, ...call] },
  worked("BILL.CHECK", "Radius", 10),
  worked("BILL.LOADIN", "Weight each", 15),
  by("20 pieces in one stack", "BILL.LOADIN", "Stack weight", line(7) * line(15)),
  by("shear set-up and run", "BILL.ROUTE", "On shear", (line(30) + line(21)) / SECONDS),
  by("brake set-up and run", "BILL.ROUTE", "On brake", (line(31) + line(27)) / SECONDS),
  // What the route decides about: cutting and drilling, at 78 and 54 an hour.
  {
    ...by(
      "cutting and drilling",
      "BILL.ROUTE",
      "Cost",
      ((line(30) + line(21)) * 78 + (line(32) + line(29)) * 54) / 3600,
    ),
    tolerance: 5e-5, // costs are compared as whole ten-thousandths
  },
  by("the brake's hours", "BILL.WHATIF", "Hours", (line(31) + line(27)) / 3600),
  by("a whole sheet of steel, 0.284 lb/in^3", "BILL.SHEETS", "Weight each", 48 * 120 * line(1) * 0.284),
  by("sheets for 20 blanks", "BILL.SHEETS", "Sheets", line(17)),
  by("their price", "BILL.SHEETS", "Price", 372 * line(17)),
  by("their price in the cut plan", "CUT.PLAN", "Price", 372 * line(17)),
  by("20 blanks together", "BILL.SUMMARY", "Value", line(7) * line(15), 7),
  by("price of the one line, or the least order", "BILL.SUMMARY", "Value", Math.max(250, line(38)), 9),
  by("shear set-up and run", "BILL.SUMMARY", "Value", (line(30) + line(21)) / 3600, 17),
  by("brake set-up and run", "BILL.SUMMARY", "Value", (line(31) + line(27)) / 3600, 19),
  by("shear set-up and run", "BILL.STATIONS", "Load", (line(30) + line(21)) / 3600),
  by("brake set-up and run", "BILL.STATIONS", "Load", (line(31) + line(27)) / 3600, 2),
  by("drill set-up and run", "BILL.STATIONS", "Load", (line(32) + line(29)) / 3600, 3),
  ...(["BILL.CHECK", "BILL.SETUPS"] as const).map((name) => force(name, "Force")),
  force("BILL.MACHINES", "Value"),
];
