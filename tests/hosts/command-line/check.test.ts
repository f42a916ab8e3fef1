import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { afterAll, describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { check } from "../../../src/hosts/command-line/check.ts";
import { UsageError } from "../../../src/hosts/command-line/usage.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";
import { BRAKE, DIES, PUNCHES, RATES, SHEAR, WATERJET } from "../../cells/bill/sample-shop.ts";

const folder = mkdtempSync(join(tmpdir(), "check-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string, content: Uint8Array | string): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};

/** A workbook of one sheet: tables below each other, as plain ranges, inline text and numbers. */
function workbook(...tables: CellMatrix[]): Uint8Array {
  const escaped = (text: string) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;");
  const cell = (value: CellValue) =>
    value === null
      ? "<c/>"
      : typeof value === "number"
        ? `<c><v>${value}</v></c>`
        : `<c t="inlineStr"><is><t>${escaped(String(value))}</t></is></c>`;
  const rows = tables.flatMap((table) => [...table, [null]]).map((row) => `<row>${row.map(cell).join("")}</row>`);
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
const shop = file("shop.xlsx", workbook(BRAKE, DIES, PUNCHES, SHEAR, WATERJET, RATES));

async function run(...args: string[]) {
  const [out, notes]: [string[], string[]] = [[], []];
  const exit = await check(args, {
    functions: shopFunctions,
    version: "0",
    interactive: false,
    input: async () => "",
    out: (text) => out.push(text),
    note: (text) => notes.push(text),
  });
  return { exit, text: out.join(""), notes: notes.join("") };
}
async function parts(csv: Uint8Array | string) {
  const { exit, text, notes } = await run(file("parts.csv", csv), "--shop", shop, "--json");
  const lines =
    text === ""
      ? []
      : text
          .trim()
          .split("\n")
          .map((line) => JSON.parse(line));
  return { exit, notes, found: lines.slice(0, -1), summary: lines.at(-1)?.summary };
}

const HEADER = "Part,Material,Thickness,Quantity,Width,Flanges,Bend angles";
const GOOD = "A1,A36,1/4,4,3,2; 3,90";

describe("shop check", () => {
  it("one object a part, then the summary; exit 0 without a stop", async () => {
    const { exit, found, summary } = await parts(`${HEADER}\n${GOOD}\n`);
    expect(found).toEqual([{ row: 2, part: "A1", verdict: "clear", problems: [] }]);
    expect(summary).toEqual({ parts: 1, clear: 1, check: 0, stop: 0, unreadable: 0 });
    expect(exit).toBe(0);
  });

  it("a stop with its figure, limit, unit and remedy; a row of nonsense; exit 1", async () => {
    const { exit, found, summary } = await parts(`${HEADER}\n${GOOD}\nB,A36,1/4,1,130,2; 3,90\n\nC,cheese,x,1,1,1,\n`);
    expect(found.map(({ row, verdict }) => [row, verdict])).toEqual([
      [2, "clear"],
      [3, "stop"],
      [5, "unreadable"],
    ]);
    const bed = found[1].problems.find((problem: { check: string }) => problem.check === "bed length");
    expect(Object.keys(bed)).toEqual(["check", "severity", "value", "limit", "unit", "message", "remedy"]);
    expect(bed).toMatchObject({ severity: "stop", value: 130, limit: 120, unit: "in" });
    expect(found[2].problems).toHaveLength(1);
    expect(found[2].problems[0].message).toMatch(/^parts row 5 column "Thickness" must be .*; got "x"/);
    expect(summary).toEqual({ parts: 3, clear: 1, check: 0, stop: 1, unreadable: 1 });
    expect(exit).toBe(1);
  });

  const german =
    'Part;Material;Thickness (mm);Quantity;Width (mm);Flanges (mm);Bend angles\r\nA1;A36;6,35;1.250;1.200,5;"50,8; 76,2";90\r\n';
  const umlaut = german.replace("A1", "Bügel");
  it.each([
    ["semicolons, decimal commas, points for thousands, CRLF", strToU8(german), "A1"],
    ["a byte-order mark", strToU8(`\ufeff${german}`), "A1"],
    ["UTF-8", strToU8(umlaut), "Bügel"],
    ["the Windows code page", Uint8Array.from(umlaut, (c) => c.charCodeAt(0)), "Bügel"],
    ["UTF-16 with tabs", utf16(umlaut.replaceAll(";", "\t").replace("50,8\t", "50,8;")), "Bügel"],
    ["a line that names the separator", strToU8(`sep=;\r\n${german}`), "A1"],
  ])("%s", async (_, bytes, name) => {
    const { exit, found } = await parts(bytes);
    // 1200.5 mm is a bend of 47.3 in, and 1250 pieces are no obstacle: the part is read, and it is clear.
    expect(found).toEqual([{ row: 2, part: name, verdict: "clear", problems: [] }]);
    expect(exit).toBe(0);
  });

  it.each(["=1+1", "+A", "-B", "@SUM(A1)", '=HYPERLINK("x")'])("%s is data, in and out", async (name) => {
    const csv = `${HEADER}\n"${name.replaceAll('"', '""')}",A36,1/4,4,3,2; 3,90\n`;
    expect((await parts(csv)).found[0]).toMatchObject({ part: name, verdict: "clear" });
    const { text } = await run(file("parts.csv", csv), "--shop", shop);
    expect(text.split("\n")[0]).toBe(`2\t'${name}\tclear\t`);
  });

  it("the workbook's own materials are laid over the built-in ones, and a wrong cell among them is refused", async () => {
    const own = (density: CellValue) =>
      file(
        "own.xlsx",
        workbook(BRAKE, DIES, PUNCHES, SHEAR, WATERJET, RATES, [
          [
            "Material",
            "Density (lb/in^3)",
            "Shear strength (ksi)",
            "Tensile typical (ksi)",
            "Least radius",
            "Usual radius",
            "Air radius low",
            "Air radius high",
          ],
          ["A36", null, null, null, 5, 3, null, null],
          ["Shop plate", density, 48, 65, 0.5, 0.5, 0.15, 0.16],
        ]),
      );
    const csv = file("own.csv", `${HEADER}\n${GOOD}\n${GOOD.replace("A36", "Shop plate")}\n`);
    const { text } = await run(csv, "--shop", own(0.284), "--json");
    const [a36, plate] = text.split("\n").map((line) => (line ? JSON.parse(line) : {}));
    // The shop's own five thicknesses, 1.25 in, where the built-in table lets the same part pass.
    expect(a36.problems).toContainEqual(expect.objectContaining({ check: "radius", limit: 1.25 }));
    // Known to the shop alone, it is still judged: stronger than the steel the shear is rated for.
    expect(plate.problems).toEqual([expect.objectContaining({ check: "shear rating", severity: "check" })]);
    const refused = await run(csv, "--shop", own("heavy"), "--json");
    expect(refused).toMatchObject({ exit: 2, text: "" });
    expect(refused.notes).toMatch(/^materials row 3 column "density" must be .*; got "heavy"/);
  });

  it("a tolerance against the shop's own spreads", async () => {
    const { found } = await parts(`${HEADER},Tolerance\n${GOOD},0.1\n${GOOD},0.06\n${GOOD},0.01\n`);
    // By hand: edge 1/32, one bend 0.01, 0.5 degrees on 3 in 0.0262: 0.0674 at worst, 0.042 as a rule.
    expect(found.map(({ verdict }) => verdict)).toEqual(["clear", "check", "stop"]);
    expect(found[1].problems[0]).toMatchObject({ check: "tolerance", limit: 0.06 });
    expect(found[1].problems[0].value).toBeCloseTo(0.03125 + 0.01 + 3 * Math.tan(Math.PI / 360), 9);
  });

  it("a hole beside the bend, told by its distance alone", async () => {
    const { found } = await parts(`${HEADER},Hole distance\n${GOOD},0.2\n${GOOD},2\n`);
    expect(found.map(({ verdict }) => verdict)).toEqual(["stop", "clear"]);
    expect(found[0].problems[0]).toMatchObject({ check: "hole", value: 0.2, unit: "in" });
  });

  it("too thick for the shear goes to the waterjet and is no stop", async () => {
    const { found } = await parts(`${HEADER}\nT,A36,3/8,1,12,6; 6,90\n`);
    const rating = found[0].problems.find((problem: { check: string }) => problem.check === "shear rating");
    expect(rating).toMatchObject({ severity: "check", remedy: "Cut it on the waterjet Jet A." });
  });
});

describe("shop check refuses", () => {
  it.each([
    ["no file", ["--shop", shop]],
    ["no shop", ["parts.csv"]],
    ["an unknown option", ["parts.csv", "--shop", shop, "--loud"]],
  ])("%s: exit 64 by the caller", async (_, args) => {
    await expect(run(...args)).rejects.toBeInstanceOf(UsageError);
  });

  it.each([
    ["a missing column", `${HEADER.replace("Material,", "")}\n`, shop, /^parts must be a range .* column "Material"/],
    ["an empty file", "", shop, /^parts must be given/],
    ["no rows", `${HEADER}\n`, shop, /at least one row below its header/],
    ["a shop that is no workbook", `${HEADER}\n${GOOD}\n`, file("no.xlsx", "not a zip"), /./],
    [
      "a shop without dies",
      `${HEADER}\n${GOOD}\n`,
      file("brake.xlsx", workbook(BRAKE)),
      /die table whose header has "Die"/,
    ],
  ])("%s: exit 2, nothing on standard output", async (_, csv, book, message) => {
    const { exit, text, notes } = await run(file("parts.csv", csv), "--shop", book, "--json");
    expect([exit, text]).toEqual([2, ""]);
    expect(notes).toMatch(message);
  });
});

function utf16(text: string): Uint8Array {
  const bytes = new Uint8Array(2 + text.length * 2);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, true);
  for (let i = 0; i < text.length; i++) view.setUint16(2 + i * 2, text.charCodeAt(i), true);
  return bytes;
}
