/** A fix that is work after bending: what no size of the bill tells must reach those who do it. */
import { describe, expect, it } from "vitest";
import { fixOffer } from "../../src/job/fix-cells.ts";
import { type JobPlan, jobPlan } from "../../src/job/job-plan.ts";
import { printOf } from "../../src/papers/papers.ts";
import type { CellMatrix } from "../../src/units/cell.ts";
import { bracket, SHOP } from "../cells/example/tables.ts";

const SHEETS = Object.entries(SHOP).map(([name, rows]) => ({ name, rows }));
const planOf = (bill: CellMatrix): JobPlan => jobPlan([{ name: "Parts", rows: bill }, ...SHEETS])!;

/** The bill with the fix of its only line typed into it. */
function mended(bill: CellMatrix): CellMatrix {
  const job = planOf(bill);
  const { cells } = fixOffer(job, job.plan.lines[0]!)!;
  const rows = bill.map((row) => [...row]);
  for (const { row, column, value } of cells) {
    const typed = rows[row - job.table.top]!;
    while (typed.length <= column - job.table.left) typed.push(null);
    typed[column - job.table.left] = value;
  }
  const width = Math.max(...rows.map((row) => row.length));
  return rows.map((row) => [...row, ...Array.from({ length: width - row.length }, () => null)]);
}

describe("work after bending that a fix asks for", () => {
  it.each([
    ["a flange that no die can hold", { Flanges: "0.6; 3" }, "After bending trim flange 1 to 0.600 in"],
    ["a hole inside the tangent", { "Hole distance": 0.2 }, "Drill the hole after bending, 0.200 in from the flange"],
  ])("%s: its set-up sheet, its cut sheet and its notes say so", (_, changed, said) => {
    const line = bracket(changed);
    const before = planOf([Object.keys(line), Object.values(line)]);
    const bill = mended(before.table.matrix);
    const { plan, missing } = planOf(bill);
    expect(bill[0]).toContain("Instruction");
    expect(plan.lines[0]!.status).toBe("clear");
    const about = { name: "x", version: "1", edition: "e", date: "2026-03-01", stale: 0, missing };
    const papers = printOf(plan, about).papers;
    const pages = (start: string) =>
      papers
        .filter(({ file }) => file.startsWith(start))
        .flatMap((paper) => paper.pages)
        .join();
    expect(pages("setup/")).toContain(said);
    expect(pages("cutlist")).toContain(said);
  });
});
