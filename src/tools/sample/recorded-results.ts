/** What a sample workbook answers, written down so that a change of any answer is seen and reviewed. */
import { readWorkbook } from "../../sheet/workbook/read-workbook.ts";
import { type CellValue, isCellError } from "../../units/cell.ts";
import { foundIn } from "../../units/certain.ts";

type RecordedValue = string | number | boolean | null;
/** Rows of each sheet as far as they are filled. */
export type RecordedResults = Readonly<Record<string, readonly (readonly RecordedValue[])[]>>;

export function resultsOf(bytes: Uint8Array, names: readonly string[]): RecordedResults {
  const { sheets } = readWorkbook(bytes);
  return Object.fromEntries(
    names.map((name) => {
      const sheet = foundIn(sheets, (found) => found.name === name);
      const rows = Array.from({ length: sheet.lastRow + 1 }, (_, row) =>
        trimmed(Array.from({ length: sheet.lastColumn + 1 }, (_, column) => plain(sheet.values[column]?.[row]))),
      );
      return [name, rows];
    }),
  );
}

const plain = (value: CellValue | undefined): RecordedValue => (isCellError(value) ? value.code : (value ?? null));

function trimmed(row: RecordedValue[]): RecordedValue[] {
  let last = row.length;
  while (last > 0 && row[last - 1] === null) last--;
  return row.slice(0, last);
}

/** One row of the sheet a line, so that a difference names its bracket. */
export const resultsText = (results: RecordedResults): string =>
  `{\n${Object.entries(results)
    .map(([sheet, rows]) => `${JSON.stringify(sheet)}: [\n${rows.map((row) => JSON.stringify(row)).join(",\n")}\n]`)
    .join(",\n")}\n}\n`;
