/** Goods that are cut and never bent are ordinary lines of a bill: weighed, timed by the shop's own cut, priced; a bend stops. */
import { describe, expect, it } from "vitest";
import { bill } from "../../../src/hosts/command-line/bill.ts";
import type { CellMatrix } from "../../../src/units/cell.ts";
import { ONE_DIE, run, STOCK, testFolder, workbook } from "./shop-book.ts";

const write = testFolder();

/** 40 in/min in 1/4 in acrylic, timed by the shop; what plywood takes nobody has timed. */
const MATERIALS: CellMatrix = [
  ["Material", "Materials edition", "Timed feed (in/min)", "Timed thickness (in)", "Source"],
  [null, "2026.2", null, null, null],
  ["Acrylic", null, 40, 0.25, "timed on the job of 12 May"],
  ["Composite panel", null, 80, null, "timed on the job of 12 May"],
];
const SHEETS: CellMatrix = [
  ...STOCK,
  ...[
    ["Acrylic", 0.25],
    ["Acrylic", 1],
    ["Composite panel", 0.157],
    ["Plywood", 0.5],
    ["A1011 CS", "16 ga"],
  ].map(([material, thickness]) => [null, material!, thickness!, 96, 48, null, 100, 1]),
];
const PARTS = [
  "Part,Material,Thickness,Quantity,Width,Flanges,Bend angles,Route",
  "A1,Acrylic,0.25,4,10,10,,",
  "A2,Acrylic,1 in,4,10,10,,",
  "A3,Acrylic,0.25,4,10,5; 5,90,",
  "A4,Acrylic,0.25,4,10,10,,shear",
  "C1,ACM,0.157,10,12,24,,",
  "P1,Plywood,1/2,4,10,10,,",
  "S1,A1011 CS,16 ga,4,10,10,,waterjet",
].join("\n");

interface Line {
  readonly part: string;
  readonly material: string;
  readonly status: string;
  readonly cut_on: string | null;
  readonly quoted: boolean;
  readonly weight: number | null;
  readonly price_each: number | null;
  readonly minutes: Readonly<Record<string, number>>;
  readonly findings: readonly { readonly says: string }[];
  readonly notes: readonly string[];
}

/** The waterjet as a whole is not timed. */
const untimed = (table: CellMatrix): CellMatrix => {
  const factor = table[0]!.indexOf("Speed factor");
  return factor < 0 ? table : table.map((row) => row.with(factor, null));
};

async function linesWith(materials: CellMatrix): Promise<Map<string, Line>> {
  const tables = [...ONE_DIE.filter((table) => table !== STOCK).map(untimed), SHEETS, materials];
  const files = [write("parts.csv", PARTS), "--shop", write("shop.xlsx", workbook(...tables))];
  const { text } = await run(bill, ...files, "--units", "in", "--json");
  return new Map((JSON.parse(text).lines as Line[]).map((line) => [line.part, line]));
}
const saysOf = (line: Line): string[] => line.findings.map(({ says }) => says);

describe("shop bill of goods that are cut only", async () => {
  const lines = await linesWith(MATERIALS);
  const line = (part: string): Line => lines.get(part)!;

  it("weighs, times by the shop's own cut and prices them, on the waterjet", () => {
    // By hand: 10 x 10 x 1/4 in at 0.043 lb/in3 (1190 kg/m3); 12 x 24 x 0.157 in at 0.0497 (5.5 kg/m2 of 4 mm panel).
    expect(line("A1").weight).toBeCloseTo(1.075, 3);
    expect(line("C1").weight).toBeCloseTo(2.247, 3);
    for (const part of ["A1", "C1"]) {
      expect(line(part)).toMatchObject({ status: "clear", cut_on: "waterjet", quoted: true });
      expect(line(part).price_each).toBeGreaterThan(0);
    }
  });

  it("half the feed costs twice the cutting: 40 in of outline a piece, 4 pieces, 50 minutes an hour", async () => {
    const slow = MATERIALS.map((row) => (row[0] === "Acrylic" ? row.with(2, 20) : row));
    const minutes = (await linesWith(slow)).get("A1")!.minutes["Waterjet"]! - line("A1").minutes["Waterjet"]!;
    expect(minutes).toBeCloseTo(1.2 * ((4 * 40) / 20 - (4 * 40) / 40), 6);
  });

  it("stops where nobody has timed a cut, or only in a thickness far from this one", () => {
    for (const part of ["A2", "P1"]) {
      expect(line(part)).toMatchObject({ status: "stop", quoted: false, price_each: null });
      expect(saysOf(line(part))[0]).toMatch(/ is cut on a waterjet only, and no cut of this thickness is timed\.$/);
    }
  });

  it("stops a bend and a shear by name", () => {
    expect(saysOf(line("A3"))).toEqual([
      "line 3: material must be a metal that is bent or sheared; got Acrylic; it is cut only",
    ]);
    expect(saysOf(line("A4"))).toEqual(["Acrylic is cut on a waterjet, not on a shear."]);
  });

  it("says of thin sheet that the formula is too fast, until a cut is timed", async () => {
    expect(line("S1").notes).toContain(
      "The waterjet's formula is too fast in sheet of 0.060 in: time a cut of your own.",
    );
    const timed = [...MATERIALS, ["A1011 CS", null, 20, 0.06, "timed"]];
    expect((await linesWith(timed)).get("S1")!.notes).toEqual([]);
  });
});
