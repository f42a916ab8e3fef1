import { describe, expect, it } from "vitest";
import { drawBentProfile } from "../../../src/papers/drawing/bent-profile.ts";
import { drawFlat, outlineTrueSize } from "../../../src/papers/drawing/flat-blank.ts";
import { escapeMarkup } from "../../../src/papers/drawing/svg.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";

/** 2 x 3 in legs in 1/4 in sheet, R 5/16 in, deduction 0.469 in by hand: 1.125 - (pi/2)(0.3125 + 0.42 x 0.25). */
const BRACKET = {
  thickness: mm(6.35),
  flanges: [mm(50.8), mm(76.2)],
  bends: [{ angle: degrees(90), insideRadius: mm(7.9375), deduction: mm(11.913) }],
};

describe("the flat", () => {
  const svg = drawFlat(BRACKET, mm(101.6), "in", { name: "B1", grain: "across" }).svg;
  it("says length, width, bend line, direction, gauge edge and grain to a reader who cannot see it", () => {
    expect(svg).toContain("Flat 4.531 in by 4 in.");
    expect(svg).toContain("Bend lines at 1.7655 in (up 90 degrees) from edge 1.");
    expect(svg).toContain("Edge 1 goes to the gauge first. Bend lines across the grain.");
  });
  it("tells a bend down from a bend up by the stroke, not by color", () => {
    const down = { ...BRACKET, bends: [{ ...BRACKET.bends[0]!, angle: degrees(-90) }] };
    const dashes = (drawing: string) => /stroke-dasharray="([^"]+)"/.exec(drawing)![1];
    expect(dashes(drawFlat(down, mm(101.6), "in").svg)).not.toBe(dashes(svg));
    expect(svg).not.toMatch(/(fill|stroke)="(?!none|currentColor|Canvas)[^"]*"/);
  });
});

describe("the flat of a plate", () => {
  const plate = { thickness: mm(6.35), flanges: [mm(203.2)], bends: [] };
  it("is its outline alone: no bend line, no gauge", () => {
    const { svg } = drawFlat(plate, mm(101.6), "in", { name: "P1", grain: "along" });
    expect(svg).toContain("Flat 8 in by 4 in. No bends. Grain along its width.");
    expect(svg).not.toContain("gauge");
    expect(svg).not.toContain("stroke-dasharray");
  });
});

describe("the bent profile", () => {
  it("is as thick as the sheet, and its mid line is flanges less setbacks plus the arc", () => {
    const { svg } = drawBentProfile(BRACKET, "mm", "B1", { width: 1e4, height: 1e4 });
    const scale = 1.5; // of true size on paper, the largest there is
    const drawn = /<path d="M 0 0 L ([\d.]+) 0 A ([\d.]+) [\d.]+ 0 0 0 ([\d.]+) -([\d.]+) [^>]*stroke-width="([\d.]+)"/
      .exec(svg)!
      .slice(1)
      .map((figure) => Number(figure) / scale);
    // By hand: first straight 50.8 - (7.9375 + 6.35) = 36.5125; arc radius 7.9375 + 3.175 = 11.1125; its end, the sheet.
    [36.5125, 11.1125, 47.625, 11.1125, 6.35].forEach((wanted, i) => {
      expect(drawn[i]).toBeCloseTo(wanted, 2);
    });
  });
  it("refuses a part that no sheet can be", () => {
    expect(() => drawBentProfile({ ...BRACKET, flanges: [mm(5), mm(76.2)] }, "in")).toThrowError();
  });
});

describe("the outline for the waterjet", () => {
  it("is at true size in millimeters", () => {
    expect(outlineTrueSize(mm(115.09), mm(101.6))).toMatch(
      /viewBox="0 0 115.09 101.6" width="115.09mm" height="101.6mm"/,
    );
  });
});

describe("text from a workbook", () => {
  it("never becomes markup", () => {
    expect(escapeMarkup(`<img src=x onerror="a('b')">&`)).toBe(
      "&lt;img src=x onerror=&quot;a(&#39;b&#39;)&quot;&gt;&amp;",
    );
    expect(drawFlat(BRACKET, mm(100), "in", { name: "<script>" }).svg).not.toContain("<script>");
  });
});
