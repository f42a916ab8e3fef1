import { describe, expect, it } from "vitest";
import { angleTolerance } from "../../../src/calc/tolerance/angle.ts";
import { lengthTolerance } from "../../../src/calc/tolerance/length.ts";
import { TOLERANCE_CLASSES } from "../../../src/data/iso-2768.ts";
import { mm } from "../../../src/units/quantity.ts";
import type { Refusal } from "../../../src/units/refusal.ts";

describe("ISO 2768-1", () => {
  it("finer classes are never wider, longer sizes never tighter", () => {
    for (const size of [4, 20, 100, 300, 900, 1500]) {
      const row = TOLERANCE_CLASSES.map((grade) => lengthTolerance(mm(size), grade));
      expect(row).toEqual([...row].sort((a, b) => a - b));
    }
    for (const grade of TOLERANCE_CLASSES) {
      const column = [5, 20, 100, 300, 900].map((size) => angleTolerance(mm(size), grade));
      expect(column).toEqual([...column].sort((a, b) => b - a));
    }
  });

  it("rows are over ... up to and including", () => {
    expect(lengthTolerance(mm(30), "m")).toBe(0.2);
    expect(lengthTolerance(mm(30.01), "m")).toBe(0.3);
    expect(lengthTolerance(mm((30 / 25.4) * 25.4), "m")).toBe(0.2); // 30 mm that came as inches
  });

  it("says where Table 1 ends, in both units", () => {
    expect(() => lengthTolerance(mm(5000), "m")).toThrow(/0\.5 mm\) to [\d.]+ in \(4000 mm\) for ISO 2768-1/);
  });

  it.each([
    ["below 0.5 mm", 0.49, "m", "nominal"],
    ["above 4 m", 4001, "m", "nominal"],
    ["very coarse up to 3 mm", 2, "v", "class"],
    ["fine above 2 m", 3000, "f", "class"],
  ] as const)("gives none: %s", (_, size, grade, name) => {
    try {
      lengthTolerance(mm(size), grade);
      expect.unreachable();
    } catch (refusal) {
      expect((refusal as Refusal).code).toBe("#N/A");
      expect((refusal as Refusal).message.startsWith(`${name} must be`)).toBe(true);
    }
  });
});
