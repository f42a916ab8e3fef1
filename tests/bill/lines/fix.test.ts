/** A fix is proved: the bill with it in, planned anew, reaches what it promises, and that is better. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { withChange } from "../../../src/bill/lines/changes.ts";
import type { Fix } from "../../../src/bill/lines/fix.ts";
import { bentStrips } from "../../../src/bill/nouns/line.ts";
import { BillPlan } from "../../../src/bill/plan.ts";
import { STATUSES, type Status } from "../../../src/calc/finding.ts";
import type { Line } from "../../cells/example/tables.ts";
import { bracket, lineOf, shopOf } from "../shop.ts";

const SHOP = shopOf();
const planned = (line: Line) => new BillPlan(SHOP, [lineOf(line)]);
const fixed = (line: Line) => {
  const plan = planned(line);
  return plan.fix(plan.lines[0]!);
};

/** The line with the change made, and the bill of it planned past every memory. */
const statusAfter = (line: Line, { changes }: Fix): Status =>
  new BillPlan(SHOP, [changes.reduce(withChange, lineOf(line))]).lines[0]!.status;
const keepsItsWord = (line: Line, fix: Fix): boolean => statusAfter(line, fix) === fix.reaches;

const bad = fc
  .record({
    Material: fc.constantFrom("A36", "304", "5052-H32", "6061-T6"),
    Thickness: fc.constantFrom(0.06, 0.125, 0.1875, 0.25),
    Width: fc.constantFrom(4, 24, 60, 100),
    Flanges: fc.constantFrom("2; 3", "0.4; 3", "1; 4; 1", "1.1; 3"),
    Die: fc.constantFrom(null, "V 5/8", "V 1", "V 2"),
    Punch: fc.constantFrom(null, "Plain", "Knife"),
    Brake: fc.constantFrom(null, "Brake 1", "Brake 2"),
    Grain: fc.constantFrom(null, "along", "across"),
    Holes: fc.constantFrom(0, 2),
    "Hole distance": fc.constantFrom(null, 0.2, 0.6),
    Route: fc.constantFrom(null, "shear"),
  })
  .map((part) => bracket(part));

describe("a fix", () => {
  it("reaches what it promises when the line is planned again with it, and that is better", () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(bad, (line) => {
        const fix = fixed(line);
        const now = planned(line).lines[0]!.status;
        if (now === "clear") expect(fix).toBeUndefined();
        if (!fix) return;
        for (const { kind } of fix.changes) kinds.add(kind);
        expect(keepsItsWord(line, fix), JSON.stringify({ line, fix })).toBe(true);
        expect(STATUSES.indexOf(fix.reaches)).toBeLessThan(STATUSES.indexOf(now));
      }),
      { numRuns: 120 },
    );
    expect(kinds.size).toBeGreaterThan(2);
  });

  it("a promise that is broken would be noticed", () => {
    const line = bracket({ Flanges: "1; 3" });
    const fix = fixed(line)!;
    expect(keepsItsWord(line, fix)).toBe(true);
    expect(keepsItsWord(line, { changes: [{ kind: "grain", grain: "along" }], reaches: "clear" })).toBe(false);
    expect(keepsItsWord(line, { ...fix, reaches: "check" })).toBe(false);
  });

  it.each([
    ["a die that is too wide for the flange", { Flanges: "1.1; 3", Thickness: 0.125, Die: "V 2" }, "tools"],
    ["6061-T6 whose grain nobody states", { Material: "6061-T6", Thickness: 0.125, Holes: 0 }, "grain; deburr"],
    ["a hole inside the tangent", { "Hole distance": 0.2 }, "hole after"],
    ["a flange that no die can hold", { Flanges: "0.6; 3" }, "trim after"],
    ["a narrow strip on the shear", { Flanges: "1.5", "Bend angles": null, Width: 40, Holes: 0 }, "waterjet"],
  ] as [string, Line, string][])("%s", (_, changed, kind) =>
    expect(
      fixed(bracket(changed))
        ?.changes.map((change) => change.kind)
        .join("; "),
    ).toBe(kind),
  );

  it("names as few tools as will do", () => {
    const { changes } = fixed(bracket({ Thickness: 0.125, Die: "V 2", Flanges: "1.1; 3", Punch: "Plain" }))!;
    expect(Object.keys(changes[0]!)).toEqual(["kind", "die"]);
  });

  it("is none where nothing improves the line", () => {
    expect(fixed(bracket({ Thickness: 1 }))).toBeUndefined();
    expect(bentStrips(lineOf(bracket())).length).toBe(1);
  });
});
