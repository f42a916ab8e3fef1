/**
 * Every figure and sentence about the two invented bills of the samples, asked of the functions themselves: a change that
 * nobody meant is seen here, line by line. They were recorded by this project, so that they prove nothing about the
 * trade; what does is in tests/reference.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { RECORDS } from "../../../src/cells/catalogue.ts";
import { headers, type SpillName } from "../../../src/cells/record/spill-columns.ts";
import { PART_COLUMNS } from "../../../src/job/job-sheets/parts-sheet.ts";
import { plantedLines } from "../../../src/tools/sample/part-list/parts.ts";
import { LIST_COLUMNS } from "../../../src/tools/sample/part-list/workbook.ts";
import { AREAS } from "../../../src/tools/sample/stage-job/bill/features.ts";
import { FINISHED } from "../../../src/tools/sample/stage-job/bill/finished.ts";
import { CUSTOMER, JOB as JOB_NAME, QUOTE, TOWER_DUE } from "../../../src/tools/sample/stage-job/bill/job.ts";
import { PART_ROWS } from "../../../src/tools/sample/stage-job/bill/part-rows.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";
import { askNow, given, MATERIALS, SHOP, type Tables, WHOLE_STOCK } from "../example/tables.ts";

type Sheet = readonly (readonly (CellValue | undefined)[])[];
const recorded = (name: string) =>
  JSON.parse(readFileSync(`tests/recorded/${name}.json`, "utf8")) as Readonly<Record<string, Sheet>>;

const bare = (cell: CellValue | undefined): string => String(cell ?? "").replace(/ \(.*\)$/, "");

/** The spill of a function, wherever it stands: told by its header; down to the first row that is empty. */
function spillIn(sheets: readonly Sheet[], name: SpillName): CellMatrix | undefined {
  const wanted = headers(name);
  for (const sheet of sheets)
    for (const [top, row] of sheet.entries())
      for (let left = 0; left + wanted.length <= row.length; left++) {
        if (!wanted.every((header, i) => bare(row[left + i]) === header)) continue;
        const rows = sheet.slice(top).map((each) => wanted.map((_, i) => each[left + i] ?? ""));
        const end = rows.findIndex((each) => each.every((cell) => cell === ""));
        return end < 0 ? rows : rows.slice(0, end);
      }
  return undefined;
}

/** The workbook keeps 15 figures. */
const alike = (answer: CellValue | undefined, known: CellValue | undefined): boolean =>
  typeof answer === "number" && typeof known === "number"
    ? Math.abs(answer - known) <= 1e-11 * Math.max(1, Math.abs(known))
    : (answer ?? "") === (known ?? "");

const differences = (answer: CellMatrix, known: CellMatrix): string[] =>
  known.flatMap((row, i) => {
    const found = answer[i] ?? [];
    return row.every((cell, j) => alike(found[j], cell)) ? [] : [`${JSON.stringify(found)} for ${JSON.stringify(row)}`];
  });

const NAMES = RECORDS.map(({ name }) => name).filter((name) => /^(?:BILL|CUT)\./.test(name)) as SpillName[];
/** What the sheet Job says. */
const JOB: CellMatrix = [
  ["Job", "Entry"],
  ["Job name", JOB_NAME],
  ["Customer", CUSTOMER],
  ["Quote", QUOTE.number],
  ["Date of the quote", QUOTE.day],
  ["Valid for (days)", QUOTE.validDays],
  ["Work can begin", QUOTE.start],
  ["Must leave by", QUOTE.due],
  ["Must leave by Tower", TOWER_DUE],
  ["Areas, first needed first", Object.values(AREAS).join("; ")],
  ["Pace", "normal"],
  ["Profit as", "margin"],
  ["Currency", "USD"],
];

function compare(name: string, of: CellMatrix, tables: Tables): void {
  const sheets = Object.values(recorded(name));
  const found = NAMES.flatMap((each) => {
    const known = spillIn(sheets, each);
    return known ? [[each, known] as const] : [];
  });
  it("has spills to compare with", () => expect(found.length).toBeGreaterThan(0));
  it.each(found)("%s", (each, known) => {
    expect(known.length).toBeGreaterThan(2);
    const answer = askNow(each, ...given(of, { ...tables, stock: WHOLE_STOCK }), MATERIALS);
    expect(answer).toHaveLength(known.length);
    expect(differences(answer, known)).toEqual([]);
  });
}

describe("the recorded answers about the stage job", () => {
  const bill: CellMatrix = [PART_COLUMNS.map(({ header }) => header), ...PART_ROWS];
  compare("stage-job", bill, { ...SHOP, job: JOB, finished: FINISHED });
});

describe("the recorded answers about the list of 500 parts", () => {
  const bill: CellMatrix = [
    LIST_COLUMNS.map(({ header }) => header),
    ...plantedLines().map((line) => LIST_COLUMNS.map(({ key }) => line[key] ?? null)),
  ];
  const { job: _, ...withoutJob } = SHOP;
  compare("part-list", bill, withoutJob);
});
