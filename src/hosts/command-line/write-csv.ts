/** Writes CSV that a spreadsheet opens as it is meant: what it would take for a formula stays text. */

type CsvCell = string | number | undefined;

export const writeCsv = (rows: readonly (readonly CsvCell[])[]): string =>
  rows.map((row) => `${row.map(field).join(",")}\n`).join("");

function field(cell: CsvCell): string {
  if (typeof cell !== "string") return cell === undefined ? "" : String(cell);
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

const FORMULA = /^[=+\-@\t\r]/;
const NEEDS_QUOTES = /[",\r\n]/;
