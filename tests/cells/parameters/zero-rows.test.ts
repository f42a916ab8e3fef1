/** Older builds of Excel pass blank cells of a range as 0 (office-js threads #1951, #4702, #5262). */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { CellError, type CellMatrix } from "../../../src/units/cell.ts";

const PUNCHES: CellMatrix = [
  ["Punch", "Nose radius (in)", "Angle (deg)"],
  ["P1", 0.0625, 78],
];
const BRAKES: CellMatrix = [
  ["Brake", "Rated force (US ton)", "Bed length (in)", "Between housings (in)"],
  ["B", 150, 120, 100],
];
const dies = (...more: CellMatrix): CellMatrix => [
  ["Die", "Opening (in)", "Angle (deg)"],
  ["D1", 1, 80],
  ["D2", 2, 80],
  ...more,
];
const answer = (table: CellMatrix) => shopFunctions.call("BEND.DIE", ["A36", 0.25, 24, BRAKES, table, PUNCHES]).value;

describe("rows of a table", () => {
  it("of nothing but 0 are skipped like blank ones", () => {
    expect(answer(dies([null, null, null]))).toEqual(answer(dies()));
    expect(answer(dies([0, 0, 0], ["", 0, null]))).toEqual(answer(dies()));
  });
  it("with one figure are read, and a 0 that cannot be is refused", () => {
    const refused = answer(dies(["D3", 0, 80])) as CellError;
    expect(refused).toBeInstanceOf(CellError);
    expect(refused.message).toMatch(/must be .* more than 0; got 0/);
  });
});
