/**
 * The daily case of a shop with one 2 in die (V/t 8 to 40), rule, mechanics and what was measured side by side, under
 * edition 2026.2. No bend over such a die is published: the finite-element solutions of it stand in the last column.
 */
import { describe, expect, it } from "vitest";
import { callRecord } from "../../src/cells/call/call.ts";
import { RECORDS } from "../../src/cells/catalogue.ts";
import { type CellMatrix, isCellError } from "../../src/units/cell.ts";
import measuredBends from "./measured-bends.json" with { type: "json" };

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
  die = 2,
  nose = 0.0625,
): Record<string, { value: number; low: number; high: number; remark: string }> {
  const record = RECORDS.find(({ name }) => name === "AIR.BEND")!;
  const given = [material, thickness, 90, die, nose, null, null, null, null, null, null, null, "in", "2026.2"];
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
      const { value: rule, low, high } = row["bend deduction by rule"]!;
      expect(rule).toBeGreaterThanOrEqual(low);
      expect(rule).toBeLessThanOrEqual(high);
      expect(rule).toBeGreaterThan(deduction.value * 0.8);
      // Over this die the rule's radius makes thin sheet too long by up to half as much again.
      expect(rule).toBeLessThan(deduction.value * 1.5);
      if (!solved) return;
      // Material and angle of the solved bend differ a little from the row's: the band covers both.
      expect(solved.deduction).toBeGreaterThan(deduction.low - 0.01);
      expect(solved.deduction).toBeLessThan(deduction.high + 0.01);
    },
  );

  it("the page itself, side by side: tests/recorded/one-die-page.md", async () => {
    const inches = (value: number) => value.toFixed(3);
    const figure = ({ value, low, high }: { value: number; low: number; high: number }) =>
      `${inches(value)} (${inches(low)}-${inches(high)})`;
    const measured = measuredBends.bends
      .filter((each) => each.die_in !== null)
      .map((each) => ({
        material: each.material === "1100-O" ? "1100-O" : "A1008 CS",
        thickness: each.thickness_in,
        die: each.die_in!,
        nose: each.punch_nose_in,
        beside:
          each.deduction_in === undefined
            ? `radius ${inches(each.radius_in!)}, measured`
            : `${inches(each.deduction_in)}, measured`,
      }));
    const page = PAGE.map(({ solved, ...row }) => ({
      ...row,
      die: 2,
      nose: 0.0625,
      beside: solved ? `${inches(solved.deduction)}, finite elements ${solved.id}` : "",
    }));
    const lines = [...page, ...measured].map(({ material, thickness, die, nose, beside }) => {
      const answer = bend(material, thickness, die, nose);
      return [
        material,
        thickness,
        die,
        ...[
          "inside radius by rule",
          "bend deduction by rule",
          "inside radius, tangent to both flanges",
          "bend deduction",
        ].map((name) => figure(answer[name]!)),
        beside,
      ].join(" | ");
    });
    const text = [
      "# One die, 2 in: rule, mechanics and what stands beside them, inches, each with its band",
      "",
      "90 degree bends under edition 2026.2, punch nose 1/16 in. The last rows are published measured bends over their own dies. `npm test -- tests/reference/one-die-page -u` writes this page.",
      "",
      "| material | thickness | die | radius, rule | deduction, rule | radius, mechanics | deduction, mechanics | measured or solved deduction |",
      "|---|---|---|---|---|---|---|---|",
      ...lines.map((line) => `| ${line} |`),
      "",
    ].join("\n");
    await expect(text).toMatchFileSnapshot("../recorded/one-die-page.md");
  });

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
