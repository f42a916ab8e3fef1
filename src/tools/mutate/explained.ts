/**
 * Why single changes may stand without any test noticing them: what a person wrote on the page of survivors. A row that is
 * moved from "Not explained" to below a heading with a reason, `## 1: The reason.`, keeps it when the page is written anew.
 */
import type { Change } from "./scores.ts";
import { changeRow, REASON } from "./survivors-page.ts";

/** The reason of a change, which is told by its file and by what it was and became. Each row speaks for one change. */
export function explanationsOf(page: string): (change: Change) => string | undefined {
  const reasons = new Map<string, string[]>();
  let why: string | undefined;
  for (const line of page.split("\n")) {
    if (line.startsWith("## ")) why = REASON.exec(line)?.[1];
    const row = withoutLine(line);
    if (line.startsWith("- ") && why !== undefined) reasons.set(row, [...(reasons.get(row) ?? []), why]);
  }
  return (change) => reasons.get(withoutLine(changeRow(change)))?.shift();
}

/** Lines move when a file changes. */
const withoutLine = (row: string): string => row.replace(/^(- [^:]*):\d+:/, "$1:");
