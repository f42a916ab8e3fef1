/** Remedies of a cut, and the force where blade and cut are just as long; asked of the arithmetic itself. */
import { describe, expect, it } from "vitest";
import { checkShear, type Shear } from "../../../src/calc/shear/check.ts";
import { shearForce } from "../../../src/calc/shear/force.ts";
import { CURRENT_EDITION } from "../../../src/data/materials/editions.ts";
import { degrees, megapascals, mm } from "../../../src/units/quantity.ts";
import type { Working } from "../../../src/units/working.ts";

const A36 = CURRENT_EDITION.materials.find(({ name }) => name === "A36")!;
const shear = (name: string, ratedThickness: number, more: Partial<Shear> = {}): Shear =>
  ({ name, ratedThickness: mm(ratedThickness), cutLength: mm(3000), ratedMaterial: undefined, ...more }) as Shear;
const plate = { material: A36, thickness: mm(10), cutLength: mm(1000), stripWidth: mm(400) };
const ask = (own: Shear, others: readonly Shear[]) => checkShear(plate, own, others, () => A36, "mm");
const words = (own: Shear, others: readonly Shear[]) => ask(own, others).map(({ remedy }) => remedy ?? "");

describe("a cut that is too thick", () => {
  const [small, twin, large] = [shear("small", 6), shear("twin", 6), shear("large", 13)];
  it("goes to another shear that takes it, never to itself", () => {
    expect(words(small, [small, twin, large])).toContain("Nearest remedy: shear it on large.");
    expect(words(small, [small, twin])).toContain(
      "No shear of the table takes it: cut it on the waterjet or buy it cut.",
    );
  });

  it("what only wants a look keeps its own advice", () => {
    for (const problem of ask(shear("gap", 13, { knifeGap: mm(5) }), [large]))
      if (problem.severity !== "stop") expect(problem.remedy ?? "").not.toMatch(/Nearest remedy: shear it on|No shear/);
    const both = ask(shear("both", 6, { knifeGap: mm(5) }), [large]);
    expect(both.some(({ severity }) => severity === "stop")).toBe(true);
    for (const { severity, remedy } of both) expect(/shear it on large/.test(remedy ?? "")).toBe(severity === "stop");
  });
});

describe("the force of a raked blade", () => {
  const told = (cutLength: number, rake: number | undefined) => {
    const work: Working = [];
    const force = shearForce(
      mm(2),
      mm(cutLength),
      rake === undefined ? undefined : degrees(rake),
      megapascals(300),
      work,
    );
    return { force, source: work.find(({ symbol }) => symbol === "area")?.source };
  };
  const engaged = 2 / Math.tan(Math.PI / 90);
  it("is the triangle's where the cut is as long as the blade in it, and less below", () => {
    expect(told(engaged, 2).force).toBeCloseTo((300 * 2 * engaged) / 2, 6);
    expect(told(engaged, 2).source).toMatch(/^t\^2/);
    expect(told(engaged * 2, 2).source).toMatch(/^t\^2/);
    expect(told(engaged / 2, 2).source).toMatch(/^t L/);
    expect(told(engaged / 2, 2).force).toBeCloseTo(
      300 * (2 * (engaged / 2) - ((engaged / 2) ** 2 * Math.tan(Math.PI / 90)) / 2),
      6,
    );
  });

  it("no rake, or none given, is a parallel blade", () => {
    expect(told(100, 0)).toEqual({ force: 300 * 2 * 100, source: undefined });
    expect(told(100, undefined)).toEqual({ force: 300 * 2 * 100, source: undefined });
  });
});
