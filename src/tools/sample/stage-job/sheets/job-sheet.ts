import type { CellValue } from "../../../../units/cell.ts";
import { value } from "../../building/cells.ts";
import type { SheetCell, SheetModel } from "../../xlsx/model.ts";
import type { StyleName } from "../../xlsx/styles.ts";
import { CUSTOMER, JOB, QUOTE } from "../bill/job.ts";

const FIRST = 4;
const ROWS: readonly (readonly [key: string, label: string, content: CellValue, style: StyleName, hint: string])[] = [
  ["job", "Job", JOB, "inputText", ""],
  ["customer", "Customer", CUSTOMER, "inputText", ""],
  ["number", "Quote", QUOTE.number, "inputText", ""],
  ["day", "Date of the quote", QUOTE.day, "inputDay", "Typed, not today's: a quote must say the same tomorrow."],
  ["valid", "Valid for (days)", QUOTE.validDays, "inputNumber", ""],
  ["start", "Work can begin", QUOTE.start, "inputMoment", "Material and drawings are there from here on."],
  ["due", "Must leave by", QUOTE.due, "inputMoment", "The lorry goes to site."],
  ["pace", "Pace", "normal", "inputText", '"rush" adds the rush charge of the sheet Shop.'],
];

/** A cell of this sheet for a formula elsewhere. */
export function jobCell(key: string): string {
  const at = ROWS.findIndex(([found]) => found === key);
  if (at < 0) throw new Error(`key must be one of the sheet Job; got ${key}`);
  return `Job!$B$${FIRST + at}`;
}

export const jobSheet = (): SheetModel => ({
  name: "Job",
  widths: [19, 52, 60],
  cells: [
    value(1, 1, "title", "Job"),
    value(2, 1, "note", "Who asks, and by when. All invented."),
    ...ROWS.flatMap(([, label, content, style, hint], i): SheetCell[] => [
      value(FIRST + i, 1, "label", label),
      value(FIRST + i, 2, style, content),
      value(FIRST + i, 3, "aside", hint),
    ]),
  ],
  validations: [
    {
      area: jobCell("pace").replace(/^Job!|\$/g, ""),
      type: "list",
      formula: '"normal,rush"',
      prompt: "normal, or rush for the rush charge",
    },
  ],
  merges: ["A2:C2"],
  print: { landscape: false },
});
