import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bendAllowance } from "../../../src/calc/bend/allowance.ts";
import { bendDeduction } from "../../../src/calc/bend/deduction.ts";
import { K_RULES, neutralAxis } from "../../../src/calc/bend/neutral-axis.ts";
import { insideSetback, setback } from "../../../src/calc/bend/setback.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";
import { Refusal } from "../../../src/units/refusal.ts";

const sheet = { thickness: fc.double({ min: 0.5, max: 25, noNaN: true }).map(mm) };
const radius = fc.double({ min: 0.1, max: 100, noNaN: true }).map(mm);
const angle = fc.double({ min: 0.1, max: 175, noNaN: true }).map(degrees);

describe("bend allowance", () => {
  it("at K = 0 is the inside arc, at K = 0.5 the middle of the sheet", () => {
    expect(bendAllowance({ thickness: mm(2), radius: mm(3), bendAngle: degrees(180), k: 0 })).toBeCloseTo(
      Math.PI * 3,
      12,
    );
    expect(bendAllowance({ thickness: mm(2), radius: mm(3), bendAngle: degrees(180), k: 0.5 })).toBeCloseTo(
      Math.PI * 4,
      12,
    );
  });

  it("lies between the inside and the outside arc by every rule", () => {
    fc.assert(
      fc.property(sheet.thickness, radius, angle, fc.constantFrom(...K_RULES), (t, r, a, rule) => {
        // The FAA form, and DIN's below about r = 0.05 s, are no share of the thickness.
        fc.pre(rule !== "FAA" && (rule !== "DIN 6935" || r > 0.06 * t));
        const arc = bendAllowance({ thickness: t, radius: r, bendAngle: a, k: rule });
        const rad = (a * Math.PI) / 180;
        return arc >= rad * r - 1e-9 && arc <= rad * (r + t) + 1e-9;
      }),
    );
  });

  it("is proportional to the angle", () => {
    fc.assert(
      fc.property(sheet.thickness, radius, fc.constantFrom(...K_RULES), (t, r, rule) => {
        fc.pre(rule !== "DIN 6935" || r > 0.06 * t);
        expect(bendAllowance({ thickness: t, radius: r, bendAngle: degrees(120), k: rule })).toBeCloseTo(
          2 * bendAllowance({ thickness: t, radius: r, bendAngle: degrees(60), k: rule }),
          6,
        );
      }),
    );
  });
});

describe("neutral axis", () => {
  it("DIN's k is 1 above five thicknesses and 0.65 at one", () => {
    expect(neutralAxis(mm(1), mm(6), "DIN 6935")).toBeCloseTo(0.5, 12);
    expect(neutralAxis(mm(1), mm(1), "DIN 6935")).toBeCloseTo(0.325, 12);
  });

  it("DIN's k has no answer for a sharp corner", () => {
    for (const r of [0, 0.001, 0.04]) expect(() => neutralAxis(mm(1), mm(r), "DIN 6935")).toThrow(Refusal);
    expect(neutralAxis(mm(1), mm(0.06), "DIN 6935")).toBeGreaterThan(0);
  });

  it("Groover's limit forgives a conversion from inches", () => {
    expect(neutralAxis(mm(0.1 * 25.4), mm(0.2 * 25.4), "Groover")).toBe(0.5);
    expect(neutralAxis(mm(1), mm(1.99), "Groover")).toBe(0.33);
  });
});

describe("setback and deduction", () => {
  it("a square bend's setback is radius plus thickness", () => {
    expect(setback(mm(2), mm(3), degrees(90))).toBeCloseTo(5, 12);
    expect(insideSetback(mm(3), degrees(90))).toBeCloseTo(3, 12);
    expect(setback(mm(2), mm(3), degrees(0))).toBe(0);
  });

  it("deduction by any legs leads to the same allowance", () => {
    fc.assert(
      fc.property(sheet.thickness, radius, angle, (t, r, a) => {
        const arc = bendAllowance({ thickness: t, radius: r, bendAngle: a, k: 0.4 });
        expect(
          2 * setback(t, r, a) - bendDeduction({ thickness: t, radius: r, bendAngle: a, k: 0.4, legs: "outside" }),
        ).toBeCloseTo(arc, 6);
        expect(
          2 * insideSetback(r, a) - bendDeduction({ thickness: t, radius: r, bendAngle: a, k: 0.4, legs: "inside" }),
        ).toBeCloseTo(arc, 6);
        expect(-bendDeduction({ thickness: t, radius: r, bendAngle: a, k: 0.4, legs: "tangent" })).toBeCloseTo(arc, 6);
      }),
    );
  });

  it("DIN counts bends of less than 15 degrees as flat and deducts from 15 on", () => {
    expect(bendDeduction({ thickness: mm(2), radius: mm(3), bendAngle: degrees(14.9), k: 0.4, legs: "DIN" })).toBe(0);
    expect(bendDeduction({ thickness: mm(2), radius: mm(3), bendAngle: degrees(15), k: 0.4, legs: "DIN" })).not.toBe(0);
  });
});
