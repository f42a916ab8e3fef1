/**
 * Every figure and sentence about the two invented bills of the samples, asked of the functions themselves: a change that
 * nobody meant is seen here, line by line. They were recorded by this project, so that they prove nothing about the
 * trade; what does is in tests/reference.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import * as shop from "../../../src/cells/example/invented-shop.ts";
import { plantedLines } from "../../../src/tools/sample/part-list/parts.ts";
import { LIST_COLUMNS } from "../../../src/tools/sample/part-list/workbook.ts";
import { featuresOf } from "../../../src/tools/sample/stage-job/bill/features.ts";
import { PARTS, QUOTE } from "../../../src/tools/sample/stage-job/bill/job.ts";
import { PART_COLUMNS } from "../../../src/tools/sample/stage-job/sheets/parts-sheet.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";

type Recorded = Readonly<Record<string, (CellValue | undefined)[][]>>;
const recorded = (name: string): Recorded => JSON.parse(readFileSync(`tests/recorded/${name}.json`, "utf8"));
const job = recorded("stage-job");
const list = recorded("part-list");

/** The block whose header row begins with this cell, the last one in its row: from there to the first empty row, as wide as its header. */
function block(sheet: (CellValue | undefined)[][], corner: string): CellMatrix {
  const top = sheet.findIndex((row) => row.includes(corner));
  const left = sheet[top]!.lastIndexOf(corner);
  const header = sheet[top]!.slice(left);
  const gap = header.findIndex((cell) => cell === null || cell === undefined);
  const width = gap < 0 ? header.length : gap;
  const rows = sheet.slice(top).map((row) => Array.from({ length: width }, (_, i) => row[left + i] ?? ""));
  const end = rows.findIndex((row) => row.every((cell) => cell === ""));
  return end < 0 ? rows : rows.slice(0, end);
}

const table = ({ headers, rows }: shop.ShopTable): CellMatrix => [
  [...headers],
  ...rows.map((row) => headers.map((_, i) => row[i] ?? null)),
];
const tools = [shop.BRAKES, shop.DIES, shop.PUNCHES].map(table);
const machines = [...tools, table(shop.SHEARS), table(shop.WATERJETS)];
const [stations, rates, calendar, stock] = [shop.STATIONS, shop.RATES, shop.CALENDAR, shop.STOCK].map(table);

const bill: CellMatrix = [
  PART_COLUMNS.map(({ header }) => header),
  ...PARTS.map((part) => PART_COLUMNS.map(({ of }) => of({ ...part, ...featuresOf(part.part) }))),
];
const blanks = block(job["Blanks"]!, "Part");
/** Lines that no check stops, as the sheet Quoted filters them. */
const stopped = block(job["Checks"]!, "Part").flatMap(([part, status]) => (status === "stop" ? [part] : []));
const quoted = bill.filter(([part]) => !stopped.includes(part!));
const workers = [quoted, ...machines, stations!, rates!];
const timed = [calendar!, QUOTE.start, QUOTE.due];
const routes = block(job["Route"]!, "Part");
const plan = block(job["Cut plan"]!, "Pattern");

const longList: CellMatrix = [
  LIST_COLUMNS.map(({ header }) => header),
  ...plantedLines().map((line) => LIST_COLUMNS.map(({ key }) => line[key] ?? null)),
];

const spills: readonly (readonly [string, (CellMatrix | CellValue)[], CellMatrix])[] = [
  ["BILL.CHECK", [bill, ...machines, rates!], block(job["Checks"]!, "Part")],
  ["BILL.BLANKS", [quoted, ...tools, rates!], blanks],
  ["BILL.TIMES", [...workers, routes], block(job["Times"]!, "Part")],
  ["BILL.ROUTE", [...workers, ...timed], routes],
  ["BILL.ROUTE", [...workers, ...timed, "summary"], block(job["Route"]!, "Item")],
  ["BILL.SETUPS", [quoted, ...tools, rates!], block(job["Set-ups"]!, "Run")],
  ["BILL.MACHINES", [bill, ...machines], block(job["Machines"]!, "Question")],
  ["BILL.SHEETS", [quoted, ...tools, stock!, rates!, plan], block(job["Buying"]!, "Material")],
  [
    "BILL.PRICE",
    [quoted, ...machines, stock!, stations!, rates!, plan, routes, "normal"],
    block(job["Price"]!, "Part"),
  ],
  ["BILL.WHATIF", [...workers, ...timed, routes], block(job["What-if"]!, "Part")],
  ["BILL.WHATIF", [...workers, ...timed, routes, "stations"], block(job["What-if"]!, "Station")],
  ["BILL.LOADIN", [quoted, ...tools, rates!], block(job["Load-in"]!, "Order")],
];

/** The workbook keeps 15 figures. */
const alike = (answer: CellValue | undefined, known: CellValue | undefined): boolean =>
  typeof answer === "number" && typeof known === "number"
    ? Math.abs(answer - known) <= 1e-11 * Math.max(1, Math.abs(known))
    : (answer ?? "") === (known ?? "");

function differences(answer: CellMatrix, known: CellMatrix): string[] {
  return known.flatMap((row, i) => {
    const found = answer[i] ?? [];
    return row.every((cell, j) => alike(found[j], cell)) ? [] : [`${JSON.stringify(found)} for ${JSON.stringify(row)}`];
  });
}

describe("the recorded answers about", () => {
  it.each(spills)("the stage job: %s", (name, given, known) => {
    const { value } = shopFunctions.call(name, given);
    expect(known.length).toBeGreaterThan(2);
    expect(value as CellMatrix).toHaveLength(known.length);
    expect(differences(value as CellMatrix, known)).toEqual([]);
  });

  it("the list of 500 parts: BILL.CHECK", () => {
    const known = block(list["Checks"]!, "Part");
    const { value } = shopFunctions.call("BILL.CHECK", [longList, ...machines, rates!]);
    expect(known).toHaveLength(501);
    expect(differences(value as CellMatrix, known)).toEqual([]);
  });
});
