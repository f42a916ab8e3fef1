/** The rates table: what it may hold, and that every threshold of a finding may be changed by a row of it. */
import { describe, expect, it } from "vitest";
import { inInternal, limitOf } from "../../../src/calc/limit-of.ts";
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { rates } from "../../../src/cells/tables/rates.ts";
import { THRESHOLDS } from "../../../src/data/threshold-rows.ts";
import * as thresholds from "../../../src/data/thresholds.ts";
import type { CellValue } from "../../../src/units/cell.ts";

const readRows = (rows: readonly CellValue[][], system: "in" | "mm" = "in") =>
  rates().read([["Rate", "Value", "Unit"], ...rows], "rates", {
    system,
    materials: currentMaterials(),
    material: undefined,
  });
const read = (name: string, value: CellValue, unit: CellValue = null, system: "in" | "mm" = "in") =>
  readRows([[name, value, unit]], system);

describe("thresholds as rows of the rates table", () => {
  it("every threshold of the data has a row of its own, within what it may be", () => {
    const facts = Object.entries(thresholds).filter(([, fact]) => !("row" in fact));
    // No threshold: a rate of its own sets the one, and the other says how plates are printed.
    expect(facts.map(([name]) => name)).toEqual(["JET_WEB_IN", "RATING_PRINTED"]);
    expect(new Set(THRESHOLDS.map(({ row }) => row.toLowerCase())).size).toBe(THRESHOLDS.length);
    for (const { row, value, from, to } of THRESHOLDS) {
      expect(value, row).toBeGreaterThanOrEqual(from);
      expect(value, row).toBeLessThanOrEqual(to);
    }
  });

  it.each(THRESHOLDS.map((threshold) => [threshold.row, threshold] as const))("%s", (row, threshold) => {
    const { from, to, unit } = threshold;
    const middle = (from + to) / 2;
    expect(read(row, null).limit(threshold)).toBe(limitOf(threshold));
    expect(read(row, middle, unit || null).limit(threshold)).toBeCloseTo(inInternal(threshold, middle), 9);
    expect(read(row.toUpperCase(), middle, unit || null).limit(threshold)).toBeCloseTo(
      inInternal(threshold, middle),
      9,
    );
    expect(() => read(row, to * 1.5 + 1, unit || null)).toThrow(`rates row 2 "${row}" must be`);
    expect(() => read(row, "plenty", unit || null)).toThrow(`rates row 2 "${row}" must be`);
  });

  it("a length without a unit is one of the workbook's own, and a share may be a percentage", () => {
    expect(read("Swing from", 600, null, "mm").limit(thresholds.SWING_FROM_IN)).toBe(600);
    expect(read("Swing from", 2, "ft").limit(thresholds.SWING_FROM_IN)).toBeCloseTo(609.6, 9);
    expect(read("Force check", "70 %").limit(thresholds.EXPECTED_CHECK)).toBeCloseTo(0.7, 9);
    expect(() => read("Swing from", 3, "in")).toThrow("at least 6 and at most 120");
    expect(() => read("Force check", 120, "%")).toThrow("at least 30 % and at most 100 %");
  });

  it("a name that stands in two rows is refused, a blank one beside it is not", () => {
    const twice = (value: CellValue) => [
      ["Force check", 70, "%"],
      ["force-check", value, "%"],
    ];
    expect(() => readRows(twice(80))).toThrow(
      'rates row 3 "force-check" must be the only row of its name; got 80; row 2',
    );
    expect(() => readRows(twice(null))).not.toThrow();
  });

  it("a name that is neither a rate nor a threshold is refused with the nearest one", () => {
    expect(() => read("Force cheque", 0.7)).toThrow('nearest is "Force check"');
    expect(() => read("Hand limit", 0.7)).toThrow("rates row 2 must be a rate or a threshold by its name");
  });
});
