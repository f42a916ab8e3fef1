/** The sample's workbook with a bill as long as wanted: its lines over and over, each part under a name of its own. */

import type { WorkbookModel } from "../../job/xlsx/model.ts";
import { sampleModel } from "../sample/stage-job/workbook.ts";

/** Up to the checks and their working; routes, cut plans and prices are no question of the page. */
const ANSWERED = 5;

export function longBill(lines: number): WorkbookModel {
  const model = sampleModel();
  return {
    ...model,
    sheets: model.sheets.slice(0, ANSWERED).map((sheet) => {
      const [table] = sheet.tables ?? [];
      if (sheet.name !== "Parts" || !table) return sheet;
      const isLine = ({ row }: { readonly row: number }) => row > table.row;
      const body = sheet.cells.filter(isLine);
      const cells = Array.from({ length: lines }, (_, i) =>
        body
          .filter(({ row }) => row === table.row + 1 + (i % table.rows))
          .map((cell) => ({
            ...cell,
            row: table.row + 1 + i,
            ...("value" in cell && cell.column === table.column ? { value: `${cell.value}/${i}` } : {}),
          })),
      ).flat();
      return {
        ...sheet,
        cells: [...sheet.cells.filter((cell) => !isLine(cell)), ...cells],
        tables: [{ ...table, rows: lines }],
      };
    }),
  };
}
