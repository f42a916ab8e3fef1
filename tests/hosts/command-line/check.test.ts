import { strToU8 } from "fflate";
import { describe, expect, it } from "vitest";
import * as invented from "../../../src/cells/example/invented-shop.ts";
import { check } from "../../../src/hosts/command-line/check.ts";
import { UsageError } from "../../../src/hosts/command-line/usage.ts";
import { PART_JSON } from "../../../src/job/bill-schema.ts";
import { csvRows } from "../../../src/job/part-list/csv.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";
import { matrixOf, RULE, run, some, testFolder, workbook } from "./shop-book.ts";

const file = testFolder();
const TABLES: readonly CellMatrix[] = [
  some(invented.BRAKES, "Brake 1"),
  some(invented.DIES, "V 2"),
  some(invented.PUNCHES, "Plain"),
  some(invented.SHEARS, "Shear 1"),
  matrixOf(invented.WATERJETS),
  matrixOf(invented.RATES),
];
const shop = file("shop.xlsx", workbook(...TABLES, RULE));

async function parts(csv: Uint8Array | string) {
  const { exit, text, notes } = await run(check, file("parts.csv", csv), "--shop", shop, "--json");
  const lines =
    text === ""
      ? []
      : text
          .trim()
          .split("\n")
          .map((line) => JSON.parse(line));
  return {
    exit,
    notes,
    found: lines.slice(0, -1).map((line) => PART_JSON.parse(line)),
    summary: lines.at(-1)?.summary,
  };
}

const HEADER = "Part,Material,Thickness,Quantity,Width,Flanges,Bend angles";
const GOOD = "A1,A36,1/4,4,3,2; 3,90";

describe("shop check", () => {
  it("one object a part, then the summary; exit 0 without a stop", async () => {
    const { exit, found, summary } = await parts(`${HEADER}\n${GOOD}\n`);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ row: 2, line: 1, part: "A1", quantity: 4, status: "clear", findings: [] });
    expect(summary).toEqual({ parts: 1, clear: 1, check: 0, stop: 0 });
    expect(exit).toBe(0);
  });

  it("a stop with its figure, limit and unit; a row of nonsense; exit 1", async () => {
    const { exit, found, summary } = await parts(`${HEADER}\n${GOOD}\nB,A36,1/4,1,130,2; 3,90\n\nC,cheese,x,1,1,1,\n`);
    expect(found.map(({ row, line, status }) => [row, line, status])).toEqual([
      [2, 1, "clear"],
      [3, 2, "stop"],
      [5, 4, "stop"],
    ]);
    const bed = found[1]!.findings.find(({ says }) => says.includes("bed of"));
    expect(bed).toMatchObject({ about: "room", status: "stop", figure: 130, limit: 120, unit: "in" });
    expect(found[2]!.findings).toHaveLength(1);
    expect(found[2]!.findings[0]).toMatchObject({ about: "input", status: "stop", fix: null });
    expect(found[2]!.findings[0]!.says).toMatch(
      /^line 4 \(sheet row 5\) columns "Material", "Thickness" must be right; got "cheese", "x"/,
    );
    expect(summary).toEqual({ parts: 3, clear: 1, check: 0, stop: 2 });
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
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ row: 2, part: name, quantity: 1250, status: "clear" });
    expect(found[0]!.flat!.width).toBeCloseTo(1200.5 / 25.4, 9);
    expect(exit).toBe(0);
  });

  it.each(["=1+1", "+A", "-B", "@SUM(A1)", '=HYPERLINK("x")'])("%s is data, in and out", async (name) => {
    const csv = `${HEADER}\n"${name.replaceAll('"', '""')}",A36,1/4,4,3,2; 3,90\n`;
    expect((await parts(csv)).found[0]).toMatchObject({ part: name, status: "clear" });
    const { text } = await run(check, file("parts.csv", csv), "--shop", shop);
    expect([...csvRows(text, ",")][1]![0]).toBe(`'${name}`);
  });

  it("CSV with a header: flat, tons, status and the worst reason with its fix", async () => {
    const csv = `${HEADER}\n${GOOD}\n"B, long",A36,1/4,1,130,2; 3,90\n`;
    const { exit, text, notes } = await run(check, file("parts.csv", csv), "--shop", shop);
    const [header, good, long, ...rest] = [...csvRows(text, ",")];
    expect(header).toEqual(["part", "row", "flat (in)", "tons", "status", "reason"]);
    // 2 + 3 in less the deduction of radius 5/16 in, k 0.42: 2 (R + T) - pi/2 (R + k T) (Groover).
    const flat = 5 - (2 * (0.3125 + 0.25) - (Math.PI / 2) * (0.3125 + 0.42 * 0.25));
    expect(good!.slice(0, 2)).toEqual(["A1", "2"]);
    expect(Number(good![2])).toBeCloseTo(flat, 2);
    // 575 t^2 / V tons a foot at 60 ksi (common practice); A36 has 58 to 80 ksi (ASTM A36).
    const at60 = ((575 * 0.25 ** 2) / 2) * (3 / 12);
    expect(Number(good![3])).toBeGreaterThan((at60 * 58) / 60);
    expect(Number(good![3])).toBeLessThan((at60 * 80) / 60);
    expect(good!.slice(4)).toEqual(["clear", ""]);
    expect([long![0], long![1], long![4]]).toEqual(["B, long", "3", "stop"]);
    expect(long![5]).toMatch(/^Needs about \d+ tons \(.*\); Brake 1 has 150/);
    expect(rest).toEqual([]);
    expect(exit).toBe(1);
    expect(notes).toBe("2 parts: 1 clear, 0 check, 1 stop\n");
  });

  it("the workbook's own materials are laid over the built-in ones, and a wrong cell among them is refused", async () => {
    const own = (density: CellValue) =>
      file(
        "own.xlsx",
        workbook(...TABLES, [
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
    const { text } = await run(check, csv, "--shop", own(0.284), "--json");
    const [a36, plate] = text
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line));
    // The shop's own three thicknesses, 0.75 in, where the built-in table lets the same part pass.
    expect(a36.findings).toContainEqual(expect.objectContaining({ about: "radius", limit: 0.75 }));
    // Known to the shop alone, it is weighed with the shop's own density: flat x 3 x 1/4 in.
    expect(plate.weight).toBeCloseTo(plate.flat.length * 3 * 0.25 * 0.284, 9);
    const refused = await run(check, csv, "--shop", own("heavy"), "--json");
    expect(refused).toMatchObject({ exit: 2, text: "" });
    expect(refused.notes).toMatch(/materials sheet row \d+ column "density" must be .*; got "heavy"/);
  });

  it("a tolerance against the shop's own spreads", async () => {
    const { found } = await parts(`${HEADER},Tolerance\n${GOOD},0.1\n${GOOD},0.06\n${GOOD},0.01\n`);
    // By hand: edge 1/32, one bend 0.012, 0.75 degrees on the 2 in that swing 0.0262: 0.0694 at worst, about 0.0425 as a rule.
    expect(found.map(({ status }) => status)).toEqual(["clear", "clear", "stop"]);
    expect(found[1]!.notes.join(" ")).toContain("Tolerance 0.060 in: usually 0.042 in, at worst 0.069 in.");
    const [finding] = found[2]!.findings;
    expect(finding).toMatchObject({ about: "tolerance", limit: 0.01, unit: "in" });
    expect(finding!.figure).toBeCloseTo(Math.hypot(0.03125, 0.012, 2 * Math.tan((0.75 * Math.PI) / 180)), 3);
  });

  it("a hole beside the bend, told by its distance alone", async () => {
    const { found } = await parts(`${HEADER},Hole distance\n${GOOD},0.2\n${GOOD},2\n`);
    expect(found.map(({ status }) => status)).toEqual(["stop", "clear"]);
    expect(found[0]!.findings[0]).toMatchObject({ about: "hole", figure: 0.2, unit: "in" });
    // Drilled after bending it is safe: that is the least change there is on one die.
    expect(found[0]!.findings[0]!.fix).toEqual({ says: "drill the hole after bending", reaches: "clear" });
  });

  it("too thick for the shear goes to the waterjet and is no stop", async () => {
    const { found } = await parts(`${HEADER}\nT,A36,3/8,1,12,6,\n`);
    expect(found[0]).toMatchObject({ status: "clear", cut_on: "waterjet", findings: [] });
    expect(found[0]!.notes.join()).toMatch(/Shear 1 takes .*: waterjet\./);
  });
});

describe("shop check refuses", () => {
  it.each([
    ["no file", ["--shop", shop]],
    ["no shop", ["parts.csv"]],
    ["an unknown option", ["parts.csv", "--shop", shop, "--loud"]],
  ])("%s: exit 64 by the caller", async (_, args) => {
    await expect(run(check, ...args)).rejects.toBeInstanceOf(UsageError);
  });

  it.each([
    ["a missing column", `${HEADER.replace("Material,", "")}\n`, shop, /^parts must be a range .* column "Material"/],
    ["an empty file", "", shop, /^parts must be given/],
    ["no rows", `${HEADER}\n`, shop, /at least one row below its header/],
    ["a shop that is no workbook", `${HEADER}\n${GOOD}\n`, file("no.xlsx", "not a zip"), /./],
    [
      "a shop without dies",
      `${HEADER}\n${GOOD}\n`,
      file("brake.xlsx", workbook(TABLES[0]!)),
      /dies must be a table whose header has "Die"/,
    ],
  ])("%s: exit 2, nothing on standard output", async (_, csv, book, message) => {
    const { exit, text, notes } = await run(check, file("parts.csv", csv), "--shop", book, "--json");
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
