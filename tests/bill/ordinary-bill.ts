/**
 * Ordinary bills by chance: what a small shop bends every day, drawn by somebody who knows it. Common gauges, flanges that
 * rest on the die, channels wider than they are deep, holes clear of the bends; tools left to the plan, or the usual die.
 */
import fc from "fast-check";
import type { Line } from "../cells/example/tables.ts";

/** Sheets of the invented shop, with the die of 6 to 12 thicknesses that is usual there and a flange that rests on it. */
const SHEETS = [
  ["A36", "3/16", "V 1-1/2", 1.5],
  ["A36", "1/4", "V 2", 2],
  ["A1011 CS", "10 ga", "V 1", 1.125],
  ["A1011 CS", "11 ga", "V 1", 1.125],
  ["A1011 CS", "12 ga", "V 3/4", 1],
  ["A1008 CS", "16 ga", "V 5/8", 0.75],
  ["A1008 CS", "18 ga", "V 3/8", 0.75],
  ["A653 CS", "16 ga", "V 5/8", 0.75],
  ["A653 CS", "18 ga", "V 3/8", 0.75],
  ["304", "14 ga", "V 5/8", 0.75],
  ["304", "16 ga", "V 5/8", 0.75],
  ["5052-H32", 0.063, "V 5/8", 0.75],
  ["5052-H32", "1/8", "V 1", 1.125],
] as const;

const eighths = (from: number, to: number) => fc.integer({ min: from * 8, max: to * 8 }).map((count) => count / 8);

const lineArbitrary: fc.Arbitrary<Line> = fc
  .record({
    sheet: fc.constantFrom(...SHEETS),
    shape: fc.constantFrom("angle", "angle", "angle", "channel", "channel", "z", "hat", "flat"),
    // Flanges beyond the least, and the web beyond what a plain punch goes into.
    first: eighths(0, 2),
    second: eighths(0, 3),
    web: eighths(0.5, 4),
    width: fc.oneof(
      { weight: 3, arbitrary: eighths(3, 12) },
      { weight: 2, arbitrary: eighths(12, 48) },
      eighths(48, 70),
    ),
    quantity: fc.integer({ min: 1, max: 60 }),
    isNamed: fc.boolean(),
    holes: fc.constantFrom(0, 0, 2, 4),
    operations: fc.constantFrom(null, "Deburr", "Deburr; Coating", "Pack", "Coating"),
    tolerance: fc.constantFrom(null, null, null, 0.125, 0.09),
    grain: fc.constantFrom(null, null, "across"),
  })
  .map(({ sheet, shape, first, second, web, ...line }) => {
    const [material, thickness, die, least] = sheet;
    const [a, b] = [least + first, least + second];
    const wide = 2 * Math.max(a, b) + web;
    const [flanges, angles] = {
      angle: [`${a}; ${b}`, 90],
      channel: [`${a}; ${wide}; ${a}`, 90],
      z: [`${a}; ${b + 1}; ${a}`, "90; -90"],
      hat: [`${a}; ${b}; ${wide}; ${b}; ${a}`, "-90; 90; 90; -90"],
      flat: [`${a + b + 2}`, null],
    }[shape]!;
    return {
      Part: "",
      Material: material,
      Thickness: thickness,
      Quantity: line.quantity,
      Width: line.width,
      Flanges: flanges!,
      "Bend angles": angles!,
      Die: line.isNamed && shape !== "flat" ? die : null,
      Punch: line.isNamed && shape !== "flat" ? "Plain" : null,
      Grain: shape === "flat" ? null : line.grain,
      Holes: line.holes,
      "Hole diameter": line.holes > 0 ? 0.4375 : null,
      "Hole distance": null,
      Operations: line.operations,
      Tolerance: line.tolerance,
    };
  });

export const ordinaryBill: fc.Arbitrary<Line[]> = fc
  .array(lineArbitrary, { minLength: 20, maxLength: 50 })
  .map((lines) => lines.map((line, i) => ({ ...line, Part: `P-${i + 1}` })));
