import { describe, expect, test } from "vitest";
import { cutList, planCuts } from "../../../src/calc/cutting/index.ts";
import { drawPattern } from "../../../src/papers/drawing/cut-plan.ts";
import { shopBill } from "../../../src/tools/bench/cutting/shop-bills.ts";
import { mm } from "../../../src/units/quantity.ts";
import { blank, limits, sheet } from "../../calc/cutting/bills.ts";

const { blanks, stock, limits: shear } = shopBill(5);
const PLAN = planCuts(blanks, stock, shear, { units: 5_000_000 });
const LIST = cutList(PLAN);
const drawn = (name: string) => ({
  name,
  grain: "w" as const,
  edges: "trimmed edges",
  keys: new Map(),
  tags: new Map(),
});
const DRAWN = PLAN.patterns.map((pattern) => ({
  pattern,
  svg: drawPattern(pattern, LIST, drawn(pattern.stock), "in").svg,
}));

const numbers = (svg: string, name: string) =>
  [...svg.matchAll(new RegExp(`<${name} ([^>]*)`, "g"))].map(([, attributes]) =>
    Object.fromEntries([...attributes!.matchAll(/([\w-]+)="([^"]*)"/g)].map(([, key, value]) => [key!, value!])),
  );

describe("a pattern of the cut plan", () => {
  const plan = planCuts(
    [blank(`<b & "c">`, 300, 200, 3)],
    [sheet("s<1>", 1000, 500, { trim: mm(5) })],
    limits({ leastRemnant: 100 }),
    { units: 1_000_000 },
  );
  const { svg } = drawPattern(plan.patterns[0]!, cutList(plan), drawn("s<1>"), "mm");

  test("escapes what people typed", () => {
    expect(svg).toContain("&lt;b &amp; &quot;c&quot;&gt;");
    expect(svg).toContain("s&lt;1&gt;");
    expect(svg).not.toContain("<b &");
  });

  test("is to scale and says its size in the workbook's unit", () => {
    const [box] = numbers(svg, "rect").filter(({ width, height }) =>
      [`${width}x${height}`].some((size) => size === "300x200" || size === "200x300"),
    );
    expect(box).toBeDefined();
    expect(svg).toMatch(/<title>Pattern 1: cut 1 sheet of s&lt;1&gt;, 1000 mm x 500 mm<\/title>/);
    expect(DRAWN[0]!.svg).toMatch(/<title>Pattern 1: cut \d+ sheets? of \d+x\d+, (96|120) in x (48|60) in<\/title>/);
  });

  test("numbers every cut through the sheet and those that have room, in no color but the page's own", () => {
    const all = DRAWN.map(({ svg }) => svg).join("");
    const isNumbered = ({ seq }: { readonly seq: number }) => new RegExp(`>${seq}(?:: [\\d.]+)?</text>`).test(all);
    for (const row of LIST) if (row.stage === "strip" || row.stage === "trim") expect(isNumbered(row)).toBe(true);
    expect(LIST.filter(isNumbered).length / LIST.length).toBeGreaterThan(0.6);
    expect(all).not.toMatch(/#[0-9a-f]{3,6}\b|\bNaN\b|Infinity|undefined/);
  });

  test("pieces fill the sheet and do not overlap", () => {
    for (const { pattern, svg } of DRAWN) {
      const thin = numbers(svg, "rect").filter(
        (rect) => rect.rx === undefined && rect["fill"] !== undefined && rect["stroke"] !== "none",
      );
      const whole = pattern.w * pattern.h;
      const areas = thin.map(({ width, height }) => Number(width) * Number(height));
      // The sheet's own outline is one of them.
      expect(areas.reduce((sum, area) => sum + area, 0) / whole).toBeCloseTo(2, 3);
    }
  });

  test("cut numbers keep clear of each other", () => {
    let overlapping = 0;
    let marks = 0;
    for (const { svg } of DRAWN) {
      const boxes = numbers(svg, "rect")
        .filter(({ rx }) => rx !== undefined)
        .map(({ x, y, width, height }) => [Number(x), Number(y), Number(width), Number(height)] as const);
      marks += boxes.length;
      boxes.forEach(([x, y, w, h], i) => {
        if (boxes.slice(0, i).some(([u, v, a, b]) => x < u + a && u < x + w && y < v + b && v < y + h)) overlapping++;
      });
    }
    expect(marks).toBeGreaterThan(0);
    expect(overlapping).toBe(0);
  });
});
