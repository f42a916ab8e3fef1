import { describe, expect, it } from "vitest";
import type { AirTools } from "../../../src/calc/bend/air-bend.ts";
import { airShape, feasibleAirShape } from "../../../src/calc/bend/air-shape.ts";
import { bendDeduction } from "../../../src/calc/bend/deduction.ts";
import { edition20262 } from "../../../src/data/materials/edition-2026-2.ts";
import { degrees, mm } from "../../../src/units/quantity.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import { refusalOr } from "../../../src/units/remember.ts";
import type { Working } from "../../../src/units/working.ts";

const material = (name: string) => edition20262.materials.find((each) => each.name === name)!;
const square = degrees(90);
const shape = (
  name: string,
  t: number,
  tools: AirTools,
  method: "best" | "rule" | "mechanics" = "best",
  work?: Working,
) => feasibleAirShape({ material: material(name), thickness: mm(t), bendAngle: square, tools }, method, work);

describe("method best", () => {
  it("is the mechanics inside what was compared", () => {
    const tools = { dieOpening: mm(50.8), punchNose: mm(3.175) };
    const [best, mechanics] = (["best", "mechanics"] as const).map((method) => shape("A36", 6.35, tools, method));
    expect(best!.mechanicsShare).toBe(1);
    expect(best!.radius).toBe(mechanics!.radius);
    expect(best!.neutralAxis).toBe(mechanics!.neutralAxis);
  });

  it("is the rule far outside", () => {
    const tools = { dieOpening: mm(250), punchNose: mm(1) };
    const best = shape("A36", 3, tools);
    expect(best.mechanicsShare).toBe(0);
    expect(best.radius).toBe(shape("A36", 3, tools, "rule").radius);
    expect(best.neutralAxis).toBe(0.42);
  });

  it("says which and why, with the nearest compared bend and how far it is", () => {
    const words = (t: number, opening: number) => {
      const work: Working = [];
      shape("A36", t, { dieOpening: mm(opening), punchNose: mm(1.5) }, "best", work);
      return String(work.find(({ symbol }) => symbol === "method")!.value);
    };
    expect(words(3, 24)).toMatch(/^the mechanics; inside: distance 0\.\d\d to finite elements \w+ \(/);
    expect(words(3, 250)).toMatch(
      /^the rule; outside, cut one, bend, measure: distance \d\.\d\d to finite elements W \(/,
    );
  });

  it("takes the rule where the hardening is not known, the mechanics where no share of the opening is", () => {
    const { hardeningExponent: _, ...plain } = material("A1008 CS");
    const { yieldTypical: __, ...soft } = plain;
    const tools = { dieOpening: mm(24) };
    const bend = { thickness: mm(3), bendAngle: square };
    expect(airShape({ material: soft, ...bend, tools }, "best").mechanicsShare).toBe(0);
    const { airRadiusLow: ___, ...unruled } = material("A36");
    const wide = { dieOpening: mm(250) };
    expect(airShape({ material: unruled, ...bend, tools: wide }, "best").mechanicsShare).toBe(1);
  });

  // To 100 thicknesses of opening, from where on nothing is solved.
  const walks: readonly (readonly [string, number, number, (x: number) => readonly [number, AirTools]])[] = [
    ["thickness over a 2 in die", 0.51, 20, (x) => [x, { dieOpening: mm(50.8) }]],
    ["opening", 9, 299, (x) => [3, { dieOpening: mm(x), punchNose: mm(1.5) }]],
    ["nose in a narrow die", 0.3, 40, (x) => [3, { dieOpening: mm(24), punchNose: mm(x) }]],
    ["nose in a wide die", 0.3, 60, (x) => [3, { dieOpening: mm(50), punchNose: mm(x) }]],
  ];
  it.each(walks)("passes from one to the other without a step: a walk over %s", (_, from, to, bend) => {
    const steps = 600;
    for (const name of ["A36", "304", "5052-H32", "6061-T6"]) {
      const points = Array.from({ length: steps + 1 }, (__, i) => {
        const [t, tools] = bend(from * (to / from) ** (i / steps));
        const found = refusalOr(() => shape(name, t, tools));
        if (found instanceof Refusal) return undefined;
        return (
          bendDeduction({
            thickness: mm(t),
            radius: found.radius,
            bendAngle: square,
            k: found.neutralAxis,
            legs: "outside",
          }) / t
        );
      });
      // Past an end of the walk the free sheet does not come to 90 degrees.
      const walked = points.filter((value) => value !== undefined);
      expect(walked.length).toBeGreaterThan(steps / 2);
      expect(points.slice(points.indexOf(walked[0])).slice(0, walked.length)).toEqual(walked);
      const changes = walked.slice(1).map((value, i) => value - walked[i]!);
      // A step would stand out of the changes beside it; the walk itself goes by less than a tenth of t at a time.
      for (const [i, change] of changes.entries()) {
        const beside = Math.max(Math.abs(changes[i - 1] ?? change), Math.abs(changes[i + 1] ?? change));
        expect(Math.abs(change), `${name} at ${i}`).toBeLessThan(2 * beside + 0.01);
        expect(Math.abs(change)).toBeLessThan(0.1);
      }
    }
  });
});

describe("faces of die and punch against the loaded angle", () => {
  const t6 = (tools: Partial<AirTools>, method: "best" | "rule" | "mechanics" = "best") =>
    shape("6061-T6", 3.175, { dieOpening: mm(50.8), punchNose: mm(1.6), ...tools }, method);

  it.each(["best", "rule", "mechanics"] as const)(
    "method %s: past them #N/A with the angle that is needed",
    (method) => {
      // 6061-T6 1/8 in over 2 in turns about 101 degrees under load: included 79 (common practice).
      expect(() => t6({ dieAngle: degrees(88) }, method)).toThrow(
        /^die_angle must be at most 7\d\.?\d? deg, since the sheet turns 10\d\.\d deg under load; got 88; the sheet would bottom/,
      );
      expect(() => t6({ dieAngle: degrees(60), punchAngle: degrees(86) }, method)).toThrow(
        /^punch_angle must be at most 7/,
      );
      expect(t6({ dieAngle: degrees(60), punchAngle: degrees(60) }, method).radius).toBeGreaterThan(0);
    },
  );

  it("an angle that is not given is not judged, and the working says what it must be", () => {
    const work: Working = [];
    shape("6061-T6", 3.175, { dieOpening: mm(50.8), punchNose: mm(1.6) }, "best", work);
    const faces = work.find(({ symbol }) => symbol === "faces")!;
    expect(faces.meaning).toBe("die and punch angle not given; they need at most");
    expect(faces.value).toBeGreaterThan(75);
    expect(faces.value).toBeLessThan(80);
  });

  it("every symbol of the working stands once", () => {
    for (const tools of [{ dieOpening: mm(24) }, { dieOpening: mm(250), dieAngle: degrees(60) }]) {
      const work: Working = [];
      const { radius, neutralAxis, axisSource } = shape("A36", 3, tools, "best", work);
      bendDeduction({ thickness: mm(3), radius, bendAngle: square, k: neutralAxis, legs: "outside" }, work, axisSource);
      const symbols = work.map(({ symbol }) => symbol);
      expect(new Set(symbols).size, symbols.join(" ")).toBe(symbols.length);
      for (const each of ["t", "V", "rp", "rd", "E", "nu", "Kh", "n", "mu", "faces", "d"])
        expect(symbols).toContain(each);
    }
  });
});
