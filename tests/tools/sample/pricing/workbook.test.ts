import { readFileSync } from "node:fs";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { readWorkbook } from "../../../../src/sheet/workbook/read-workbook.ts";
import { PRICING } from "../../../../src/tools/sample/file.ts";
import type { CellValue } from "../../../../src/units/cell.ts";

const stored = new Uint8Array(readFileSync(PRICING.file));
const { sheets } = readWorkbook(stored);
const valuesOf = (sheet: string) => sheets.find(({ name }) => name === sheet)!.values;
const cell = (sheet: string, row: number, column: number): CellValue => valuesOf(sheet)[column - 1]?.[row - 1] ?? null;
/** The row whose first column says so. */
const rowOf = (sheet: string, label: string, column = 1): number => valuesOf(sheet)[column - 1]!.indexOf(label) + 1;

describe("what quantity and margin do to one part", () => {
  const quantity = Number(cell("Breaks", 7, 2));
  const cost = Number(cell("Breaks", 8, 2));
  const margin = Number(cell("Breaks", 9, 2));
  const breakRow = valuesOf("Breaks")[0]!.indexOf(quantity, 15) + 1;

  it("at the quantity of the bill is the bill's own unit price", () => {
    const part = String(cell("Breaks", 4, 2));
    expect(cell("Breaks", breakRow, 3)).toBe(cell("Price", rowOf("Price", part), 9));
  });

  it("leaves the margin: cost / (1 - margin), up to the cent", () => {
    expect(cell("Breaks", 13, 2)).toBeCloseTo(Math.ceil((cost / (1 - margin)) * 100) / 100, 9);
  });

  it("never raises the price of a piece by making more of them", () => {
    const prices = Array.from({ length: 6 }, (_, i) => Number(cell("Breaks", 17 + i, 3)));
    expect(prices).toEqual([...prices].sort((a, b) => b - a));
    expect(prices[0]).toBeGreaterThan(prices[5]!);
  });
});

describe("our own strips", () => {
  it.each([1, 2, 3])("deduction of strip %i is its flanges less its blank", (strip) => {
    const [blank, first, second] = [3, 4, 5].map((column) => Number(cell("Strips", 4 + strip, column)));
    expect(cell("Strip check", 4 + strip, 4)).toBeCloseTo(first! + second! - blank!, 9);
  });

  it("move the corrected deduction to where they lie, from the prediction", () => {
    // Three strips of 10 ga over V 1 have 0.266 to 0.269 in; the prediction says 0.229 in.
    const corrected = Number(cell("Air bends", rowOf("Air bends", "Shelf angle"), 7));
    const predicted = Number(cell("Strip check", 10, 5));
    const measured = [8, 9, 10].map((row) => Number(cell("Strip check", row, 4)));
    expect(corrected).toBeGreaterThan(predicted);
    expect(corrected).toBeLessThanOrEqual(Math.max(...measured));
  });
});

describe("locked sheets", () => {
  const parts = unzipSync(stored);
  const xmlOf = (name: string): string => {
    const index = sheets.findIndex((sheet) => sheet.name === name) + 1;
    return strFromU8(parts[`xl/worksheets/sheet${index}.xml`]!);
  };
  const styles = strFromU8(parts["xl/styles.xml"]!);
  const formats = [
    ...styles
      .split("<cellXfs")[1]!
      .split("</cellXfs>")[0]!
      .matchAll(/<xf [^>]*?(?:\/>|>.*?<\/xf>)/g),
  ];
  const isLocked = (style: number): boolean => !formats[style]![0].includes('locked="0"');
  const CALCULATED = ["Price", "Breaks", "Strip check", "Correction", "Evenness", "Air bends", "One bend", "Materials"];

  it.each([...CALCULATED, "Every function"])("%s is protected, without a password", (name) => {
    const [protection = ""] = xmlOf(name).match(/<sheetProtection[^>]*>/) ?? [];
    expect(protection).toContain('sheet="1"');
    expect(protection).not.toMatch(/password|hashValue/);
  });

  it.each(["Rates and machines", "Parts", "Strips", "Bed", "Bends"])("%s stays open", (name) => {
    expect(xmlOf(name)).not.toContain("<sheetProtection");
  });

  it.each(CALCULATED)("on %s every formula is locked and every input is not", (name) => {
    const cells = [...xmlOf(name).matchAll(/<c r="[A-Z]+\d+" s="(\d+)"[^>]*?(?:\/>|>(.*?)<\/c>)/g)];
    for (const [, style, inside = ""] of cells) if (inside.includes("<f")) expect(isLocked(Number(style))).toBe(true);
    if (["Breaks", "Evenness", "One bend", "Materials"].includes(name))
      expect(cells.some(([, style]) => !isLocked(Number(style)))).toBe(true);
  });
});
