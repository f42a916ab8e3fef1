/** The open points of "What only real Excel can confirm", each as a call with its known answer. */
import { findRecord, RECORDS } from "../../../cells/catalogue.ts";
import { PRODUCT_VERSION } from "../../../cells/record/version.generated.ts";
import { CURRENT_EDITION } from "../../../data/materials/editions.ts";
import { storedFormula } from "../../../job/building/formulas.ts";
import type { CellValue } from "../../../units/cell.ts";
import { entryOf } from "../../../units/certain.ts";
import { BLANKS, DATE, ERROR_SPILL, SPILL, TABLE, WORD } from "./trial-cells.ts";

export interface Check {
  readonly point: string;
  /** What is done, for the person who looks. */
  readonly how: string;
  /** As typed, "=SHOP...". */
  readonly formula: string;
  /** A value, or a formula of Excel's own. */
  readonly expected: CellValue | { readonly formula: string };
  /** Where the answer must be an error: its number as ERROR.TYPE gives it. */
  readonly errorType?: number;
}

/** Of a record's own example, with one argument taken from a cell of the sheet. */
function exampleWith(name: string, argument: string, cell: string) {
  const { formula, answer } = entryOf({ get: findRecord }, name).example;
  if (!formula.includes(argument)) throw new Error(`example of ${name} must hold ${argument}; got ${formula}`);
  return { formula: formula.replace(argument, cell), expected: answer };
}
const example = (name: string) => exampleWith(name, "", "");

/** 90 degrees: setback is thickness plus radius (geometry), so 0.04 and 0.16 give 0.2. */
export const CHECKS: readonly Check[] = [
  {
    point: "Version",
    how: "The add-in and this workbook are of one version",
    formula: "=SHOP.VERSION()",
    expected: `Bracket Bill ${PRODUCT_VERSION}, materials ${CURRENT_EDITION.name}`,
  },
  {
    point: "All functions",
    how: "The list of functions has as many rows as this version",
    formula: "=ROWS(SHOP.FUNCTIONS())",
    expected: RECORDS.length + 1,
  },
  {
    point: "One value",
    how: "An answer of one cell counts as a plain number inside another formula",
    formula: "=ROUND(1+SHOP.BEND.SETBACK(0.04,0.16,90),6)",
    expected: 1.2,
  },
  {
    point: "One cell",
    how: "It is one cell high and wide",
    formula: "=ROWS(SHOP.BEND.SETBACK(0.04,0.16,90))*COLUMNS(SHOP.BEND.SETBACK(0.04,0.16,90))",
    expected: 1,
  },
  {
    point: "Blank cells",
    how: "Two empty cells reach the functions as empty, not as 0",
    formula: `=SHOP.EMPTY.CELLS(${BLANKS})`,
    expected: { formula: `COUNTBLANK(${BLANKS})` },
  },
  {
    point: "Argument left out",
    how: "A comma with nothing behind it means the default",
    formula: "=SHOP.BEND.SETBACK(0.04,0.16,90,)",
    expected: 0.2,
  },
  {
    point: "Block of answers",
    how: "Columns of a table give a block of three answers below each other",
    formula: `=ROUND(SUM(${SPILL}),6)`,
    expected: 0.64,
  },
  {
    point: "Error beside answers",
    how: "An error cell of a range spoils its own row only",
    formula: `=COUNT(${ERROR_SPILL})`,
    expected: 2,
  },
  {
    point: "Kind of the error",
    how: "It stays the error it was (2 is #DIV/0!)",
    formula: `=ERROR.TYPE(INDEX(${ERROR_SPILL},2))`,
    expected: 2,
  },
  {
    point: "Wrong input",
    how: "A word for a thickness is #VALUE!; point at the cell and Excel shows the sentence that says why",
    formula: `=SHOP.BEND.SETBACK(${WORD},0.16,90)`,
    expected: "#VALUE!",
    errorType: 3,
  },
  {
    point: "No such answer",
    how: "A gauge that does not exist is #N/A with a sentence",
    formula: '=SHOP.SHEET.THICKNESS(99,"stainless")',
    expected: "#N/A",
    errorType: 7,
  },
  {
    point: "Date",
    how: "A date typed in a cell goes in, and a date comes out",
    ...exampleWith("DATE.FINISH", "46083.375", DATE),
  },
  {
    point: "Decimal sign",
    how: "A number as text, with this computer's own decimal sign",
    formula: '=SHOP.BEND.SETBACK(TEXT(0.04,"0.00"),TEXT(0.16,"0.00"),90)',
    expected: 0.2,
  },
  {
    point: "Decimal comma",
    how: "A number as text with a comma",
    formula: '=SHOP.BEND.SETBACK("0,04","0,16",90)',
    expected: 0.2,
  },
  {
    point: "Long function",
    how: "One that calculates beside Excel arrives; the cell says #BUSY! until then",
    ...example("BEND.ORDER"),
  },
];

export interface Trial {
  readonly point: string;
  readonly how: string;
  /** Whether it went as it should, from what was typed; blank says that nobody has tried. */
  readonly right: (typed: string) => string;
  /** The cell typed into, where that is not the one beside it. */
  readonly cell?: string;
}

const isYes = (typed: string) => `${typed}="yes"`;
/** What a formula cannot do by itself: a person tries it and types yes or no. */
export const TRIALS: readonly Trial[] = [
  {
    point: "In a table row",
    how: `Type in the first empty cell of the table's last column: =SHOP.BEND.SETBACK([@[Thickness (in)]],[@[Radius (in)]],[@[Angle (deg)]])`,
    right: (typed) => `IF(ISNUMBER(${typed}),ABS(${typed}-0.2)<1E-9,FALSE)`,
    cell: TABLE.tryHere,
  },
  {
    point: "Sentence",
    how: "Point at the #VALUE! of Wrong input: does a sentence begin with thickness?",
    right: isYes,
  },
  {
    point: "Cancel",
    how: "Clear the x and type it again at once, twice: does Long function answer in the end?",
    right: isYes,
  },
  { point: "Saved and reopened", how: "Save, close, open: do all rows stay right after Ctrl+Alt+F9?", right: isYes },
  {
    point: "Pane",
    how: "Home, Function guide: does the pane open, and does Insert here put an example into a cell?",
    right: isYes,
  },
];

export const stored = ({ formula }: Pick<Check, "formula">): string => storedFormula(formula);
