/** A bill of metal and of goods that are cut only, through every function about a whole bill: none of them falls over. */
import { describe, expect, it } from "vitest";
import { RECORDS, shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { before, bill, bracket, given, SHOP } from "../example/tables.ts";

/** Acrylic timed by the shop, in edition 2026.2. */
const MATERIALS: CellMatrix = [
  ["Name", "Materials edition", "Timed feed (in/min)", "Timed thickness (in)"],
  ["Acrylic", "2026.2", 40, 0.25],
];
const SHEET: Record<string, CellValue> = { Material: "Acrylic", Thickness: 0.25, Length: 96, Width: 48, Price: 100 };
const stock = [...SHOP.stock, SHOP.stock[0]!.map((head) => SHEET[String(head).replace(/ \(.*$/, "")] ?? null)];
const LINES = bill(
  bracket({ Part: "AC", Material: "Acrylic", Flanges: "10", "Bend angles": null, Width: 10, Holes: 2 }),
  bracket({}),
);

function ask(name: string): CellMatrix {
  const { parameters } = RECORDS.find((record) => record.name === name)!;
  const call = [...before(name, LINES), ...given(LINES, { ...SHOP, stock })];
  const place = Object.keys(parameters).indexOf("data");
  while (call.length < place) call.push(null);
  const { value } = shopFunctions.call(name, [...call, MATERIALS]);
  if (isCellError(value)) throw new Error(value.message ?? value.code);
  return value as CellMatrix;
}
const row = (matrix: CellMatrix, name: string) => {
  const found = matrix.find(([first]) => first === name)!;
  return Object.fromEntries(matrix[0]!.map((head, i) => [String(head).replace(/ \(.*$/, ""), found[i]]));
};

describe("a bill of metal and acrylic", () => {
  it.each(RECORDS.map(({ name }) => name).filter((name) => /^(BILL|CUT)\./.test(name)))("%s answers", (name) => {
    expect(ask(name).length).toBeGreaterThan(1);
  });

  it("the acrylic is cut on the waterjet from a sheet of its own and priced", () => {
    expect(row(ask("BILL.CHECK"), "AC")).toMatchObject({ Status: "clear", "Cut on": "waterjet", Quoted: "yes" });
    expect(row(ask("BILL.ROUTE"), "AC")).toMatchObject({ Route: "waterjet", "On shear": "" });
    expect(row(ask("BILL.SHEETS"), "Acrylic")).toMatchObject({ "Cut on": "waterjet", Sheets: 1, Price: 100 });
    expect(row(ask("BILL.PRICE"), "AC")["Unit price"]).toBeGreaterThan(0);
  });

  it("asks for no shear, and what it asks of a shear for the metal is SHEAR.MAXTHICKNESS turned round", () => {
    const machines = ask("BILL.MACHINES");
    const sheared = machines.filter(([question]) => /shear/i.test(String(question))).map((found) => found.join(" "));
    expect(sheared.length).toBeGreaterThan(1);
    expect(sheared.filter((found) => found.includes("AC"))).toEqual([]);
    expect(row(machines, "Least shear rating, mild steel")["Value"]).toBeCloseTo(0.25, 9);
  });
});
