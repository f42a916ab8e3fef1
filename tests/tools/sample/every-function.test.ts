import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { RECORDS } from "../../../src/cells/catalogue.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { SAMPLES } from "../../../src/tools/sample/file.ts";

/** Read from the files, by the name a stored call has. */
const formulas = SAMPLES.flatMap(({ file }) =>
  readWorkbook(new Uint8Array(readFileSync(file))).sheets.flatMap((sheet) => sheet.formulas.map(({ text }) => text)),
).join("\n");

it.each(RECORDS.map(({ name }) => name))("%s is shown in at least one sample workbook", (name) => {
  expect(formulas).toContain(`_xldudf_SHOP_${name.replaceAll(".", "_")}(`);
});
