/**
 * Headers, units and types of every spill about a whole bill, fixed in one place: workbooks point at these columns, and
 * one spill is read by the next through them (BILL.BLANKS by CUT.PLAN, CUT.PLAN by BILL.PRICE). A spill begins with its
 * header row; a quantity carries its unit in brackets there, so that readTable understands it in either unit system.
 */
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { fromInternal, type QuantityKind, SCALES, type UnitSystem, unitName } from "../../units/system.ts";

/** "share" is a ratio from 0 to 1 to be formatted as a percentage; "list" is text such as "2; 3.5; 2". */
export type SpillKind = QuantityKind | "text" | "list" | "count" | "share" | "number" | "money" | "date" | "h" | "min";

interface SpillColumn {
  readonly header: string;
  readonly kind: SpillKind;
}
type SpillColumns = readonly SpillColumn[];

const column = <H extends string>(header: H, kind: SpillKind) => ({ header, kind });
/** Behind the figures of every spill with one row a line: what is wrong with that row, in the one grammar; else "". */
const MESSAGE = column("Message", "text");

/** Item and figure, for a spill that sums up. */
const SUMMARY = [
  column("Item", "text"),
  column("Value", "number"),
  column("Unit", "text"),
  column("Note", "text"),
] as const satisfies SpillColumns;

export const SPILLS = {
  "BILL.BLANKS": [
    column("Part", "text"),
    column("Material", "text"),
    column("Thickness", "length"),
    column("Length", "length"),
    column("Width", "length"),
    column("Quantity", "count"), // blanks to cut: ordered, scrap allowance and first pieces
    column("Ordered", "count"),
    column("Grain", "text"), // rolling direction along the blank's "length", its "width", or "" for either
    column("Cut path", "length"), // one blank: outline, holes and notches
    column("Pierces", "count"),
    column("Weight each", "mass"),
    column("Weight", "mass"),
    MESSAGE,
  ],
  "BILL.CHECK": [
    column("Part", "text"),
    column("Status", "text"), // clear, check, stop
    column("Sentence", "text"), // checks and stops, the worst first; "" for a clear line
    column("Fix", "text"), // the least change that betters it
    column("Then", "text"), // the status with it
    column("Notes", "text"),
    column("Cut on", "text"), // shear, waterjet
    column("Brake", "text"),
    column("Die", "text"),
    column("Punch", "text"),
    column("Flat length", "length"),
    column("Flat width", "length"),
    column("Radius", "length"), // the one the flat is made with
    column("Deduction", "length"), // of the sharpest bend
    column("Method", "text"),
    column("Force", "force"),
    column("Worst force", "force"),
    column("Weight each", "mass"),
    column("Drawing radius", "text"), // accept, measure, ask, other tool
    column("Tolerance", "text"), // holds, at risk, will not hold
    column("Worst spread", "length"), // plus and minus
    column("Drawing tolerance", "length"), // plus and minus
    column("Quoted", "text"), // yes, no
    column("Accepted", "text"), // who, when
    column("Description", "text"),
    column("Quantity", "count"),
    column("Material", "text"),
    column("Thickness", "length"), // as planned
    MESSAGE,
  ],
  "BILL.TIMES": [
    column("Part", "text"),
    column("Station", "text"),
    column("Set-up", "min"),
    column("Each", "min"),
    column("Quantity", "count"),
    column("Total", "min"),
    column("People", "count"),
    column("Note", "text"),
    column("Own factor", "number"), // of finished jobs, in set-up and each; 1 where there are none
    MESSAGE,
  ],
  "BILL.ROUTE": [
    column("Part", "text"),
    column("Route", "text"), // shear, waterjet
    column("Why", "text"), // chosen, pinned, needs the waterjet
    column("On shear", "min"),
    column("On waterjet", "min"),
    column("On brake", "min"),
    column("Cost", "money"),
    MESSAGE,
  ],
  "BILL.SUMMARY": SUMMARY,
  "BILL.CHANGES": [
    column("Part", "text"), // "(job)" for what is of the job as a whole
    column("Change", "text"), // added, gone, changed
    column("What", "text"),
    column("Before", "number"), // in the unit beside it; "date" is a day number
    column("After", "number"),
    column("Unit", "text"),
    MESSAGE,
  ],
  "BILL.SETUPS": [
    column("Run", "count"), // in this order
    column("Set-up", "count"), // lines with the same number share die and punch
    column("Part", "text"),
    column("Brake", "text"),
    column("Die", "text"),
    column("Punch", "text"),
    column("Punch below die", "length"), // tip below the die's top, under load: AIR.DEPTH less the thickness
    column("Stops", "list"),
    column("Order", "list"),
    column("Order from", "text"), // outlines, plain tools, usual
    column("Force", "force"),
    column("Caution", "text"),
    MESSAGE,
  ],
  "BILL.PRICE": [
    column("Part", "text"),
    column("Quantity", "count"),
    column("Material", "money"),
    column("Labor", "money"),
    column("Set-up", "money"),
    column("Outside", "money"),
    column("Overhead", "money"),
    column("Cost", "money"),
    column("Unit price", "money"),
    column("Price", "money"),
    column("Note", "text"),
    column("Description", "text"),
    column("Extras", "money"), // certificate, first article, engineering, hardware
    MESSAGE,
    column("Remark", "text"), // the same for the customer, without the shop's machines and tables
  ],
  "BILL.BREAKS": [
    column("Part", "text"),
    column("Quantity", "count"),
    column("Unit price", "money"),
    column("Price", "money"),
    column("Order", "money"), // the whole order with it
    column("Note", "text"),
    MESSAGE,
  ],
  "BILL.MACHINES": [
    column("Question", "text"),
    column("Value", "number"),
    column("Unit", "text"),
    column("Part", "text"), // the line that decides
    column("Lines", "count"),
    column("Share", "share"),
  ],
  "BILL.SHEETS": [
    column("Material", "text"),
    column("Thickness", "length"),
    column("Stock", "text"),
    column("Length", "length"),
    column("Width", "length"),
    column("Cut on", "text"), // shear, waterjet
    column("Sheets", "count"),
    column("Price each", "money"),
    column("Price", "money"),
    column("Lead days", "count"),
    column("Certificate", "text"), // wanted, or ""
    column("Weight each", "mass"),
    column("Bundle weight", "mass"),
    column("Handling", "text"),
    MESSAGE,
  ],
  "BILL.WHATIF": [
    column("Part", "text"),
    column("Verdict", "text"), // in time, overtime, second shift, outside, breaks it
    column("Station", "text"), // the one that decides
    column("Due", "date"),
    column("Hours", "h"), // of this line there
    column("Finish", "date"),
    column("Late by", "h"), // working hours past the time wanted
    column("Note", "text"),
    column("Late as it is", "h"), // with no overtime and nothing sent out
    column("Second shift saves", "h"),
    column("Sent out saves", "h"),
    MESSAGE,
  ],
  "BILL.STATIONS": [
    column("Station", "text"),
    column("Queue", "h"),
    column("Load", "h"),
    column("Available", "h"),
    column("Overtime", "h"),
    column("Short", "h"),
    column("Finish", "date"),
    column("Note", "text"),
  ],
  "BILL.LOADIN": [
    column("Order", "count"), // loaded first, used last
    column("Area", "text"),
    column("Stacks", "count"),
    column("Part", "text"),
    column("Quantity", "count"),
    column("Spares", "count"),
    column("Weight each", "mass"),
    column("Stack weight", "mass"), // of a full one
    column("Handling", "text"),
    column("Label", "text"),
    MESSAGE,
  ],
  "WEEK.DATES": [
    column("Job", "text"),
    column("Due", "date"),
    column("Finish", "date"),
    column("Late", "h"), // on the clock on the wall
    column("Start by in plan", "date"),
    column("Decided at", "list"), // steps of the chain that ends with the job, of other jobs with their names
    MESSAGE,
  ],
  "WEEK.LOAD": [
    column("Station", "text"),
    column("Day", "date"),
    column("Available", "h"),
    column("Load", "h"), // set-up and run
    column("Slack", "h"),
    column("People", "h"), // two at a step count twice
  ],
  "CUT.PLAN": [
    column("Pattern", "text"), // number, or "Total" in the last row of a material and thickness
    column("Stock", "text"),
    column("Material", "text"),
    column("Thickness", "length"),
    column("Length", "length"),
    column("Width", "length"),
    column("Cut on", "text"), // the shear's name, or the waterjet
    column("Sheets", "count"),
    column("Blanks", "list"), // on one sheet: "A1 x 4; B2 x 2"
    column("Remnants", "list"), // usable ones of one sheet: "12 x 48"
    column("Yield", "share"),
    column("Weight", "mass"),
    column("Price", "money"), // of all sheets of the row
    column("Lower bound", "number"), // of sheets, or of price where prices differ; Total rows only
    column("Layout", "text"), // of the shear's sheet: copied under "Pinned" of Stock it stays
    MESSAGE,
  ],
  "CUT.LIST": [
    column("Cut", "count"),
    column("Pattern", "text"),
    column("Material", "text"),
    column("Thickness", "length"),
    column("Shear", "text"),
    column("Piece", "text"), // goes in: "5 x strip 8 x 48"
    column("Gauge", "length"), // back gauge, front stop or mark, see "Set by"
    column("Cut length", "length"),
    column("Strokes", "count"),
    column("Drops", "text"), // "45 x DF-05"
    column("On table", "text"),
    column("Turn", "text"),
    column("Set by", "text"), // gauge, front stop, mark
    column("On tape", "text"), // of an inch tape, 1/32 over 24 in
    column("Lift", "text"), // weight of the piece taken up, and who lifts it where one person does not
    column("Note", "text"),
    MESSAGE,
  ],
  // Columns of the table of sheets, so that the rows are pasted below it.
  "CUT.OFFCUTS": [
    column("Stock", "text"), // tag and number of the plan
    column("Material", "text"),
    column("Thickness", "length"),
    column("Length", "length"),
    column("Width", "length"),
    column("Sheets", "count"),
    column("Price", "money"), // what this job is credited for one
    column("Remnant worth", "share"),
    column("Remnant", "text"),
    column("Grain", "text"), // along its "length" or its "width"
    column("Edges sheared", "text"),
  ],
} as const satisfies Record<string, SpillColumns>;
export type SpillName = keyof typeof SPILLS;
type Header<N extends SpillName> = (typeof SPILLS)[N][number]["header"];

export const headers = (name: SpillName): string[] => SPILLS[name].map(({ header }) => header);

/** "Length" -> "Length (in)"; hours and minutes carry theirs too, money and counts have none. */
export const headerRow = (name: SpillName, system: UnitSystem): string[] =>
  SPILLS[name].map(({ header, kind }) => {
    const unit = kind in SCALES ? unitName(kind as QuantityKind, system) : kind === "h" || kind === "min" ? kind : "";
    return unit === "" ? header : `${header} (${unit})`;
  });

/** A row by its headers; figures in internal units, hours and minutes as they are. What is left out is "". */
export type SpillRow<N extends SpillName> = { readonly [H in Header<N>]?: CellValue | undefined };

/** The finished block: header row and rows, figures in the call's unit system. */
export function spill<N extends SpillName>(name: N, rows: readonly SpillRow<N>[], system: UnitSystem): CellMatrix {
  const columns: SpillColumns = SPILLS[name];
  return [headerRow(name, system), ...rows.map((row) => columns.map((column) => written(row, column, system)))];
}

function written(
  row: { readonly [header: string]: CellValue | undefined },
  { header, kind }: SpillColumn,
  system: UnitSystem,
): CellValue {
  const value = row[header];
  if (value === undefined || value === null) return "";
  return typeof value === "number" && kind in SCALES ? fromInternal(value, kind as QuantityKind, system) : value;
}
