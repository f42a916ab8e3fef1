/** One answer for one method: AIR.BEND's radius and deduction are those of the other AIR functions, and WORKING gives them again. */
import { describe, expect, it } from "vitest";
import { callRecord } from "../../../src/cells/call/call.ts";
import { RECORDS } from "../../../src/cells/catalogue.ts";
import type { CellMatrix, CellValue } from "../../../src/units/cell.ts";

/** Inside what was compared, two mixtures beyond it, and so far out that the rule alone answers. */
const DIES = [2, 7, 8, 10];

const ask = (name: string, ...given: CellValue[]): CellValue | CellMatrix =>
  callRecord(RECORDS.find((record) => record.name === name)!, given).value as CellValue | CellMatrix;

describe.each(DIES)("A36 10 ga over a %d in die", (die) => {
  const bend = ["A36", 0.1345, 90, die, 0.0625] as const;
  const spill = ask("AIR.BEND", ...bend) as CellMatrix;
  const row = (words: string) => spill.find(([answer]) => answer === words)!;

  it("radius and deduction are one answer", () => {
    expect(row("bend deduction")[1]).toBeCloseTo(ask("AIR.DEDUCTION", ...bend) as number, 12);
    expect(row("inside radius, tangent to both flanges")[1]).toBeCloseTo(ask("AIR.RADIUS", ...bend) as number, 12);
    expect(row("bend deduction by mechanics")[1]).toBeCloseTo(ask("AIR.DEDUCTION", ...bend, "mechanics") as number, 12);
    const [, value, low, high] = row("bend deduction") as [string, number, number, number];
    expect(low).toBeLessThan(value);
    expect(high).toBeGreaterThan(value);
  });

  it("the working gives the mixture again: shares, each method's answer, distance", () => {
    const steps = ask("WORKING", "AIR.DEDUCTION", ...bend) as CellMatrix;
    const of = (symbol: string) => steps.find(([each]) => each === symbol)?.[2] as number | undefined;
    const u = Math.min(1, Math.max(0, 2 - of("d")!));
    const w = u * u * (3 - 2 * u);
    if (w > 0 && w < 1) {
      expect(of("w")).toBeCloseTo(w, 9);
      expect(of("R")).toBeCloseTo(w * of("Rm")! + (1 - w) * of("Rr")!, 9);
      expect(of("K")).toBeCloseTo(w * of("Km")! + (1 - w) * of("Kr")!, 9);
    } else expect(of("w")).toBeUndefined();
    // 90 degrees: BD = 2 (R + t) - pi / 2 (R + K t).
    const [R, K] = [of("R")!, of("K")!];
    expect(of("BD")).toBeCloseTo(2 * (R + 0.1345) - (Math.PI / 2) * (R + K * 0.1345), 9);
    expect(new Set(steps.map(([symbol]) => symbol)).size).toBe(steps.length);
  });
});

it("both ways of answering and the mixture are met", () => {
  const remarks = DIES.map((die) => (ask("AIR.BEND", "A36", 0.1345, 90, die, 0.0625) as CellMatrix)[3]!.at(-1));
  expect(remarks[0]).toBe("the mechanics");
  expect(remarks[1]).toMatch(/^\d+ % mechanics, the rest rule$/);
  expect(remarks[2]).toMatch(/^\d+ % mechanics, the rest rule$/);
  expect(remarks[3]).toBe("the rule");
});
