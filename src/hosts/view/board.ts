/** The bill of the open workbook as the page works through it: its lines, where they stand, which cells cannot be read. */
import type { JobPlan } from "../../job/job-plan.ts";
import type { ListedLine } from "../../papers/line-list.ts";
import type { Workbook } from "../../sheet/workbook/workbook.ts";
import type { Board, SheetPlace, SheetView } from "./protocol.ts";
import type { Trade } from "./trade.ts";

export function boardOf(job: JobPlan, workbook: Workbook, lines: readonly ListedLine[]): Board {
  const header = headerOf(job, workbook);
  return {
    header,
    lines,
    missing: job.missing,
    faults: faultsOf(job, header),
    next: { ...header, row: header.row + job.table.matrix.length },
  };
}

export const headerOf = ({ table }: JobPlan, { sheets }: Pick<Workbook, "sheets">): SheetPlace => ({
  sheet: sheets.findIndex(({ name }) => name === table.sheet.name),
  row: table.top,
  column: table.left,
});

/** The bill's own sheet with what plain numbers of a column mean beside its heading, where the heading does not say. */
export function withUnits(
  view: SheetView,
  { table: { top, left, matrix }, system }: JobPlan,
  unitOf: Trade["columnUnit"],
): SheetView {
  const cells = [...view.cells];
  cells[top] = (cells[top] ?? []).map((cell, column) => {
    const unit = cell && !cell.text.includes("(") ? unitOf(matrix[0]?.[column - left] ?? null, system) : "";
    return cell && unit !== "" ? { ...cell, text: `${cell.text} (${unit})` } : cell;
  });
  return { ...view, cells };
}

/** A refusal names its column as the header does. */
function faultsOf({ plan, table }: JobPlan, header: SheetPlace): Board["faults"] {
  const titles = (table.matrix[0] ?? []).map((cell) => withoutUnit(String(cell ?? "")));
  return plan.lines.flatMap((line) =>
    line.findings.flatMap(({ about, words = "" }) => {
      const title = about === "input" ? /column "([^"]*)"/.exec(words)?.[1] : undefined;
      const index = title === undefined ? -1 : titles.indexOf(withoutUnit(title));
      if (index < 0) return [];
      const says = words.replace(/^.*?column /, "");
      return [{ ...header, row: header.row + line.row - 1, column: header.column + index, says }];
    }),
  );
}

const withoutUnit = (title: string): string =>
  title
    .replace(/\s*\(.*$/, "")
    .trim()
    .toLowerCase();
