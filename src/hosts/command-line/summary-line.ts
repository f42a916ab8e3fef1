import type { FileReport } from "../../sheet/report/report.ts";

/** What happened to one file, for a person: "bill.xlsx: fresh, 312 formulas, 4 cells changed, 0.08 s". */
export function summaryLine(file: FileReport): string {
  if (file.refused) return `${file.in}: refused, ${file.refused.reason}: ${file.refused.message}`;
  const parts = [`${file.in}: ${file.status}`, `${file.formulas} formulas`];
  if (file.changed > 0) parts.push(`${file.changed} cells changed`);
  const [[kept], [circle], [difference]] = [file.kept, file.circular, file.differences];
  if (kept) parts.push(`${file.kept.length} kept (${kept.cell}: ${kept.reason}, ${kept.detail})`);
  if (file.stale.length > 0) parts.push(`${file.stale.length} depend on them`);
  if (circle) parts.push(`circular: ${circle.join(" -> ")}`);
  if (difference) parts.push(`${file.differences.length} differ, first ${difference.cell}`);
  parts.push(`${file.seconds} s`);
  return [parts.join(", "), ...(file.note ? [file.note] : [])].join("; ");
}
