import type { SheetTable } from "./model.ts";
import { areaName, escapeXml, MAIN, XML } from "./xml.ts";

const tableArea = ({ row, column, headers, rows }: SheetTable): string =>
  areaName(row, column, row + rows, column + headers.length - 1);

/** One Excel Table part. Its column names must equal the text of the header cells. */
export const tableXml = (table: SheetTable, id: number): string =>
  `${XML}<table xmlns="${MAIN}" id="${id}" name="${table.name}" displayName="${table.name}" ref="${tableArea(table)}" totalsRowShown="0">` +
  `<tableColumns count="${table.headers.length}">` +
  table.headers.map((header, i) => `<tableColumn id="${i + 1}" name="${escapeXml(header)}"/>`).join("") +
  '</tableColumns><tableStyleInfo showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/></table>';
