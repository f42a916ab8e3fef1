/** What the customer's copy says of lines that are not quoted. README promises: no rates, costs or machines in the file. */
import { describe, expect, it } from "vitest";
import { noQuoteSays } from "../../../src/bill/says.ts";
import { SHOP_TABLES } from "../../../src/cells/example/invented-shop.ts";
import { customerCopy } from "../../../src/job/copies/customer-copy.ts";
import { jobPlan } from "../../../src/job/job-plan.ts";
import { FIRST_LINE, QUOTE, REMARK_COLUMN } from "../../../src/job/job-sheets/quote-sheet.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";

const BILL: CellMatrix = [
  ["Part", "Material", "Thickness", "Quantity", "Width", "Flanges", "Bend angles"],
  ["ANGLE", "A1011 CS", "11 ga", 40, 12, "2; 3", "90"],
  ["LONG", "A36", "1/4", 4, 130, "3; 3", "90"],
  ["ABSENT", "A36", "2", 2, 8, "4", null],
  ["HUGE", "A1011 CS", "11 ga", 2, 200, "90", null],
  ["WRONG", "steel", "1/4", 2, 8, "2; 3", "90"],
];
const tables = [
  { name: "Parts", rows: BILL },
  ...SHOP_TABLES.map(({ name, headers, rows }) => ({ name, rows: [[...headers], ...rows.map((row) => [...row])] })),
];

describe("the customer's copy", () => {
  const { plan } = jobPlan(tables)!;
  const shopSays = (i: number): CellValue =>
    plan.lines[i]!.isQuoted ? null : noQuoteSays(plan.lines[i]!.findings, "in");
  const quote = plan.lines.map(({ part }, i): CellValue[] => [part, "", null, null, null, shopSays(i)]);
  const above = Array.from({ length: FIRST_LINE - 1 }, (): CellValue[] => []);
  const book = [...tables, { name: QUOTE, rows: [...above, ...quote] }];
  const { cells } = customerCopy(book, [""]).sheets[0]!;
  const remark = (part: string): CellValue => {
    const { row } = cells.find(({ value }) => value === part)!;
    return cells.find((cell) => cell.row === row && cell.column === REMARK_COLUMN)?.value ?? null;
  };

  it.each([
    ["ANGLE", null],
    ["LONG", "no quote: cannot be bent as drawn"],
    ["ABSENT", "no quote: we have no sheet for it"],
    ["HUGE", "no quote: larger than the sheets we have"],
    ["WRONG", "no quote: we have a question about this line"],
  ])("%s: %j", (part, said) => expect(remark(part)).toBe(said));

  it("names nothing of the shop, where the shop's own quote does", () => {
    const { brakes, dies, punches, shears, waterjets } = plan.shop;
    const names = [...brakes, ...dies, ...punches, ...shears, ...waterjets].map(({ name }) => name);
    const named = (said: string) => names.filter((name) => new RegExp(`\\b${name}\\b`).test(said));
    expect(named(quote.flat().join("\n"))).not.toEqual([]);
    expect(named(cells.map(({ value }) => String(value ?? "")).join("\n"))).toEqual([]);
  });
});
