/** The sheets of the sample workbooks as they are stored, read cell by cell: none may contradict another. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { headers, type SpillName } from "../../../src/cells/record/spill-columns.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import type { Sheet } from "../../../src/sheet/workbook/sheet.ts";
import { STAGE_JOB } from "../../../src/tools/sample/file.ts";
import type { CellValue } from "../../../src/units/cell.ts";
import { contradictions, type Views } from "../../bill/contradictions.ts";
import { NAMES, type Row } from "../../bill/views.ts";

const { sheets } = readWorkbook(new Uint8Array(readFileSync(STAGE_JOB.file)));
const sheetNamed = (name: string): Sheet => sheets.find((sheet) => sheet.name === name)!;
const plain = (title: CellValue | undefined): string => String(title ?? "").replace(/ \(.*\)$/, "");

/** The block under the header that begins with this title and goes on like the spill of that name. */
function block(sheet: Sheet, titles: readonly string[]): Row[] {
  const { values, lastRow, lastColumn } = sheet;
  for (let row = 0; row <= lastRow; row++)
    for (let left = 0; left <= lastColumn; left++) {
      if (!titles.every((title, i) => plain(values[left + i]?.[row]) === title)) continue;
      const rows: Row[] = [];
      for (let below = row + 1; below <= lastRow; below++) {
        const cells = titles.map((title, i) => [title, values[left + i]?.[below] ?? ""] as const);
        if (cells.every(([, value]) => value === "")) break;
        rows.push(Object.fromEntries(cells));
      }
      return rows;
    }
  throw new Error(`sheet ${sheet.name} must have a header ${titles.join(", ")}; got none`);
}

const SHEET_OF: Readonly<Record<(typeof NAMES)[number], string>> = {
  "BILL.CHECK": "Checks",
  "BILL.BLANKS": "Blanks",
  "BILL.ROUTE": "Route",
  "CUT.PLAN": "Cut plan",
  "CUT.LIST": "Cut list",
  "BILL.SHEETS": "Buying",
  "BILL.TIMES": "Times",
  "BILL.SETUPS": "Set-ups",
  "BILL.MACHINES": "Machines",
  "BILL.PRICE": "Price",
  "BILL.WHATIF": "What-if",
  "BILL.STATIONS": "What-if",
  "BILL.LOADIN": "Load-in",
  "BILL.SUMMARY": "Summary",
};
const views = Object.fromEntries(
  NAMES.map((name) => [name, block(sheetNamed(SHEET_OF[name]), headers(name as SpillName))]),
) as unknown as Views;
const checks = views["BILL.CHECK"] as Row[];
const prices = views["BILL.PRICE"] as Row[];

describe("the stage job", () => {
  it("has no contradiction between its sheets", () => {
    const lines = sheetNamed("Parts").values[0]!.filter((cell) => typeof cell === "string").length - 3;
    expect(checks.length).toBe(lines);
    expect(contradictions(views, { lines, hasStock: true })).toEqual([]);
  });

  it("says on the sheet Answers what the sheet Checks says", () => {
    const answers = block(sheetNamed("Answers"), ["Part", "Description", "Quantity", "Material"]);
    expect(answers.map((row) => row["Part"])).toEqual(checks.map((row) => row["Part"]));
    const { values } = sheetNamed("Answers");
    const top = values[0]!.indexOf("Part");
    for (const [title, header] of [
      ["Status", "Status"],
      ["What is wrong", "Sentence"],
      ["Inside radius", "Radius"],
      ["Flat length", "Flat length"],
      ["Die", "Die"],
      ["Cut on", "Cut on"],
    ] as const) {
      const column = values.find((cells) => plain(cells?.[top]) === title)!;
      expect(
        checks.map((_, i) => column[top + 1 + i] ?? ""),
        title,
      ).toEqual(checks.map((row) => row[header]));
    }
  });

  it("quotes to the customer what the sheet Price says, to the cent", () => {
    const quote = block(sheetNamed("Quote"), ["Part", "Description", "Quantity", "Unit price", "Total", "Remark"]);
    const lines = prices.slice(0, checks.length);
    expect(quote.map((row) => [row["Part"], row["Quantity"], row["Unit price"], row["Total"]])).toEqual(
      lines.map((row) => [row["Part"], row["Quantity"], row["Unit price"], row["Price"]]),
    );
    for (const row of quote) expect(row["Total"] === "", String(row["Part"])).toBe(row["Remark"] !== "");
    expect(quote.filter((row) => row["Total"] !== "").map((row) => row["Part"])).toEqual(
      checks.filter((row) => row["Quoted"] === "yes").map((row) => row["Part"]),
    );
  });
});
