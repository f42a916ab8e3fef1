import { describe, expect, it } from "vitest";
import { cuttingFeed } from "../../../src/calc/jet/cutting-feed.ts";
import { type Fact, fact } from "../../../src/data/fact.ts";
import type { Material } from "../../../src/data/materials/material.ts";
import type { GramsPerMinute, Megapascals, Millimetres } from "../../../src/units/quantity.ts";
import type { Working } from "../../../src/units/working.ts";

const given = (value: number, unit = ""): Fact => fact(value, unit, "given", "timed here");
const PANEL: Material = { name: "panel", aliases: [], timedFeed: given(1000, "mm/min") };
const TIMED: Material = { ...PANEL, timedThickness: given(6, "mm") };
const cut = (thickness: number, quality = 3) => ({
  thickness: thickness as Millimetres,
  quality,
  pressure: 345 as Megapascals,
  orifice: 0.35 as Millimetres,
  abrasiveRate: 340 as GramsPerMinute,
  nozzleDiameter: 1 as Millimetres,
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

  it("says nothing about sheet under half or over double its thickness: then the formula, times the machine's factor", () => {
    const steel = { ...TIMED, machinability: given(87.6) };
    const { timedFeed: _, ...untimed } = steel;
    for (const thickness of [2.9, 12.1]) {
      const formula = cuttingFeed(untimed, cut(thickness), undefined);
      expect(cuttingFeed(steel, cut(thickness), undefined)).toBe(formula);
      expect(cuttingFeed(steel, cut(thickness), 0.8)).toBeCloseTo(0.8 * formula, 9);
      expect(() => cuttingFeed(TIMED, cut(thickness), undefined)).toThrow(
        /^thickness must be half to double the 0\.2362 in \(6 mm\) of the timed cut in panel; got .*; time a cut in this/,
      );
    }
  });

  it("refuses a material with neither, and a timed feed without its thickness", () => {
    expect(() => cuttingFeed({ name: "plywood", aliases: [] }, cut(6), undefined)).toThrow(
      /^material must be one with a timed cut or a machinability number; got plywood; time a cut of your own/,
    );
    expect(() => cuttingFeed(PANEL, cut(6), undefined)).toThrow(/^timed thickness must be given beside the timed feed/);
    expect(cuttingFeed({ ...PANEL, nominalThickness: given(6, "mm") }, cut(6), undefined)).toBeCloseTo(1000, 9);
  });
});
