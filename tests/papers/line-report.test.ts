import { describe, expect, it } from "vitest";
import type { Book } from "../../src/job/book.ts";
import { jobPlan } from "../../src/job/job-plan.ts";
import { lineReport } from "../../src/papers/line-report.ts";
import { PRESS_HEADER } from "../cells/example/press-header.ts";
import { book, PARTS, SHOP } from "../job/two-line-book.ts";

/** Of a line of the workbook's bill, the first where none is named. */
const reportOf = (given: Book, line = 0) => {
  const { plan } = jobPlan(given)!;
  return lineReport(plan.lines[line]!, plan);
};

describe("the report of a line", () => {
  it("has drawings, figures and sentences; a wrong line only the sentence of what is wrong", () => {
    const good = reportOf(book());
    // What is found is about the beam of the brake: seen at the tools, so they come first.
    expect(good.drawings.map(({ name }) => name)).toEqual(["Hit 1: end of bend 1", "Bent", "Flat"]);
    // 2 x 3 x 1/4 in A36 over a 2 in die: the README's bracket, about 73 US tons for 4 ft, so a quarter of it for 1 ft.
    const force = Number.parseFloat(good.figures.find(([name]) => name === "Force")![1]);
    expect(force).toBeCloseTo(73 / 4, 0);
    const wrong = reportOf(book(), 1);
    expect(wrong.status).toBe("stop");
    expect(wrong.sentences[0]).toMatch(/"Material" must be .*; got "steel"/);
    expect(wrong.drawings).toEqual([]);
  });

  it("tools drawn in the workbook are used for their own die, plain ones for every other", () => {
    const corners = (tool: string, ...points: number[][]) => points.map(([x, y]) => [tool, x, y]);
    const tools = (opening: number) => [
      ...SHOP,
      [],
      ["Tool", "X (mm)", "Y (mm)"],
      ...corners("punch", [0, 0], [10, 17.32], [10, 120], [-10, 120], [-10, 17.32]),
      ...corners("ram", [-40, 120], [40, 120], [40, 600], [-40, 600]),
      ...corners("die", [-40, 0], [-25.4, 0], [0, -30.27], [25.4, 0], [40, 0], [40, -80], [-40, -80]),
      ...corners("bed", [-50, -80], [50, -80], [50, -700], [-50, -700]),
      ...corners("finger", [0, 0], [60, 0], [60, 25], [0, 25]),
      [],
      PRESS_HEADER,
      [opening, 0, 80, 0, 25, 5, 700, "yes", 150, 200, 1, "no"],
    ];
    const picture = (opening: number) => {
      const given = book(PARTS, tools(opening));
      expect(jobPlan(given)!.missing).toEqual([]);
      return reportOf(given).drawings.find(({ kind }) => kind === "hit")!.svg;
    };
    expect(picture(2)).not.toContain("tools drawn from their tables");
    expect(picture(1)).toContain("tools drawn from their tables");
  });

  it("a part that no sheet can be says why and is not drawn", () => {
    const short = PARTS.map((row) => row.map((cell) => (cell === "2; 3" ? "0.2; 3" : cell)));
    const report = reportOf(book(short));
    expect(report).toMatchObject({ status: "stop", drawings: [] });
    expect(report.sentences[0]).toMatch(/must be .*; got/);
  });

  it("tools that cannot be stop the line and leave its figures standing", () => {
    const crossed = ["punch", "ram", "die", "bed", "finger"].flatMap((tool) => [
      [tool, 0, 0],
      [tool, 1, 1],
      [tool, 1, 0],
      [tool, 0, 1],
    ]);
    const settings = [2, 0, 80, 0, 25, 5, 700, "yes", 150, 200, 1, "no"];
    const headers = PRESS_HEADER;
    const given = book(PARTS, [...SHOP, [], ["Tool", "X (mm)", "Y (mm)"], ...crossed, [], headers, settings]);
    const report = reportOf(given);
    expect(report.status).toBe("stop");
    expect(report.sentences[0]).toMatch(/^outlines "\w+" must be a polygon that does not cross itself/);
    expect(report.figures.slice(0, 6)).toEqual(reportOf(book()).figures.slice(0, 6));
    expect(report.drawings).toEqual([]);
  });

  it("text of the workbook never becomes markup in a drawing", () => {
    const evil = PARTS.map((row) => row.map((cell) => (cell === "A-1" ? '"><script>alert(1)</script>' : cell)));
    for (const { svg } of reportOf(book(evil)).drawings) expect(svg).not.toContain("<script");
  });
});
