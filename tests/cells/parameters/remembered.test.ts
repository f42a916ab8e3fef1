import { describe, expect, it } from "vitest";
import { currentMaterials, readData } from "../../../src/cells/parameters/read-data.ts";
import { remembered } from "../../../src/cells/parameters/remembered.ts";
import { CellError, type CellMatrix } from "../../../src/units/cell.ts";

const context = (system: "in" | "mm" = "in", materials = currentMaterials()) => ({
  system,
  materials,
  material: undefined,
});

describe("a range that is read once", () => {
  const reads: string[] = [];
  const read = remembered((given: CellMatrix, name, { system }) => {
    reads.push(`${name} ${system} ${String(given[0]![0])}`);
    return { of: given };
  });
  const count = (given: CellMatrix, name = "bill", of = context()) => {
    const before = reads.length;
    const answer = read(given, name, of);
    return { answer, reads: reads.length - before };
  };

  it("is not read again for the same cells, from another array", () => {
    expect(count([[1, "a"]]).reads).toBe(1);
    expect(count([[1, "a"]]).reads).toBe(0);
    expect(count([[1, "a"]]).answer).toBe(count([[1, "a"]]).answer);
  });

  it.each([
    ["another cell", [[2, "a"]], "bill", context()],
    ["text that looks like the number", [["1", "a"]], "bill", context()],
    ["an error", [[new CellError("#N/A"), "a"]], "bill", context()],
    ["another shape", [[1], ["a"]], "bill", context()],
    ["another argument", [[1, "a"]], "parts", context()],
    ["other units", [[1, "a"]], "bill", context("mm")],
    [
      "other materials",
      [[1, "a"]],
      "bill",
      context(
        "in",
        readData(
          [
            ["Name", "Density (lb/in^3)"],
            ["A36", 0.3],
          ],
          "data",
          "in",
        ),
      ),
    ],
  ] as [string, CellMatrix, string, ReturnType<typeof context>][])("is read for %s", (_, given, name, of) => {
    expect(count(given, name, of).reads).toBe(1);
  });

  it("NaN is never taken for an empty cell", () => {
    expect(count([[null]]).reads).toBe(1);
    expect(count([[Number.NaN]]).reads).toBe(1);
    expect(count([[Number.POSITIVE_INFINITY]]).reads).toBe(1);
  });

  it("forgets the oldest, and refuses again what it refused", () => {
    for (let i = 0; i < 20; i++) count([[`x${i}`]]);
    expect(count([["x0"]]).reads).toBe(1);
    let refusals = 0;
    const never = remembered(() => {
      refusals++;
      throw new Error("no");
    });
    for (let i = 0; i < 2; i++) expect(() => never([[1]], "bill", context())).toThrow("no");
    expect(refusals).toBe(2);
  });
});
