/** A formula longer than any that Excel writes is kept as it is, at once: reading it would take longer with its square. */
import { expect, it } from "vitest";
import { recalculateBytes } from "../../src/sheet/recalculate/recalculate-bytes.ts";
import { fakeFunctions } from "./fake-functions.ts";
import { packageOf } from "./make-package.ts";

const reportOf = (formula: string) =>
  recalculateBytes(
    packageOf({ sheets: { S: `<sheetData><row r="1"><c r="A1"><f>${formula}</f></c></row></sheetData>` } }),
    {
      functions: fakeFunctions,
      now: undefined,
      verify: false,
      in: "in.xlsx",
      out: "out.xlsx",
    },
  ).result.report;

it("is kept, and the report says why", () => {
  expect(reportOf(`${"-".repeat(50_000)}1`).kept).toEqual([
    { cell: "S!A1", reason: "unsupported-syntax", detail: "formula has 50001 signs; the limit is 16384" },
  ]);
});

it("one of 8,192 signs is read", () => {
  expect(reportOf(`1${"+1".repeat(4_095)}`).kept).toEqual([]);
});
