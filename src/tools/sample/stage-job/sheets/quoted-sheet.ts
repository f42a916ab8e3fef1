import { value } from "../../building/cells.ts";
import { spillColumn } from "../../building/spill-block.ts";
import { HEADER_ROW } from "../../building/spill-sheet.ts";
import type { SheetModel } from "../../xlsx/model.ts";
import { PART_COLUMNS } from "./parts-sheet.ts";
import { CHECKS } from "./spill-sheets.ts";

/** Lines that no check stops. Empty cells stay empty: a filter alone would make noughts of them. */
const formula = (): string => {
  const status = `INDEX(${CHECKS},_xlfn.SEQUENCE(ROWS(Parts[Part]),1,2),${spillColumn("BILL.CHECK", "Status")})`;
  return `_xlfn.LET(_xlpm.lines,_xlfn._xlws.FILTER(Parts[],${status}<>"stop"),_xlfn.VSTACK(Parts[#Headers],IF(_xlpm.lines="","",_xlpm.lines)))`;
};

export const quotedSheet = (): SheetModel => ({
  name: "Quoted",
  widths: PART_COLUMNS.map(({ width }) => width),
  cells: [
    value(1, 1, "title", "Quoted"),
    value(
      2,
      1,
      "note",
      "The lines of the sheet Parts that no check stops, as the sheets that follow take them. What is stopped comes back here when the part or the tool is changed.",
    ),
    {
      row: HEADER_ROW,
      column: 1,
      formula: formula(),
      heads: PART_COLUMNS.map(({ number }) => (number ? "headerRight" : "header")),
      spills: PART_COLUMNS.map(({ number }, i) => (i === 0 ? "label" : number ? "plainNumber" : "text")),
    },
  ],
  merges: ["A2:J2"],
  frozen: { rows: HEADER_ROW, columns: 1 },
  print: { landscape: true, pagesWide: 2, titleRows: `${HEADER_ROW}:${HEADER_ROW}` },
});
