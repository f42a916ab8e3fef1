/** Every quoted piece exactly once, on the machine its line goes to, from sheets that are there. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CutGroup } from "../../../src/bill/cut/plan-cutting.ts";
import type { BillPlan } from "../../../src/bill/plan.ts";
import { patternIdOf } from "../../../src/calc/cutting/pattern-id.ts";
import type { CellMatrix } from "../../../src/units/cell.ts";
import { type Line, rates, SHOP, withCell } from "../../cells/example/tables.ts";
import { answerOf, bracket, kindsOf, planned, shopOf } from "../shop.ts";

const piecesIn = (groups: readonly CutGroup[], part: string): number =>
  groups.reduce(
    (sum, { uses }) =>
      sum +
      uses.reduce(
        (of, { pieces }) => of + [...pieces].reduce((n, [{ line }, count]) => n + (line.part === part ? count : 0), 0),
        0,
      ),
    0,
  );
const sheetsOf = (groups: readonly CutGroup[], stock: string): number =>
  groups.flatMap(({ uses }) => uses).reduce((sum, { sheet, count }) => sum + (sheet.name === stock ? count : 0), 0);
/** Little effort: what is cut is what matters here, not how well. */
const QUICK = { rates: rates({ "Cut effort": 0.01 }) };
const LAST_BITS = 1 + 1e-12;
const summary = (plan: BillPlan) =>
  plan.groups.map(({ cutter, material, thickness, uses }) => [
    cutter,
    material.name,
    thickness,
    ...uses.map(({ sheet, count, price }) => [sheet.name, count, price]),
  ]);

const line = fc
  .record({
    Material: fc.constantFrom("A36", "304", "A1008 CS", "5052-H32", "A572-50"),
    Thickness: fc.constantFrom("1/4", "16 ga", "1/8"),
    Quantity: fc.integer({ min: 1, max: 60 }),
    Width: fc.integer({ min: 2, max: 46 }),
    Flanges: fc.constantFrom("2; 3", "10", "4; 20; 4", "90"),
    Route: fc.constantFrom(null, null, "shear", "waterjet"),
    Holes: fc.constantFrom(0, 2),
  })
  .map((changed) => bracket({ ...changed, "Bend angles": changed.Flanges.includes(";") ? 90 : null }));
const bills = fc
  .array(line, { minLength: 1, maxLength: 6 })
  .map((lines) => lines.map((each, i): Line => ({ ...each, Part: `P${i + 1}` })));
const counted = (most: number): CellMatrix => SHOP.stock.map((row, i) => (i === 0 ? row : row.with(5, most)));

describe("the sheets of a bill", () => {
  it("hold every quoted piece exactly once, and nothing else, each on its own machine", () => {
    fc.assert(
      fc.property(bills, fc.constantFrom(null, 1, 2, 5), (lines, most) => {
        const plan = planned(lines, shopOf(most === null ? QUICK : { ...QUICK, stock: counted(most) }));
        for (const answer of plan.lines) {
          const pieces = piecesIn(plan.groups, answer.part);
          expect(pieces, answer.part).toBe(answer.isQuoted ? answer.plan!.blanks : 0);
          if (!answer.isQuoted) continue;
          const own = plan.groups.filter(({ lines: of }) => of.includes(answer.plan!));
          expect(own.map(({ cutter }) => cutter)).toEqual([answer.cutter]);
          expect(own[0]!.material.name).toBe(answer.plan!.line.material.name);
        }
        for (const { uses, short, plan: cuts, cutter } of plan.groups) {
          expect(short.size).toBe(0);
          expect(cutter === "waterjet").toBe(cuts === undefined);
          for (const { sheet, count, weight, price } of uses) {
            expect(weight).toBeCloseTo(count * sheet.weight, 9);
            expect(price).toBe(count * sheet.price!);
          }
        }
        if (most !== null)
          for (const row of SHOP.stock.slice(1))
            expect(sheetsOf(plan.groups, String(row[0]))).toBeLessThanOrEqual(most);
      }),
      { numRuns: 25 },
    );
  });

  it("that are counted beside others without a number hold every quoted piece too, and never more than there are", () => {
    const long = SHOP.stock.slice(1).map((row) => row.with(0, `Long ${row[0]}`).with(3, 144).with(4, 60).with(5, 1));
    const shop = shopOf({ ...QUICK, stock: [...SHOP.stock, ...long] });
    const longer = fc.array(fc.boolean(), { minLength: 6, maxLength: 6 });
    let scarce = 0;
    fc.assert(
      fc.property(bills, longer, (lines, isLong) => {
        const given = lines.map((each, i) => (isLong[i] ? { ...each, Flanges: "130", "Bend angles": null } : each));
        const plan = planned(given, shop);
        for (const answer of plan.lines) {
          if (kindsOf(answer).includes("stock: check runs out")) scarce++;
          expect(piecesIn(plan.groups, answer.part), answer.part).toBe(answer.isQuoted ? answer.plan!.blanks : 0);
        }
        for (const { short } of plan.groups) expect(short.size).toBe(0);
        for (const row of long) expect(sheetsOf(plan.groups, String(row[0]))).toBeLessThanOrEqual(1);
      }),
      { numRuns: 25, seed: 30 },
    );
    expect(scarce).toBeGreaterThan(0);
  });

  it("do not depend on the order of the bill or of the stock", () => {
    fc.assert(
      fc.property(bills, (lines) => {
        const turned = [SHOP.stock[0]!, ...SHOP.stock.slice(1).reverse()];
        expect(summary(planned([...lines].reverse(), shopOf({ ...QUICK, stock: turned })))).toEqual(
          summary(planned(lines, shopOf(QUICK))),
        );
      }),
      { numRuns: 15 },
    );
  });
});

describe("sheets that are counted", () => {
  const one = withCell(SHOP.stock, "Plate 1/4", "Sheets", 1);
  const half = { Flanges: "30", "Bend angles": null, Width: 46, Quantity: 2, Holes: 0 };
  it("are used up by the shear first; what is left over is not in Stock", () => {
    const plan = planned(
      [bracket({ ...half, Part: "S", Route: "shear" }), bracket({ ...half, Part: "W", Route: "waterjet" })],
      shopOf({ stock: one }),
    );
    expect(plan.lines.map(({ part, isQuoted }) => [part, isQuoted])).toEqual([
      ["S", true],
      ["W", false],
    ]);
    expect(kindsOf(answerOf(plan, "W"))).toContain("stock: check runs out");
    expect(answerOf(plan, "W").findings.find(({ kind }) => kind === "runs out")!.figure).toBe(2);
    expect(sheetsOf(plan.groups, "Plate 1/4")).toBe(1);
  });
  it("are used up by the shear first whatever the lines are called", () => {
    const lines = [bracket({ ...half, Part: "A", Route: "waterjet" }), bracket({ ...half, Part: "B", Route: "shear" })];
    expect(planned(lines, shopOf({ stock: one })).quoted.map(({ part }) => part)).toEqual(["B"]);
  });
  it("a line whose pieces are short leaves its sheets to the others", () => {
    const many = bracket({ ...half, Part: "many", Quantity: 200 });
    const plan = planned([many, bracket({ Part: "few" })], shopOf({ stock: one }));
    expect(plan.quoted.map(({ part }) => part)).toEqual(["few"]);
    expect(sheetsOf(plan.groups, "Plate 1/4")).toBe(1);
  });
});

describe("remnants and names", () => {
  it("a part that stands in the bill twice is two lines of the plan", () => {
    const plan = planned([bracket(), bracket({ Quantity: 3 })]);
    const [group] = plan.groups;
    expect([...group!.lineOf.keys()].sort()).toEqual(["HB1", "HB1 (2)"]);
    expect(piecesIn(plan.groups, "HB1")).toBe(20 + 3);
  });
  it("what is left of the shear's sheets lies within them", () => {
    const plan = planned([bracket({ Flanges: "60", "Bend angles": null, Width: 40, Quantity: 1, Holes: 0 })]);
    for (const { sheet, remnants } of plan.groups.flatMap(({ uses }) => uses))
      for (const { length, width } of remnants) {
        expect(length).toBeLessThanOrEqual(sheet.length * LAST_BITS);
        expect(width).toBeLessThanOrEqual(sheet.width * LAST_BITS);
      }
    expect(plan.groups[0]!.uses[0]!.remnants.length).toBeGreaterThan(0);
  });
  it.each([
    ["3", "3"],
    ["3d1", "3"],
    ["12d1.2", "12"],
  ])("piece %s is of pattern %s", (piece, pattern) => expect(patternIdOf(piece)).toBe(pattern));
});
