import { DONE, type FormulaCell } from "../workbook/formula-cell.ts";

/** Thrown when an expression reads a cell whose own formula has not been calculated yet. */
export class Pending {
  constructor(readonly cell: FormulaCell) {}
}

/** A row whose value waits for a cell: a spill waits in many rows for one. */
interface Waiting {
  readonly row: number;
  readonly cell: FormulaCell;
}

/** The cells of one column that wait for calculation, by row; finding the next one skips what is done for good. */
class PendingColumn {
  private readonly waiting: Waiting[] = [];
  private next: Int32Array = new Int32Array(0);

  add(row: number, cell: FormulaCell): void {
    this.waiting.push({ row, cell });
  }

  /** Call once after the last add. */
  seal(): void {
    this.waiting.sort((a, b) => a.row - b.row);
    this.next = Int32Array.from({ length: this.waiting.length + 1 }, (_, i) => i);
  }

  /** First waiting cell at or below `top`, at most at `bottom`. */
  first(top: number, bottom: number): Waiting | undefined {
    const { waiting, next } = this;
    let low = 0;
    let high = waiting.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((waiting[middle]?.row ?? top) < top) low = middle + 1;
      else high = middle;
    }
    // Union-find: entries that are done point past themselves, and every walk shortens the path (Tarjan 1975).
    let at = low;
    let found = waiting[at];
    while (found) {
      const jump = next[at] ?? at;
      if (jump === at && found.cell.state !== DONE) break;
      at = jump === at ? at + 1 : jump;
      found = waiting[at];
    }
    for (let i = low; i < at; ) {
      const jump = next[i] ?? i;
      next[i] = at;
      i = jump > i ? jump : i + 1;
    }
    return found && found.row <= bottom ? found : undefined;
  }
}

/** All cells that wait in this recalculation. */
export class PendingCells {
  private readonly sheets: (PendingColumn[] | undefined)[] = [];

  add(sheet: number, row: number, column: number, cell: FormulaCell): void {
    this.sheets[sheet] ??= [];
    const columns = this.sheets[sheet];
    columns[column] ??= new PendingColumn();
    columns[column].add(row, cell);
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
      let found = columns[column]?.first(top, bottom);
      while (found && skip?.(found.cell)) found = columns[column]?.first(found.row + 1, bottom);
      if (found) return found.cell;
    }
    return undefined;
  }
}
