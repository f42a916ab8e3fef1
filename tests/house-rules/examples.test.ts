import { describe, expect, it } from "vitest";
import { RECORDS, shopFunctions } from "../../src/cells/catalogue.ts";
import { evaluateFormula } from "../../src/sheet/recalculate/calculate-one.ts";

describe("every record's example is true", () => {
  it.each(RECORDS.map((record) => [record.name, record.example] as const))("%s", (name, { formula, answer }) => {
    expect(formula).toContain(`SHOP.${name}(`);
    const { value } = evaluateFormula(formula, shopFunctions);
    if (typeof answer === "number" && typeof value === "number")
      expect(value).toBeCloseTo(answer, 12 - Math.ceil(Math.log10(Math.max(1, Math.abs(answer)))));
    else expect(value).toEqual(answer);
  });
});
