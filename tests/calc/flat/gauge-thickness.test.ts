import { describe, expect, it } from "vitest";
import { gaugeThickness } from "../../../src/calc/flat/gauge-thickness.ts";
import type { GaugeSeries } from "../../../src/data/materials/material.ts";
import { Refusal } from "../../../src/units/refusal.ts";

/** Published tables in inches, four places, written down from memory (unverified) except where reference/ has them. */
const STEEL: readonly (readonly [gauge: number, inches: number])[] = [
  [3, 0.2391],
  [4, 0.2242],
  [5, 0.2092],
  [6, 0.1943],
  [7, 0.1793],
  [8, 0.1644],
  [9, 0.1495],
  [10, 0.1345],
  [11, 0.1196],
  [12, 0.1046],
  [13, 0.0897],
  [14, 0.0747],
  [15, 0.0673],
  [16, 0.0598],
  [17, 0.0538],
  [18, 0.0478],
  [19, 0.0418],
  [20, 0.0359],
  [21, 0.0329],
  [22, 0.0299],
  [23, 0.0269],
  [24, 0.0239],
  [25, 0.0209],
  [26, 0.0179],
  [27, 0.0164],
  [28, 0.0149],
  [29, 0.0135],
  [30, 0.012],
  [31, 0.0105],
];
const GALVANIZED: readonly (readonly [gauge: number, inches: number])[] = [
  [8, 0.1681],
  [9, 0.1532],
  [10, 0.1382],
  [11, 0.1233],
  [12, 0.1084],
  [13, 0.0934],
  [14, 0.0785],
  [15, 0.071],
  [16, 0.0635],
  [17, 0.0575],
  [18, 0.0516],
  [19, 0.0456],
  [20, 0.0396],
  [21, 0.0366],
  [22, 0.0336],
  [23, 0.0306],
  [24, 0.0276],
  [25, 0.0247],
  [26, 0.0217],
  [27, 0.0202],
  [28, 0.0187],
  [29, 0.0172],
  [30, 0.0157],
  [31, 0.0142],
  [32, 0.0134],
];
const STAINLESS: readonly (readonly [gauge: number, inches: number])[] = [
  [7, 0.1875],
  [8, 0.1719],
  [9, 0.1563],
  [10, 0.1406],
  [11, 0.125],
  [12, 0.1094],
  [13, 0.0938],
  [14, 0.0781],
  [15, 0.0703],
  [16, 0.0625],
  [18, 0.05],
  [20, 0.0375],
  [22, 0.0313],
  [24, 0.025],
  [26, 0.0188],
  [28, 0.0156],
  [30, 0.0125],
];
const ALUMINUM: readonly (readonly [gauge: number, inches: number])[] = [
  [-3, 0.46],
  [-2, 0.4096],
  [-1, 0.3648],
  [0, 0.3249],
  [1, 0.2893],
  [2, 0.2576],
  [4, 0.2043],
  [6, 0.162],
  [8, 0.1285],
  [10, 0.1019],
  [12, 0.0808],
  [14, 0.0641],
  [16, 0.0508],
  [18, 0.0403],
  [20, 0.032],
  [22, 0.0253],
  [24, 0.0201],
  [26, 0.0159],
  [28, 0.0126],
  [30, 0.01],
  [36, 0.005],
];
const tables: Record<GaugeSeries, typeof STEEL> = {
  steel: STEEL,
  galvanized: GALVANIZED,
  stainless: STAINLESS,
  aluminum: ALUMINUM,
};
const rows = Object.entries(tables).flatMap(([series, table]) =>
  table.map(([gauge, inches]) => [series as GaugeSeries, gauge, inches] as const),
);

describe("gauge thickness against the published tables", () => {
  it.each(rows)("%s %d ga is %d in", (series, gauge, inches) => {
    expect(Math.abs(gaugeThickness(gauge, series) / 25.4 - inches)).toBeLessThanOrEqual(0.000051);
  });

  it.each([
    ["steel", 2],
    ["steel", 39],
    ["galvanized", 7],
    ["galvanized", 33],
    ["aluminum", 41],
    ["aluminum", -4],
    ["steel", 10.5],
  ] as const)("%s has no gauge %d", (series, gauge) => {
    try {
      gaugeThickness(gauge, series);
      expect.unreachable();
    } catch (refusal) {
      expect(refusal).toBeInstanceOf(Refusal);
      expect((refusal as Refusal).code).toBe("#N/A");
      expect((refusal as Refusal).message).toMatch(/^gauge must be /);
    }
  });

  it("a higher gauge is thinner in every series", () => {
    for (const [series, first, last] of [
      ["steel", 3, 38],
      ["galvanized", 8, 32],
      ["stainless", -6, 38],
      ["aluminum", -3, 40],
    ] as const)
      for (let gauge = first + 1; gauge <= last; gauge++)
        expect(gaugeThickness(gauge, series), `${series} ${gauge}`).toBeLessThan(gaugeThickness(gauge - 1, series));
  });
});
