import { describe, expect, test } from "vitest";
import grid from "../../src/sheet/functions/evidence/grid.json" with { type: "json" };
import pivotParts from "../../src/sheet/functions/evidence/pivot-parts.json" with { type: "json" };
import { evidenceByFunction } from "../../src/sheet/functions/evidence.ts";
import { excelFunctionNames } from "../../src/sheet/functions/excel-names.ts";
import { worksheetFunctionNames } from "../../src/sheet/functions/registry.ts";
import { Package } from "../../src/sheet/package/package.ts";
import { CellError, type CellValue } from "../../src/units/cell.ts";
import { evaluateOn, type Given } from "./evaluate-on-grid.ts";
import { zipOf } from "./make-package.ts";

/** Numbers agree to 1e-9: the tolerance by which a recalculation is judged. */
function agrees(got: unknown, wanted: unknown): boolean {
  if (Array.isArray(wanted))
    return Array.isArray(got) && got.length === wanted.length && wanted.every((w, i) => agrees(got[i], w));
  if (typeof wanted === "number" && typeof got === "number") {
    return Math.abs(got - wanted) <= 1e-9 * Math.max(Math.abs(got), Math.abs(wanted));
  }
  if (got instanceof CellError) return got.code === (wanted as { error?: string } | null)?.error;
  return got === wanted;
}

const readable = (value: CellValue | CellValue[][]): unknown => (value instanceof CellError ? value.code : value);

/** The pivot tables of the grid, as their parts say them. */
const pivots = Package.open(zipOf(pivotParts));

describe("worksheet functions answer as other programs do", () => {
  for (const [name, rows] of evidenceByFunction) {
    test.each(rows.map((row) => [row.formula, row] as const))(`${name}: %s`, (formula, row) => {
      const got = evaluateOn(grid as Readonly<Record<string, Given>>, formula, { package: pivots });
      expect(
        agrees(got, row.value),
        `${row.origin} says ${JSON.stringify(row.value)}; got ${JSON.stringify(readable(got))}`,
      ).toBe(true);
    });
  }
});

test("every function has at least two rows of evidence from outside, and there are at least 250", () => {
  const names = worksheetFunctionNames();
  expect(names.filter((name) => (evidenceByFunction.get(name)?.length ?? 0) < 2)).toEqual([]);
  expect(names.length).toBeGreaterThanOrEqual(250);
});

test("every function is Excel's", () => {
  expect(worksheetFunctionNames().filter((name) => !excelFunctionNames.has(name))).toEqual([]);
});

test.each(["DCOUNT(F1:H6,0,J1:J2)", "DCOUNTA(F1:H6,0,J1:J2)", "DCOUNT(F1:H6,X30,J1:J2)"])(
  "%s keeps Excel's value: other programs alone say what field 0 is",
  (formula) => {
    const got = evaluateOn(grid as Readonly<Record<string, Given>>, formula);
    expect(got).toMatchObject({ message: expect.stringMatching(/^unknown-function: DCOUNTA? of field 0$/) });
  },
);
