import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../src/hosts/headless/calculate-one.ts";
import type { Published, PublishedFormula } from "./published.ts";
import { calls, formulas } from "./rows.ts";

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
