import { describe, expect, it } from "vitest";
import { type JetCut, jetFeed } from "../../../src/calc/jet/feed.ts";
import { gramsPerMinute, megapascals, mm } from "../../../src/units/quantity.ts";

const cut: JetCut = {
  machinability: 87.6,
  thickness: mm(12.7),
  quality: 1,
  pressure: megapascals(344.738),
  orifice: mm(0.3556),
  abrasiveRate: gramsPerMinute(340.19),
  nozzleDiameter: mm(1.016),
};

describe("waterjet feed", () => {
  it("the US form with its own constant gives the same speed within 0.3 % (Zeng & Kim, memory)", () => {
    const us = ((87.6 * 50 ** 1.594 * 0.014 ** 1.374 * 0.75 ** 0.343) / (163 * 1 * 0.5 * 0.04 ** 0.618)) ** 1.15;
    expect(Math.abs(jetFeed(cut) / 25.4 / us - 1)).toBeLessThan(0.003);
  });

  it("thickness and quality slow it alike, by the power 1.15", () => {
    const twice = 2 ** 1.15;
    expect(jetFeed(cut) / jetFeed({ ...cut, thickness: mm(25.4) })).toBeCloseTo(twice, 9);
    expect(jetFeed(cut) / jetFeed({ ...cut, quality: 2 })).toBeCloseTo(twice, 9);
  });

  it("more pressure, water or abrasive is faster; a wider nozzle is slower", () => {
    const feed = jetFeed(cut);
    expect(jetFeed({ ...cut, pressure: megapascals(400) })).toBeGreaterThan(feed);
    expect(jetFeed({ ...cut, orifice: mm(0.4) })).toBeGreaterThan(feed);
    expect(jetFeed({ ...cut, abrasiveRate: gramsPerMinute(400) })).toBeGreaterThan(feed);
    expect(jetFeed({ ...cut, nozzleDiameter: mm(1.2) })).toBeLessThan(feed);
  });
});
