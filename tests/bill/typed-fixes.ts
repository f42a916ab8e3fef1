/**
 * Fixes as a person tries them: a bill and a shop in the cells of a workbook, BILL.CHECK over them, and what its column
 * Fix says typed into the bill and recalculated by the worksheet engine. The planner is asked through the sheet alone.
 */
import fc from "fast-check";
import { STATUSES, type Status } from "../../src/calc/finding.ts";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { shop } from "../../src/job/building/formulas.ts";
import { fixCells } from "../../src/job/fix-cells.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { bookOf } from "../../src/job/workbook-book.ts";
import type { SheetModel } from "../../src/job/xlsx/model.ts";
import { writeWorkbookModel } from "../../src/job/xlsx/write.ts";
import { areaName } from "../../src/job/xlsx/xml.ts";
import { Calculator } from "../../src/sheet/graph/calculator.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";
import type { Workbook } from "../../src/sheet/workbook/workbook.ts";
import type { CellMatrix, CellValue } from "../../src/units/cell.ts";
import { billArbitrary, type RandomBill, shopArbitrary } from "./random-bill.ts";

const SHEET = { widths: [], print: { landscape: false } } as const;
const sheetOf = (name: string, matrix: CellMatrix): SheetModel => ({
  ...SHEET,
  name,
  cells: matrix.flatMap((cells, row) => cells.map((value, column) => ({ row: row + 1, column: column + 1, value }))),
});

/** The bill and each table on a sheet of its own, and the checks. */
function workbookOf({ bill, tables }: RandomBill): Workbook {
  const given = Object.entries({ bill, ...tables });
  const ranges = Object.fromEntries(
    given.map(([name, matrix]) => [name, `${name}!${areaName(1, 1, matrix.length, matrix[0]!.length)}`]),
  );
  const checks: SheetModel = {
    ...SHEET,
    name: "Checks",
    cells: [{ row: 1, column: 1, formula: shop("BILL.CHECK", ranges), spills: ["text"] }],
  };
  const sheets = [...given.map(([name, matrix]) => sheetOf(name, matrix)), checks];
  return readWorkbook(writeWorkbookModel({ title: "Bill by chance", sheets }, () => undefined));
}

export interface TriedFix {
  readonly line: number;
  readonly fix: string;
  readonly promised: CellValue;
  readonly reached: CellValue;
  readonly from: CellValue;
  /** Whether the cells that page and pane write are those that the words say. */
  readonly sameCells: boolean;
}

export function triedFixes(given: RandomBill): TriedFix[] {
  const workbook = workbookOf(given);
  const calculator = new Calculator(workbook, { functions: shopFunctions });
  calculator.calculateAll();
  const checks = workbook.sheets.findIndex(({ name }) => name === "Checks");
  const at = (title: string) => {
    const values = workbook.sheets[checks]!.values;
    return values.findIndex((column) => column?.[0] === title);
  };
  const said = (row: number, title: string): CellValue => workbook.sheets[checks]!.values[at(title)]?.[row] ?? null;
  const header = given.bill[0]!.map(String);
  const job = jobPlan(bookOf(workbook))!;
  const promises = given.bill.slice(1).map((_, i) => ({
    line: i,
    fix: String(said(i + 1, "Fix") ?? ""),
    promised: said(i + 1, "Then"),
    from: said(i + 1, "Status"),
  }));
  type Typed = Parameters<Calculator["change"]>[0];
  /** What takes the fix before back, in the same change as the next one: the bill is calculated once a fix. */
  let back: Typed = [];
  return promises.flatMap(({ line, fix, promised, from }) => {
    if (promised === null || promised === "") return [];
    const cells = given.bill[line + 1]!;
    const changed = typedAs(fix, Object.fromEntries(header.map((title, i) => [title, cells[i] ?? null])));
    const edits = Object.entries(changed).map(([title, value]) => ({
      sheet: 0,
      row: line + 1,
      column: header.indexOf(title),
      value,
    }));
    calculator.change([...back, ...edits]);
    const reached = said(line + 1, "Status");
    back = edits.map(({ column, ...edit }) => ({ ...edit, column, value: cells[column] ?? null }));
    const { cells: all } = fixCells(job, line, job.plan.fix(job.plan.lines[line]!)!);
    // These bills have no column Instruction: what it tells the floor is written right of the table, and decides nothing.
    const written = all.filter(({ column }) => column < header.length);
    const sameCells =
      JSON.stringify(written.map(({ row, column, value }) => [row, column, plain(value)]).sort()) ===
      JSON.stringify(edits.map(({ row, column, value }) => [row, column, plain(value)]).sort());
    return [{ line, fix, promised, reached, from, sameCells }];
  });
}

const plain = (value: CellValue): string => String(value).replace(/[\d.]+/g, (figure) => String(Number(figure)));

type Cells = Readonly<Record<string, CellValue>>;

/** What a person types who reads the column Fix. */
function typedAs(fix: string, cells: Cells): Record<string, CellValue> {
  const typed: Record<string, CellValue> = {};
  for (const part of fix.split("; ")) Object.assign(typed, typedPart(part, { ...cells, ...typed }));
  return typed;
}

function typedPart(part: string, cells: Cells): Record<string, CellValue> {
  const grain = /^turn the blank: bend line (across|along) the grain$/.exec(part);
  if (grain) return { Grain: grain[1]! };
  if (part === "drill the hole after bending") return { "Hole distance": null };
  if (part === "cut it on the waterjet") return { Route: "waterjet" };
  if (part === "deburr the bend ends")
    return { Operations: cells["Operations"] === null ? "Deburr" : `${cells["Operations"]}; Deburr` };
  const flange = /^make the short flange ([\d.]+) in and trim it after bending$/.exec(part);
  if (flange) {
    const longer = (title: string) =>
      String(cells[title])
        .split(";")
        .map((item) => Math.max(Number(item), Number(flange[1])))
        .join("; ");
    const titles = ["Flanges", "Cross flanges"].filter((title) => (cells[title] ?? null) !== null);
    return Object.fromEntries(
      titles.map((title) => [title, longer(title)]).filter(([t, text]) => plain(text!) !== plain(cells[t!]!)),
    );
  }
  const pieces = /^make it of (\d) pieces, ([\d.]+) in each, if the customer agrees$/.exec(part);
  if (pieces) return { Quantity: Number(cells["Quantity"]) * Number(pieces[1]), Width: Number(pieces[2]) };
  const steel = /^use (.+) of this thickness, which is in Stock, if the customer agrees$/.exec(part);
  if (steel) return { Material: steel[1]! };
  const thick = /^make it ([\d.]+) in thick, /.exec(part);
  if (thick) return { Thickness: Number(thick[1]) };
  return Object.fromEntries(
    part.split(", ").map((tool) => {
      const [, word = "", name = ""] = /^(die|punch) (.*)$/.exec(tool) ?? [];
      return word === "" ? ["Brake", tool] : [word === "die" ? "Die" : "Punch", name];
    }),
  );
}

const some = <T>(...values: readonly T[]) => fc.constantFrom(...values);

/** A line with something to mend: tools that are too small, a flange too short, a hole too near, a part too long. */
const badLine = fc.record({
  Material: some("A36", "304", "5052-H32", "6061-T6", "A1011 CS"),
  Thickness: some<CellValue>(0.06, 0.125, 0.1875, 0.25, "10 ga", "14 ga"),
  Quantity: some(1, 6, 40),
  Width: some(1.5, 4, 24, 60, 100, 126),
  Flanges: some("2; 3", "0.4; 3", "1; 4; 1", "1.1; 3", "0.75; 2; 0.75"),
  "Bend angles": some(90, 90, 90, 60, -90),
  Die: some(null, null, "V 5/8", "V 1", "V 2", "V 1 wide"),
  Punch: some(null, null, "Plain", "Knife", "Gooseneck"),
  Brake: some(null, null, "Brake 1", "Brake 2"),
  Grain: some(null, "along", "across"),
  "Hole distance": some(null, 0.2, 0.6),
  Route: some(null, null, "shear"),
  Operations: some(null, "Weld 1", "Deburr"),
});

export const BILLS: fc.Arbitrary<RandomBill> = fc
  .record({ lines: fc.array(badLine, { minLength: 4, maxLength: 12 }), tables: shopArbitrary })
  .map(({ lines, tables }) => {
    const header = ["Part", ...Object.keys(lines[0]!)];
    const rows = lines.map((line, i) => [`P-${i + 1}`, ...Object.values(line)] as CellValue[]);
    return { bill: [header, ...rows], tables };
  });

const MOST_BILLS = 600;

/** Bills by chance until so many fixes were typed. */
export function fixesTyped(wanted: number): TriedFix[] {
  const tried: TriedFix[] = [];
  const [bad, any] = [BILLS, billArbitrary].map((bills) => fc.sample(bills, { numRuns: MOST_BILLS, seed: 18 }));
  for (let i = 0; i < MOST_BILLS && tried.length < wanted; i++)
    tried.push(...triedFixes(i % 3 === 2 ? any![i]! : bad![i]!));
  return tried;
}

/** Fixes that do not reach what they promised, or that improve nothing. */
export function brokenIn(tried: readonly TriedFix[]): TriedFix[] {
  const rank = (status: CellValue) => STATUSES.indexOf(status as Status);
  return tried.filter(({ from, promised, reached }) => promised !== reached || rank(reached) >= rank(from));
}
