import { describe, expect, test } from "vitest";
import { recalculateBytes } from "../../../src/sheet/recalculate/recalculate-bytes.ts";
import { fakeFunctions } from "../fake-functions.ts";
import { packageOf } from "../make-package.ts";

const report = (formula: string, stored: string, beside = '<c r="B1"><f>A1*2</f><v>8</v></c>') =>
  recalculateBytes(
    packageOf({
      sheets: {
        Sheet1: `<sheetData><row r="1"><c r="A1"${stored}</c>${beside}</row></sheetData>`.replace("FORMULA", formula),
      },
    }),
    { functions: fakeFunctions, now: undefined, verify: false, in: "in.xlsx", out: null },
  ).result.report;

describe("a name that stands nowhere in the workbook", () => {
  test("keeps a value that somebody calculated, and is reported with what depends on it", () => {
    expect(report("SUM(database1)", "><f>FORMULA</f><v>4</v>")).toMatchObject({
      status: "stale",
      kept: [{ cell: "Sheet1!A1", reason: "unknown-function", detail: "a name that stands nowhere in this workbook" }],
      stale: ["Sheet1!B1"],
      changed: 0,
    });
  });

  test("is #NAME? where the file says so or says nothing, and IFERROR sees it", () => {
    expect(report("database1", ' t="e"><f>FORMULA</f><v>#NAME?</v>', "").status).toBe("fresh");
    expect(report("database1", "><f>FORMULA</f>", "").kept).toEqual([]);
    expect(report("IFERROR(database1,4)", "><f>FORMULA</f><v>4</v>")).toMatchObject({ status: "fresh", changed: 0 });
  });
});
