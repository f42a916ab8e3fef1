import { describe, expect, it } from "vitest";
import { cuttingFeed } from "../../../src/calc/jet/cutting-feed.ts";
import { type Fact, fact } from "../../../src/data/fact.ts";
import type { Material } from "../../../src/data/materials/material.ts";
import type { GramsPerMinute, Megapascals, Millimeters } from "../../../src/units/quantity.ts";
import type { Working } from "../../../src/units/working.ts";

const given = (value: number, unit = ""): Fact => fact(value, unit, "given", "timed here");
const PANEL: Material = { name: "panel", aliases: [], timedFeed: given(1000, "mm/min") };
const TIMED: Material = { ...PANEL, timedThickness: given(6, "mm") };
const cut = (thickness: number, quality = 3) => ({
  thickness: thickness as Millimeters,
  quality,
  pressure: 345 as Megapascals,
  orifice: 0.35 as Millimeters,
  abrasiveRate: 340 as GramsPerMinute,
  nozzleDiameter: 1 as Millimeters,
});

describe("the shop's own timed cut comes before the formula", () => {
  it("is taken as it is in its own thickness, and the working says where it is from", () => {
    const work: Working = [];
    expect(cuttingFeed({ ...TIMED, machinability: given(87.6) }, cut(6), 2, work)).toBeCloseTo(1000, 9);
    expect(work.map(({ symbol }) => symbol)).toEqual(["u0", "h0", "q0", "u"]);
    expect(work[0]!.source).toBe("timed here (given)");
  });

  // Zeng & Kim 1993 (memory): the speed goes with the power -1.15 of thickness and of quality.
  it.each([
    [12, 3, 1000 / 2 ** 1.15],
    [3, 3, 1000 * 2 ** 1.15],
    [6, 1, 1000 * 3 ** 1.15],
  ])("%s mm at quality %s", (thickness, quality, feed) => {
    expect(cuttingFeed({ ...TIMED, timedQuality: given(3) }, cut(thickness, quality), undefined)).toBeCloseTo(feed, 6);
  });

  it("says nothing of a panel under half or over double its thickness", () => {
    for (const thickness of [2.9, 12.1])
      expect(() => cuttingFeed(TIMED, cut(thickness), undefined)).toThrow(
        /^thickness must be half to double the 0\.2362 in \(6 mm\) of the timed cut in panel; got .*; time a cut in this/,
      );
  });

  describe.each([0.12, 1, 3])("timed at %s of the formula", (share) => {
    const untimed: Material = { name: "steel", aliases: [], machinability: given(87.6) };
    const formula = (thickness: number) => cuttingFeed(untimed, cut(thickness), 0.8);
    const steel = { ...TIMED, machinability: given(87.6), timedFeed: given(share * formula(6), "mm/min") };
    const feed = (thickness: number) => cuttingFeed(steel, cut(thickness), 0.8);

    it("a thicker sheet is never cut faster, and nowhere is there a step", () => {
      for (let thickness = 1; thickness < 60; thickness *= 1.005) {
        const slower = feed(thickness) / feed(thickness * 1.005);
        expect(slower).toBeGreaterThan(1 - 1e-9);
        expect(slower).toBeLessThan(1.006);
      }
    });

    it("past its range the formula holds where it lies between the cut's scaling and the end of its range", () => {
      const [low, high] = [Math.min(1, share), Math.max(1, share)];
      for (const thickness of [1, 2.9, 12.1, 30, 120])
        for (const ratio of [feed(thickness) / formula(thickness)]) {
          expect(ratio).toBeGreaterThan(low - 1e-9);
          expect(ratio).toBeLessThan(high + 1e-9);
        }
      // 0.12 of the formula at double the thickness is what the formula says at 12 x 0.12^(-1 / 1.15) = 75.8 mm.
      if (share === 0.12) expect(feed(76)).toBeCloseTo(formula(76), 9);
    });
  });

  it("refuses a material with neither, and a timed feed without its thickness", () => {
    expect(() => cuttingFeed({ name: "plywood", aliases: [] }, cut(6), undefined)).toThrow(
      /^material must be one with a timed cut or a machinability number; got plywood; time a cut of your own/,
    );
    expect(() => cuttingFeed(PANEL, cut(6), undefined)).toThrow(/^timed thickness must be given beside the timed feed/);
    expect(cuttingFeed({ ...PANEL, nominalThickness: given(6, "mm") }, cut(6), undefined)).toBeCloseTo(1000, 9);
  });
});
