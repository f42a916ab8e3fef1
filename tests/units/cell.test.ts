import { describe, expect, it } from "vitest";
import { CellError, isBlank, isCellError } from "../../src/units/cell.ts";

describe("a blank", () => {
  it.each([null, undefined, ""])("%j is not given", (value) => {
    expect(isBlank(value)).toBe(true);
  });
  it.each([0, false, " ", Number.NaN, "0"])("%j is given", (value) => {
    expect(isBlank(value)).toBe(false);
  });
});

describe("an error in a cell", () => {
  it("is told from what only looks like one", () => {
    expect(isCellError(new CellError("#N/A"))).toBe(true);
    expect(isCellError({ code: "#N/A" })).toBe(false);
    expect(isCellError("#N/A")).toBe(false);
  });
});
