/** Where the worst of a line is marked: by the place that its finding names, in the picture that stands first. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { problemsOf } from "../../src/bill/problems.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { bookOf } from "../../src/job/workbook-book.ts";
import { faultPlace } from "../../src/papers/fault-place.ts";
import { lineReport } from "../../src/papers/line-report.ts";
import { readWorkbook } from "../../src/sheet/workbook/read-workbook.ts";

const { plan } = jobPlan(bookOf(readWorkbook(new Uint8Array(readFileSync("sample-workbooks/stage-job.xlsx")))))!;
const report = (part: string) => {
  const line = plan.lines.find((each) => each.part === part)!;
  const [first, ...others] = lineReport(line, plan).drawings;
  const count = (svg: string) => svg.split('class="ring"').length - 1;
  return { line, first: first!, marks: count(first!.svg), others: others.map(({ svg }) => count(svg)) };
};

describe("the worst of a line", () => {
  it.each([
    ["RT-10", "Bent", 1, "a radius that cracks: at its one bend"],
    ["LC-11", "Bent", 2, "a radius tighter than usual: at each of its two bends"],
    ["DF-09", "Bent", 2, "a force that the brake has not: at its two bends, equally sharp"],
    ["DF-10", "Flat", 4, "a bend longer than the bed: at both ends of its two bend lines"],
    ["RT-05", "Bent", 2, "a hole that goes oval: the stretch beside the bend, on both flanges"],
    ["RT-08", "Hit 1: end of bend 1", 1, "a flange that barely rests on the die: at its end"],
  ])("%s is marked on the picture %s, %i times: %s", (part, name, marks) => {
    const { first, marks: found, others } = report(part);
    expect(first.name).toBe(name);
    expect(found).toBe(marks);
    expect(others.every((count) => count === 0)).toBe(true);
  });

  it("that names no place marks nothing", () => {
    const { line, marks, others } = report("LC-09"); // a tolerance that will not hold
    expect(faultPlace(problemsOf(line.findings)[0]!, line.plan!)).toBeUndefined();
    expect([marks, ...others].every((count) => count === 0)).toBe(true);
  });

  it("of a length that is not a side of the blank marks neither", () => {
    const { plan: own } = report("DF-10").line;
    const finding = { about: "cutting", status: "stop", kind: "too long" } as const;
    expect(faultPlace({ ...finding, figure: own!.blank.width }, own!)).toEqual({ kind: "flat", side: "width" });
    expect(faultPlace({ ...finding, figure: own!.blank.length }, own!)).toEqual({ kind: "flat", side: "length" });
    expect(faultPlace({ ...finding, figure: 1 }, own!)).toBeUndefined();
  });
});
