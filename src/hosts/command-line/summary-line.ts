import type { FileReport } from "../../sheet/report/report.ts";

/** What happened to one file, for a person: "bill.xlsx: fresh, 312 formulas, 4 cells changed, 0.08 s". */
export function summaryLine(file: FileReport): string {
  if (file.refused) return `${file.in}: refused, ${file.refused.reason}: ${file.refused.message}`;
  const parts = [`${file.in}: ${file.status}`, `${file.formulas} formulas`];
  if (file.changed > 0) parts.push(`${file.changed} cells changed`);
  if (file.kept.length > 0)
    parts.push(`${file.kept.length} kept (${file.kept[0]!.cell}: ${file.kept[0]!.reason}, ${file.kept[0]!.detail})`);
  if (file.stale.length > 0) parts.push(`${file.stale.length} depend on them`);
  if (file.circular.length > 0) parts.push(`circular: ${file.circular[0]!.join(" -> ")}`);
  if (file.differences.length > 0) parts.push(`${file.differences.length} differ, first ${file.differences[0]!.cell}`);
  parts.push(`${file.seconds} s`);
  return [parts.join(", "), ...(file.note ? [file.note] : [])].join("; ");
}
