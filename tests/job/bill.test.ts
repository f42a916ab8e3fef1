import { describe, expect, it } from "vitest";
import { billRowAt } from "../../src/job/bill-row.ts";
import { findTable } from "../../src/job/find-table.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { book, PARTS, SHOP } from "./two-line-book.ts";

describe("the bill in a workbook", () => {
  it("is found by its headers, wherever it stands, and ends at the first empty row", () => {
    const job = jobPlan(book())!;
    expect(job.table).toMatchObject({ top: 2, left: 1 });
    expect(job.plan.lines.map(({ part }) => part)).toEqual(["A-1", "A-2"]);
    expect(job.missing).toEqual([]);
  });

  it("goes on below a row that was left empty; a sum or another table's header below it is no line", () => {
    const [above, below] = [PARTS.slice(0, 4), PARTS.slice(4, 5)];
    const lines = (rows: typeof PARTS) => jobPlan(book(rows))!.plan.lines.map(({ part }) => part);
    expect(lines([...above, [], ...below])).toEqual(["A-1", "A-2"]);
    expect(lines([...above, [], ["Total", null, null, 12]])).toEqual(["A-1"]);
    expect(lines([...above, [], ["Die", "Opening", "Angle", "Rating"]])).toEqual(["A-1"]);
  });

  it("is not there where a column it needs is missing", () => {
    expect(jobPlan(book([["Part", "Material", "Thickness", "Quantity"]]))).toBeUndefined();
    expect(jobPlan([])).toBeUndefined();
  });

  it("two tables side by side are two tables", () => {
    expect(findTable(book(), "punches")!.matrix).toEqual([
      ["Punch", "Angle (deg)", "Nose radius (in)"],
      ["Plain", 75, 0.0625],
    ]);
  });

  it("what the shop lacks is said in the one grammar, and a line that asks for it is stopped", () => {
    const job = jobPlan(book(PARTS, [SHOP[0]!, SHOP[1]!]))!;
    expect(job.missing).toEqual(['dies must be a table whose header has "Die" and "Opening" and "Angle"; got none']);
    expect(job.plan.notChecked).toContain("dies");
    expect(job.plan.lines[0]!.status).toBe("stop");
    expect(job.plan.lines[0]!.findings[0]!.words).toMatch(/must be .*; got "V 2"/);
  });

  it("plain numbers are millimeters where the die table says so", () => {
    const metric = [...SHOP.slice(0, 3), ["Die", "Opening (mm)", "Angle (deg)"], ["V 2", 50.8, 80]];
    expect(jobPlan(book(PARTS, metric))!.system).toBe("mm");
    expect(jobPlan(book())!.system).toBe("in");
  });

  it("is planned with the edition that its own range of materials names", () => {
    const named = [...SHOP, [], ["Material", "Materials edition"], ["A36", "2026.2"]];
    expect(jobPlan(book(PARTS, named))!.edition).toBe("2026.2");
    expect(jobPlan(book(PARTS, [...SHOP, [], ["Material", "Materials edition"], ["A36", 2026.1]]))!.edition).toBe(
      "2026.1",
    );
  });

  it("a row of another sheet is about the part it names", () => {
    const job = jobPlan(book())!;
    const [offer, , sums] = book();
    expect(billRowAt(job, offer!, 3)!.part).toBe("A-1");
    expect(billRowAt(job, offer!, 2)).toBeUndefined(); // the header
    expect(billRowAt(job, sums!, 1)!.part).toBe("A-2");
    expect(billRowAt(job, sums!, 2)).toBeUndefined(); // no such part
  });
});
