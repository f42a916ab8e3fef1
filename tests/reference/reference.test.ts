import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../src/hosts/headless/calculate-one.ts";
import { bendForce, bendForceFormulas } from "./bend-force.ts";
import { bendGeometry, bendGeometryFormulas } from "./bend-geometry.ts";
import { jetLiftTolerance } from "./jet-lift-tolerance.ts";
import type { Published, PublishedFormula } from "./published.ts";
import { shear, shearFormulas } from "./shear.ts";
import { sheet } from "./sheet.ts";

const calls = [...bendGeometry, ...bendForce, ...shear, ...sheet, ...jetLiftTolerance];
const formulas = [...bendGeometryFormulas, ...bendForceFormulas, ...shearFormulas];

function compare(value: unknown, { expected, tolerance, source, basis }: Published | PublishedFormula): void {
  const from = `${source} (${basis})`;
  expect(value, from).toBeTypeOf("number");
  expect(Math.abs((value as number) - expected), `${String(value)} against ${expected}, ${from}`).toBeLessThanOrEqual(
    tolerance,
  );
}

describe("published answers, through the cell functions", () => {
  it.each(calls.map((row) => [row.id, row] as const))("%s", (_, row) => {
    const [name, ...given] = row.call;
    expect(shopFunctions.resolve(name)).toBe(name);
    compare(shopFunctions.call(name, given).value, row);
  });

  it.each(formulas.map((row) => [row.id, row] as const))("%s", (_, row) => {
    compare(evaluateFormula(row.formula, shopFunctions).value, row);
  });

  it("every answer names its source and stands once", () => {
    const all = [...calls, ...formulas];
    expect(all.filter(({ source }) => source.length < 8)).toEqual([]);
    expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
  });
});
