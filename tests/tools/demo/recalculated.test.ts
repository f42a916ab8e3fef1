import { describe, expect, it } from "vitest";
import { billWords } from "../../../src/hosts/command-line/bill-words.ts";
import { planOfWorkbook } from "../../../src/hosts/command-line/job-files.ts";
import { writeWorkbookModel } from "../../../src/job/xlsx/write.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { recalculated } from "../../../src/tools/demo/recalculated.ts";
import { PARTS } from "../../../src/tools/sample/stage-job/bill/job.ts";
import { sampleModel } from "../../../src/tools/sample/stage-job/workbook.ts";
import { testFolder } from "../../hosts/command-line/shop-book.ts";
import { lintWorkbook } from "../sample/lint.ts";

const file = testFolder();

const blank = writeWorkbookModel(sampleModel(), () => undefined);

describe("a workbook without answers", () => {
  // As read from a file: a Buffer somewhere in a larger block of memory.
  const pool = Buffer.concat([Buffer.alloc(100), blank, Buffer.alloc(100)]);
  const { formulas, changed, bytes } = recalculated(pool.subarray(100, 100 + blank.length), "blank.xlsx");

  it("is calculated from the formulas alone", () => {
    expect(formulas).toBeGreaterThan(30);
    expect(changed).toBeGreaterThan(PARTS.length);
  });

  it("is written as a workbook that reads back, sound in every cell", () => {
    expect(readWorkbook(bytes).sheets).toHaveLength(sampleModel().sheets.length);
    expect(lintWorkbook(bytes)).toEqual([]);
  });

  it("has the same plan with its answers and without", () => {
    const [before, after] = [file("blank.xlsx", blank), file("full.xlsx", bytes)].map(
      (file) => planOfWorkbook(file, { note: () => undefined }).plan,
    );
    expect(before!.lines).toHaveLength(PARTS.length);
    expect(billWords(after!, true)).toBe(billWords(before!, true));
  });

  it("leaves the bytes it was given as they were", () => {
    expect(pool.subarray(100, 100 + blank.length).equals(blank)).toBe(true);
  });
});

describe("a file that is not a workbook", () => {
  it("is refused by name", () => {
    expect(() => recalculated(new Uint8Array([1, 2, 3]), "x.xlsx")).toThrow(
      "x.xlsx must be a workbook that is calculated whole; got refused",
    );
  });
});
