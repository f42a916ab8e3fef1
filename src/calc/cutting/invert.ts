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
    for (let r = k + 1; r < m; r++) if (Math.abs(rows[r]![k]!) > Math.abs(rows[top]![k]!)) top = r;
    const row = rows[top]!;
    if (Math.abs(row[k]!) < least) return false;
    rows[top] = rows[k]!;
    rows[k] = row;
    const turn = 1 / row[k]!;
    for (let c = k; c < wide; c++) row[c]! *= turn;
    for (let r = 0; r < m; r++) {
      const other = rows[r]!;
      const factor = other[k]!;
      if (r === k || factor === 0) continue;
      for (let c = k; c < wide; c++) other[c]! -= factor * row[c]!;
    }
  }
  return true;
}
