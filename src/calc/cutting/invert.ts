import { missing } from "../../units/certain.ts";

/**
 * Inverts a square matrix (Gauss and Jordan, the largest pivot of each column). Each row is twice as long as the matrix is
 * wide: the matrix on the left, room for the inverse on the right. False where a pivot is smaller than `least`: no inverse.
 */
export function invert(rows: Float64Array[], least: number): boolean {
  const m = rows.length;
  const wide = 2 * m;
  rows.forEach((row, r) => {
    row[m + r] = 1;
  });
  for (let k = 0; k < m; k++) {
    let top = k;
    for (let r = k + 1; r < m; r++)
      if (Math.abs(rows[r]?.[k] ?? missing()) > Math.abs(rows[top]?.[k] ?? missing())) top = r;
    const row = rows[top] ?? missing();
    if (Math.abs(row[k] ?? missing()) < least) return false;
    rows[top] = rows[k] ?? missing();
    rows[k] = row;
    const turn = 1 / (row[k] ?? missing());
    for (let c = k; c < wide; c++) row[c] = (row[c] ?? missing()) * turn;
    for (let r = 0; r < m; r++) {
      const other = rows[r] ?? missing();
      const factor = other[k] ?? missing();
      if (r === k || factor === 0) continue;
      for (let c = k; c < wide; c++) other[c] = (other[c] ?? missing()) - factor * (row[c] ?? missing());
    }
  }
  return true;
}
