/** A workbook that LibreOffice saved, as LibreOffice 7.4 writes one: names in small letters, #NAME? stored, no marks. */
import { readFileSync } from "node:fs";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { summaryLine } from "../../../src/hosts/command-line/summary-line.ts";
import { recalculateBytes } from "../../../src/sheet/recalculate/recalculate-bytes.ts";

const APP =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>PROGRAM</Application></Properties>';
const parts = unzipSync(new Uint8Array(readFileSync("sample-workbooks/first-run.xlsx")));

/** The sample as `program` saved it; `ruined` as LibreOffice changes its sheet. */
function savedBy(program: string, ruined: (sheet: string) => string) {
  const sheet = ruined(strFromU8(parts["xl/worksheets/sheet1.xml"]!));
  const bytes = zipSync({
    ...parts,
    "docProps/app.xml": strToU8(APP.replace("PROGRAM", program)),
    "xl/worksheets/sheet1.xml": strToU8(sheet),
  });
  const options = { functions: shopFunctions, now: undefined, verify: false, in: "bill.xlsx", out: null };
  return recalculateBytes(bytes, options).result.report;
}
const lowered = (sheet: string) => sheet.replace(/_xldudf_\w+/g, (name) => name.toLowerCase()).replace(/ cm="1"/g, "");
const LIBRE = "LibreOffice/7.4.7.2$Linux_X86_64 LibreOffice_project/40$Build-2";

describe("a workbook that LibreOffice saved", () => {
  it("is calculated all the same, and the report and the line name the cause", () => {
    const report = savedBy(LIBRE, lowered);
    expect(report.kept).toEqual([]);
    // What lost its spill is not fresh, whatever was calculated: exit 1.
    expect(report.status).toBe("stale");
    expect(report.note).toMatch(/^saved by LibreOffice 7\.4\.7\.2, which stores #NAME\?.*last copy that Excel saved$/);
    expect(summaryLine(report)).toContain("; saved by LibreOffice 7.4.7.2");
  });
  it("is not named where Excel saved it, nor where nothing of an add-in is in it", () => {
    expect(savedBy("Microsoft Excel", (sheet) => sheet).note).toBeUndefined();
    expect(savedBy(LIBRE, (sheet) => sheet.replace(/_xldudf_\w+\(/g, "SUM(")).note).toBeUndefined();
  });
});
