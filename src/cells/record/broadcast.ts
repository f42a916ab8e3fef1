/**
 * Which rows a call has: shapes combine as Excel's operators combine them. A 1 x 1 argument stretches over everything,
 * n x 1 with 1 x m gives n x m, and where a range is too short the cell is #N/A.
 */
import type { CellMatrix, CellValue } from "../../units/cell.ts";

export interface Shape {
  readonly rows: number;
  readonly columns: number;
}

export const ONE: Shape = { rows: 1, columns: 1 };
export const shapeOf = (matrix: CellMatrix): Shape => ({ rows: matrix.length, columns: matrix[0]?.length ?? 0 });
export const isSingle = ({ rows, columns }: Shape): boolean => rows === 1 && columns === 1;

export const combine = (shapes: readonly Shape[]): Shape => ({
  rows: Math.max(1, ...shapes.map(({ rows }) => rows)),
  columns: Math.max(1, ...shapes.map(({ columns }) => columns)),
});

/** The cell that an argument shows at one place of the result; undefined where its range is too short. */
export function cellAt(matrix: CellMatrix, row: number, column: number): CellValue | undefined {
  const { rows, columns } = shapeOf(matrix);
  return matrix[rows === 1 ? 0 : row]?.[columns === 1 ? 0 : column];
}
