import { DONE, type FormulaCell } from "../workbook/formula-cell.ts";

/** Thrown when an expression reads a cell whose own formula has not been calculated yet. */
export class Pending {
  constructor(readonly cell: FormulaCell) {}
}

/** The cells of one column that wait for calculation, by row; finding the next one skips what is done for good. */
class PendingColumn {
  private readonly rows: number[] = [];
  private readonly cells: FormulaCell[] = [];
  private next: Int32Array = new Int32Array(0);

  add(row: number, cell: FormulaCell): void {
    this.rows.push(row);
    this.cells.push(cell);
  }

  /** Call once after the last add. */
  seal(): void {
    const { rows } = this;
    let sorted = true;
    for (let i = 1; i < rows.length && sorted; i++) sorted = rows[i - 1]! <= rows[i]!;
    if (!sorted) {
      const order = rows.map((_, i) => i).sort((a, b) => rows[a]! - rows[b]!);
      const cells = order.map((i) => this.cells[i]!);
      const byRow = order.map((i) => rows[i]!);
      for (let i = 0; i < order.length; i++) {
        this.cells[i] = cells[i]!;
        rows[i] = byRow[i]!;
      }
    }
    this.next = Int32Array.from({ length: rows.length + 1 }, (_, i) => i);
  }

  /** First waiting cell at or below `top`, at most at `bottom`. */
  first(top: number, bottom: number): { row: number; cell: FormulaCell } | undefined {
    const { rows, cells, next } = this;
    let low = 0;
    let high = rows.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (rows[middle]! < top) low = middle + 1;
      else high = middle;
    }
    // Union-find: entries that are done point past themselves, and every walk shortens the path (Tarjan 1975).
    let at = low;
    while (at < rows.length) {
      const jump = next[at]!;
      if (jump !== at) at = jump;
      else if (cells[at]!.state === DONE) {
        next[at] = at + 1;
        at++;
      } else break;
    }
    for (let i = low; i < at; ) {
      const jump = next[i]!;
      next[i] = at;
      i = jump > i ? jump : i + 1;
    }
    return at < rows.length && rows[at]! <= bottom ? { row: rows[at]!, cell: cells[at]! } : undefined;
  }
}

/** All cells that wait in this recalculation. */
export class PendingCells {
  private readonly sheets: (PendingColumn[] | undefined)[] = [];

  add(sheet: number, row: number, column: number, cell: FormulaCell): void {
    let columns = this.sheets[sheet];
    if (columns === undefined) {
      columns = [];
      this.sheets[sheet] = columns;
    }
    let list = columns[column];
    if (list === undefined) {
      list = new PendingColumn();
      columns[column] = list;
    }
    list.add(row, cell);
  }

  seal(): void {
    for (const columns of this.sheets) for (const column of columns ?? []) column?.seal();
  }

  /** First waiting cell in the range, by columns; `skip` names cells that do not count. */
  first(
    sheet: number,
    top: number,
    left: number,
    bottom: number,
    right: number,
    skip?: (cell: FormulaCell) => boolean,
  ): FormulaCell | undefined {
    const columns = this.sheets[sheet];
    if (columns === undefined) return undefined;
    const last = Math.min(right, columns.length - 1);
    for (let column = left; column <= last; column++) {
      let from = top;
      let found = columns[column]?.first(from, bottom);
      while (found && skip?.(found.cell)) {
        from = found.row + 1;
        found = columns[column]!.first(from, bottom);
      }
      if (found) return found.cell;
    }
    return undefined;
  }
}
