/**
 * The daily case of a shop with one 2 in die (V/t 8 to 40), rule, mechanics and what was measured side by side, under
 * edition 2026.2. No bend over such a die is published: the finite-element solutions of it stand in the last column.
 */
import { describe, expect, it } from "vitest";
import { callRecord } from "../../src/cells/call/call.ts";
import { RECORDS } from "../../src/cells/catalogue.ts";
import { type CellMatrix, isCellError } from "../../src/units/cell.ts";

interface Row {
  readonly material: string;
  readonly thickness: number;
  /** A finite-element solution of this sheet over this die, and its bend deduction in inches. */
  readonly solved?: { readonly id: string; readonly deduction: number };
}

const row = (material: string, thickness: number, id?: string, deductionMm?: number): Row => ({
  material,
  thickness,
  ...(id === undefined || deductionMm === undefined ? {} : { solved: { id, deduction: deductionMm / 25.4 } }),
});

const PAGE: readonly Row[] = [
  row("5052-H32", 0.125),
  row("5052-H32", 0.25, "T, at 91.4 degrees", 10.833),
  row("6061-T6", 0.125, "N1, at 89.4 degrees", 5.3589),
  row("A1011 CS", 0.1345),
  row("A1011 CS", 0.1196),
  row("A1011 CS", 0.1046),
  row("A1011 CS", 0.0747),
  row("A1011 CS", 0.0598, "W, at 89.7 degrees", 5.217),
  row("A36", 0.125),
  row("A36", 0.1875),
  row("A36", 0.25, "N2, at 89.7 degrees", 11.3758),
];

function bend(
  material: string,
  thickness: number,
): Record<string, { value: number; low: number; high: number; remark: string }> {
  const record = RECORDS.find(({ name }) => name === "AIR.BEND")!;
  const given = [material, thickness, 90, 2, 0.0625, null, null, null, null, null, null, null, "in", "2026.2"];
  const { value } = callRecord(record, given);
  if (isCellError(value)) throw new Error(value.message);
  return Object.fromEntries(
    (value as CellMatrix)
      .slice(1)
      .map(([name, figure, low, high, , remark]) => [
        name,
        { value: figure as number, low: low as number, high: high as number, remark: String(remark) },
      ]),
  );
}

describe("one die, 2 in", () => {
  it.each(PAGE)(
    "$material $thickness in: inside what was compared, each figure with its band",
    ({ material, thickness, solved }) => {
      const row = bend(material, thickness);
      expect(String(row["compared"]!.value)).toBe("inside");
      expect(row["compared"]!.remark).toMatch(/^inside: distance 0\.\d\d to (?:finite elements|measured) /);
      const deduction = row["bend deduction"]!;
      expect(deduction.low).toBeLessThan(deduction.value);
      expect(deduction.high).toBeGreaterThan(deduction.value);
      // A band that a shop can use: within a third of the deduction on either side.
      expect(deduction.high - deduction.low).toBeLessThan(deduction.value * 0.66);
      const rule = row["bend deduction by rule"]!.value;
      expect(rule).toBeGreaterThan(deduction.value * 0.8);
      // Over this die the rule's radius makes thin sheet too long by up to half as much again.
      expect(rule).toBeLessThan(deduction.value * 1.5);
      if (!solved) return;
      // Material and angle of the solved bend differ a little from the row's: the band covers both.
      expect(solved.deduction).toBeGreaterThan(deduction.low - 0.01);
      expect(solved.deduction).toBeLessThan(deduction.high + 0.01);
    },
  );

  it("the working of AIR.BEND answers, with inputs, faces and nearest compared bend", () => {
    const record = RECORDS.find(({ name }) => name === "WORKING")!;
    const given = ["AIR.BEND", "A36", 0.25, 90, 2, 0.0625, null, null, null, null, null, null, null, "in", "2026.2"];
    const { value } = callRecord(record, given);
    const symbols = (value as CellMatrix).slice(1).map(([symbol]) => symbol);
    for (const symbol of [
      "t",
      "V",
      "rp",
      "rd",
      "E",
      "nu",
      "Kh",
      "n",
      "mu",
      "2a",
      "dA",
      "faces",
      "d",
      "R",
      "BD",
      "s",
      "F",
    ])
      expect(
        symbols.filter((each) => each === symbol),
        String(symbol),
      ).toHaveLength(1);
  });
});
