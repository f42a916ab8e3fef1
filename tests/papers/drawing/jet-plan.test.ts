/** A sheet of the waterjet on paper: every blank once, to scale, apart by the web and inside the margin, with its name. */
import { describe, expect, it } from "vitest";
import { planJetSheets } from "../../../src/calc/cutting/index.ts";
import { cutListPages } from "../../../src/papers/cut-list.ts";
import { drawJetSheet } from "../../../src/papers/drawing/jet-plan.ts";
import { mm } from "../../../src/units/quantity.ts";
import { bracket, planned } from "../../bill/shop.ts";
import { blank, sheet } from "../../calc/cutting/bills.ts";

const rectangles = (svg: string) =>
  [...svg.matchAll(/<rect x="([\d.-]+)" y="([\d.-]+)" width="([\d.]+)" height="([\d.]+)" fill="none"/g)].map((found) =>
    found.slice(1).map(Number),
  ) as [number, number, number, number][];

describe("a sheet of the waterjet", () => {
  const [web, margin] = [6, 10];
  const wanted = [blank(`a<1>`, 300, 200, 7), blank("b", 450, 150, 4)];
  const plan = planJetSheets(
    wanted,
    [sheet("s", 1000, 1500)],
    { web: mm(web), margin: mm(margin) },
    { units: 1_000_000 },
  );
  const keys = new Map([
    ["a<1>", "A"],
    ["b", "B"],
  ]);
  // The first is written short side first, as its line says it, whichever way it lies.
  const lineOf = new Map([
    ["a<1>", { blank: { length: mm(200), width: mm(300) } }],
    ["b", { blank: { length: mm(450), width: mm(150) } }],
  ]);
  const drawn = { title: "Cut 1 sheet of s", grain: "w", keys, lineOf } as const;
  const svgs = plan.sheets.map((one) => drawJetSheet(one, drawn, "mm").svg);

  it("writes a size the same way round as its line", () => {
    const all = svgs.join("");
    expect(all).toContain("200 x 300");
    expect(all).not.toContain("300 x 200");
  });

  it("has every blank once, in its size", () => {
    const sizes = svgs
      .flatMap((svg, i) =>
        rectangles(svg)
          .slice(1)
          .flatMap((one) => Array.from({ length: plan.sheets[i]!.repeats }, () => one)),
      )
      .map(([, , w, h]) => [Math.max(w, h), Math.min(w, h)].join("x"));
    expect(sizes.filter((size) => size === "300x200").length).toBe(7);
    expect(sizes.filter((size) => size === "450x150").length).toBe(4);
    expect(sizes.length).toBe(11);
  });

  it("keeps the web between any two and the margin all round", () => {
    for (const svg of svgs) {
      const [[, , w, h], ...laid] = rectangles(svg) as [
        [number, number, number, number],
        ...[number, number, number, number][],
      ];
      expect([w, h]).toEqual([1000, 1500]);
      laid.forEach(([x, y, across, up], i) => {
        expect(Math.min(x, y, w - x - across, h - y - up)).toBeGreaterThanOrEqual(margin - 0.01);
        for (const [x2, y2, across2, up2] of laid.slice(i + 1)) {
          const apart = Math.max(x - x2 - across2, x2 - x - across, y - y2 - up2, y2 - y - up);
          expect(apart).toBeGreaterThanOrEqual(web - 0.01);
        }
      });
    }
  });

  it("names its blanks, with what people typed escaped, and says its size", () => {
    expect(svgs[0]).toContain("a&lt;1&gt;");
    expect(svgs[0]).toContain("<title>Cut 1 sheet of s, 1000 mm x 1500 mm</title>");
    expect(svgs.join("")).not.toMatch(/NaN|Infinity|undefined/);
  });

  it("stands in the cut list, with the count of what comes off", () => {
    const pages = cutListPages(planned([bracket({ Part: "JET-1", Route: "waterjet", Quantity: 3 })]));
    const page = pages.find((one) => one.includes("Pattern 1 of 1"))!;
    expect(page).toContain("JET-1");
    expect(page).toMatch(/<svg/);
    expect(page).toContain("hands out of the tank");
  });
});
