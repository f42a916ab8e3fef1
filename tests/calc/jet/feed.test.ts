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
  /** The published US form with its own constant, ksi, in, lb/min: it shares no figure but the exponents' meaning. */
  const usForm = (
    pressure: number,
    orifice: number,
    abrasive: number,
    quality: number,
    height: number,
    nozzle: number,
  ) =>
    ((87.6 * pressure ** 1.594 * orifice ** 1.374 * abrasive ** 0.343) / (163 * quality * height * nozzle ** 0.618)) **
    1.15;

  it.each([
    [50, 0.014, 0.75, 1, 0.5, 0.04],
    [50, 0.014, 0.75, 3, 0.25, 0.04],
    [30, 0.01, 0.5, 5, 1, 0.03],
    [87, 0.02, 1.5, 2, 0.1, 0.08],
  ] as const)(
    "agrees with the US form within 0.5 %% at %d ksi, %d in (Zeng & Kim, memory)",
    (pressure, orifice, abrasive, quality, height, nozzle) => {
      const si = jetFeed({
        machinability: 87.6,
        thickness: mm(height * 25.4),
        quality,
        pressure: megapascals(pressure * 6.894757),
        orifice: mm(orifice * 25.4),
        abrasiveRate: gramsPerMinute(abrasive * 453.59237),
        nozzleDiameter: mm(nozzle * 25.4),
      });
      expect(Math.abs(si / 25.4 / usForm(pressure, orifice, abrasive, quality, height, nozzle) - 1)).toBeLessThan(
        0.005,
      );
    },
  );

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
