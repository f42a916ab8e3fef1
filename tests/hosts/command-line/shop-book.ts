/** Small workbooks and part lists for the commands, of the invented shop or of a few of its rows. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { afterAll } from "vitest";
import * as shop from "../../../src/cells/example/invented-shop.ts";
import type { Command } from "../../../src/hosts/command-line/command.ts";
import { noCustomFunctions } from "../../../src/sheet/evaluate/custom-functions.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";

/** Writes a file into a folder of the test's own, which goes when its tests are done. */
export function testFolder(): (name: string, content: Uint8Array | string) => string {
  const folder = mkdtempSync(join(tmpdir(), "commands-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return (name, content) => {
    writeFileSync(join(folder, name), content);
    return join(folder, name);
  };
}

export async function run(command: Command, ...args: string[]) {
  const [out, notes]: [string[], string[]] = [[], []];
  const exit = await command(args, {
    functions: noCustomFunctions,
    version: "0",
    interactive: false,
    input: async () => "",
    out: (text) => out.push(text),
    note: (text) => notes.push(text),
  });
  return { exit, text: out.join(""), notes: notes.join("") };
}

export const matrixOf = ({ headers, rows }: shop.ShopTable): CellMatrix => [headers, ...rows].map((row) => [...row]);
/** The rows of a table that begin with these words. */
export const some = ({ headers, rows }: shop.ShopTable, ...names: string[]): CellMatrix => [
  [...headers],
  ...names.map((name) => [...rows.find(([first]) => first === name)!]),
];

export const JOB: CellMatrix = [
  ["Job", "Entry"],
  ["Job name", "Booth of the test"],
  ["Work can begin", "2026-03-02 07:00"],
  ["Must leave by", "2026-03-20 12:00"],
];
const REST = [
  ["A36", "1/4", 372],
  ["A1011 CS", "10 ga", 205],
  ["A1011 CS", "11 ga", 183],
  ["A1011 CS", "12 ga", 161],
  ["A1011 CS", "3 mm", 190],
].map(([material, thickness, price]): CellValue[] => [null, material!, thickness!, 120, 48, null, price!, 1]);
export const STOCK: CellMatrix = [[...shop.STOCK.headers], ...REST];

/** A shop of one brake, one die and one punch. */
export const ONE_DIE: readonly CellMatrix[] = [
  some(shop.BRAKES, "Brake 2"),
  some(shop.DIES, "V 1"),
  some(shop.PUNCHES, "Plain"),
  some(shop.SHEARS, "Shear 1"),
  matrixOf(shop.WATERJETS),
  matrixOf(shop.STATIONS),
  matrixOf(shop.RATES),
  STOCK,
  matrixOf(shop.CALENDAR),
  JOB,
];

/** One sheet, tables below each other as plain ranges, inline text and numbers, two rows of something else on top. */
export function workbook(...tables: readonly CellMatrix[]): Uint8Array {
  const escaped = (text: string) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;");
  const cell = (value: CellValue) =>
    value === null
      ? "<c/>"
      : typeof value === "number"
        ? `<c><v>${value}</v></c>`
        : `<c t="inlineStr"><is><t>${escaped(String(value))}</t></is></c>`;
  const top: CellMatrix = [["Our shop"], [null]];
  const rows = [...top, ...tables.flatMap((table) => [...table, [null]])].map(
    (row) => `<row>${row.map(cell).join("")}</row>`,
  );
  const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const package_ = "http://schemas.openxmlformats.org/package/2006";
  const parts: Record<string, string> = {
    "[Content_Types].xml": `<Types xmlns="${package_}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    "_rels/.rels": `<Relationships xmlns="${package_}/relationships"><Relationship Id="r1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    "xl/workbook.xml": `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets><sheet name="Shop" sheetId="1" r:id="r1"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": `<Relationships xmlns="${package_}/relationships"><Relationship Id="r1" Type="${relations}/worksheet" Target="sheet1.xml"/></Relationships>`,
    "xl/sheet1.xml": `<worksheet xmlns="${main}"><sheetData>${rows.join("")}</sheetData></worksheet>`,
  };
  return zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])));
}

export const HEADER = "Part,Material,Thickness,Quantity,Width,Flanges,Bend angles,Cross flanges,Cross angles,Due";
/** Every way a part is made, one line each, and two that nobody can read. */
export const LIST = [
  HEADER,
  "L1,A1011 CS,11 ga,20,6,2; 3,90",
  "Z1,A1011 CS,11 ga,10,6,2; 2.5; 2,90; -90",
  "H1,A1011 CS,12 ga,8,6,1.5; 2; 4; 2; 1.5,-90; 90; 90; -90",
  "T1,A1011 CS,12 ga,6,,1.5; 8; 1.5,90,1.5; 6; 1.5,90",
  "P1,A1011 CS,10 ga,12,6,8,",
  "M1,A1011 CS,3 mm,5,100 mm,50 mm; 60 mm,90",
  "B1,A1011 CS,banana,1,6,2; 3,90",
  "B2,cheese,11 ga,1,6,2; 3,90",
  "F1,A1011 CS,11 ga,4,6,0.4; 3,90",
].join("\n");
/** The same as the cells of a worksheet. */
export const LIST_CELLS: CellMatrix = LIST.split("\n").map((row) =>
  Array.from({ length: HEADER.split(",").length }, (_, i) => row.split(",")[i] || null),
);

/** Figures worked by hand go by the shop's rule, which is the method of this edition. */
export const RULE: CellMatrix = [
  ["Material", "Materials edition"],
  [null, "2026.1"],
];
