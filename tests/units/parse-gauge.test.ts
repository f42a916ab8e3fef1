import { describe, expect, it } from "vitest";
import { namesGauge, parseGauge, showGauge } from "../../src/units/parse-gauge.ts";

describe("gauge numbers", () => {
  it.each([
    [10, 10],
    [0, 0],
    ["10", 10],
    ["10 ga", 10],
    ["10ga", 10],
    ["10 gauge", 10],
    ["10 gage", 10],
    ["#10", 10],
    ["No. 10", 10],
    ["1/0", 0],
    ["0", 0],
    ["2/0", -1],
    ["3/0", -2],
    ["3 / 0", -2],
    ["000", -2],
    ["00", -1],
    ["7/0", -6],
    ["3/0 ga", -2],
  ])("%j is %d, zeros counted down from 0", (given, gauge) => {
    expect(parseGauge(given)).toBe(gauge);
  });

  it.each([10.5, -1, 100, Number.NaN, "", "abc", "10.5", "1/4", "8/0", "10 mm", "100", "-3"])(
    "%j is not one",
    (given) => {
      expect(parseGauge(given)).toBeUndefined();
    },
  );

  it("only the word makes a gauge of a plain number", () => {
    expect(["10 ga", "10ga", "10 Gauge"].every(namesGauge)).toBe(true);
    expect(["10", "10 mm", "galvanized"].some(namesGauge)).toBe(false);
  });

  it("is written back as it is read", () => {
    for (let gauge = -6; gauge <= 38; gauge++) expect(parseGauge(showGauge(gauge))).toBe(gauge);
  });
});

describe("gauges at the edges of what is one", () => {
  it("99 is the last, blanks around count for nothing, a lone zero is 1/0", () => {
    expect(parseGauge(99)).toBe(99);
    expect(parseGauge(100)).toBeUndefined();
    expect(parseGauge("  10 ")).toBe(10);
    expect(parseGauge("05")).toBe(5);
    expect(showGauge(0)).toBe("0 ga");
    expect(showGauge(-1)).toBe("2/0 ga");
  });
});
