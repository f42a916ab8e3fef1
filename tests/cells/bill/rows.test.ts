import { describe, expect, it } from "vitest";
import { findRecord, shopFunctions } from "../../../src/cells/catalogue.ts";
import { headers, SPILLS, type SpillName } from "../../../src/cells/record/spill-columns.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { ARGUMENTS, BRACKET, bill, columnOf, rates } from "./sample-shop.ts";

const SECOND: CellValue[] = [
  "HB2",
  "5052-H32",
  0.125,
  12,
  6,
  "1; 2; 1",
  90,
  0,
  null,
  "Deburr; Tap 2; Coating",
  null,
  "Truss",
  null,
];
const NONSENSE: CellValue[] = ["??", "cheese", -4, "many", 4, "2; ; 3", "ninety", null, null, null, null, null, null];
const ask = (name: string, of: CellMatrix, table?: CellMatrix): CellMatrix => {
  const { value } = shopFunctions.call(name, ARGUMENTS(of, table)[name]!);
  if (isCellError(value)) throw new Error(value.message);
  return value as CellMatrix;
};
const names = Object.keys(ARGUMENTS(bill(BRACKET)));
const lined = names.filter((name) => name !== "BILL.MACHINES");

describe("one row of nonsense", () => {
  it.each(lined)("%s: says so in its own row and leaves the others right", (name) => {
    const good = ask(name, bill(BRACKET, SECOND));
    const mixed = ask(name, bill(BRACKET, NONSENSE, SECOND));
    const messages = columnOf(mixed, "Message").filter((text) => String(text).startsWith("bill row 3"));
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatch(/^bill row 3 column "[A-Z][a-z -]+" must be .+; got .+/);
    const others = mixed.filter((row) => !row.includes(messages[0]!));
    const withoutTotal = others.map((row) => row.map((cell) => (String(cell).includes("have no price") ? "" : cell)));
    expect(withoutTotal).toEqual(good);
  });

  it("BILL.MACHINES: counts it apart", () => {
    const good = ask("BILL.MACHINES", bill(BRACKET, SECOND));
    const mixed = ask("BILL.MACHINES", bill(BRACKET, NONSENSE, SECOND));
    expect(mixed.slice(0, -1)).toEqual(good);
    expect(mixed.at(-1)!.slice(0, 2)).toEqual(["Lines that could not be read", 1]);
  });

  it("the total says that a line is missing", () => {
    const total = ask("BILL.PRICE", bill(BRACKET, NONSENSE)).at(-1)!;
    expect(total.at(-1)).toBe("1 of 2 lines have no price and are not in the total");
  });
});

describe("every spill", () => {
  it.each(names)("%s has the columns that are fixed, and no cell that is no value", (name) => {
    const spill = ask(name, bill(BRACKET, SECOND));
    expect(spill[0]!.map((cell) => String(cell).replace(/ \(.*\)$/, ""))).toEqual(headers(name as SpillName));
    for (const row of spill) {
      expect(row).toHaveLength(SPILLS[name as SpillName].length);
      for (const cell of row) expect(["number", "string"]).toContain(typeof cell);
    }
  });

  it.each(names)("%s answers the same in millimetres", (name) => {
    const given = ARGUMENTS(bill(BRACKET, SECOND))[name]!;
    const inches = shopFunctions.call(name, given).value as CellMatrix;
    const padded = [...given, ...Array.from({ length: unitsAt(name) - given.length }, () => null), "mm"];
    const metric = shopFunctions.call(name, padded).value as CellMatrix;
    SPILLS[name as SpillName].forEach(({ header, kind }) => {
      if (kind !== "length") return;
      const pairs = columnOf(inches, header).map((value, i) => [value, columnOf(metric, header)[i]]);
      for (const [inch, mm] of pairs) if (typeof inch === "number") expect(mm).toBeCloseTo(inch * 25.4, 6);
    });
  });
});

const unitsAt = (name: string): number => Object.keys(findRecord(name)!.parameters).indexOf("units");

describe("rates", () => {
  it("what is missing is asked for by name", () => {
    const table = rates({}).filter(([name]) => name !== "Overhead");
    const { value } = shopFunctions.call("BILL.PRICE", ARGUMENTS(bill(BRACKET), table)["BILL.PRICE"]!);
    expect(isCellError(value) && value.message).toBe('rates must be a table with a row "Overhead"; got none');
  });

  it("a percentage is read once, and refused where it could be two things", () => {
    const price = (cell: CellValue, unit: CellValue) => {
      const table = rates({}).map((row): CellValue[] => (row[0] === "Margin" ? ["Margin", cell, unit] : row));
      const { value } = shopFunctions.call("BILL.PRICE", ARGUMENTS(bill(BRACKET), table)["BILL.PRICE"]!);
      return isCellError(value) ? value.message : columnOf(value as CellMatrix, "Unit price")[0];
    };
    expect(price(0.3, null)).toBe(6.43);
    expect(price(30, "%")).toBe(6.43);
    expect(price("30%", null)).toBe(6.43);
    expect(price(0.3, "%")).toContain("must be clear");
    expect(price(30, null)).toContain("must be a share");
  });
});
