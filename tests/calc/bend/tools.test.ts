/** Which tools a part can be bent with, against every pair tried one by one. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findProblems } from "../../../src/calc/bend/check/check.ts";
import type { BendLine } from "../../../src/calc/bend/check/line.ts";
import type { Brake, Die, Punch } from "../../../src/calc/bend/tooling.ts";
import { offUsual, toolOptions } from "../../../src/calc/bend/tools/choose-tools.ts";
import { STATUSES, statusOf } from "../../../src/calc/problem.ts";
import { CURRENT_EDITION } from "../../../src/data/materials/editions.ts";
import { degrees, mm, newtons } from "../../../src/units/quantity.ts";

const A36 = CURRENT_EDITION.materials.find(({ name }) => name === "A36")!;
const BRAKE: Brake = { name: "B", ratedForce: newtons(6e5), betweenHousings: mm(2000), bedLength: mm(2500) };
const die = (opening: number, angle = 80, length?: number): Die =>
  ({ name: `V${opening}/${angle}`, opening: mm(opening), angle: degrees(angle), length: length && mm(length) }) as Die;
const punch = (nose: number, angle = 78): Punch => ({
  name: `P${nose}/${angle}`,
  nose: mm(nose),
  angle: degrees(angle),
});
const line = (thickness: number, flange: number, length = 500): BendLine => ({
  material: A36,
  thickness: mm(thickness),
  bendLength: mm(length),
  flanges: [mm(flange), mm(200)],
  bendAngles: [degrees(90)],
  grain: "across",
});
const rank = (bends: readonly BendLine[], die: Die, punch: Punch) =>
  STATUSES.indexOf(statusOf(bends.flatMap((bend) => findProblems(bend, { brake: BRAKE, die, punch }, "mm"))));
const names = (options: ReturnType<typeof toolOptions>) =>
  options.map(({ setup }) => `${setup.die.name} ${setup.punch!.name}`);

/** All clear pairs, nearest to 8 thicknesses first; else the first of the least bad. */
function byTrial(bends: readonly BendLine[], dies: readonly Die[], punches: readonly Punch[]): string[] {
  const far = ({ opening }: Die) => Math.abs(Math.log(opening / (8 * bends[0]!.thickness)));
  const pairs = [...dies]
    .sort((a, b) => far(a) - far(b))
    .flatMap((die) => punches.map((punch) => ({ name: `${die.name} ${punch.name}`, rank: rank(bends, die, punch) })));
  const clear = pairs.filter((pair) => pair.rank === 0);
  if (clear.length > 0) return clear.map(({ name }) => name);
  return pairs.length === 0 ? [] : [pairs.reduce((a, b) => (b.rank < a.rank ? b : a)).name];
}

const dies = fc.uniqueArray(
  fc.constantFrom(die(12), die(16), die(24), die(32, 60), die(40), die(50, 86), die(24, 88), die(63, 80, 300)),
  {
    selector: ({ name }) => name,
    maxLength: 6,
  },
);
const punches = fc.uniqueArray(fc.constantFrom(punch(1), punch(3), punch(2, 88), punch(8, 60)), {
  selector: ({ name }) => name,
  maxLength: 3,
});

describe("the tools a part can be bent with", () => {
  it("are the pairs without a problem, else the least bad one", () => {
    const parts = fc.array(
      fc.tuple(fc.constantFrom(1.5, 2, 3, 4, 6), fc.constantFrom(5, 12, 20, 40), fc.constantFrom(200, 500, 1900, 2600)),
      { minLength: 1, maxLength: 2 },
    );
    fc.assert(
      fc.property(parts, dies, punches, (given, some, others) => {
        const bends = given.map(([, flange, length]) => line(given[0]![0], flange, length));
        expect(names(toolOptions(bends, BRAKE, some, others, "mm"))).toEqual(byTrial(bends, some, others));
      }),
      { numRuns: 200 },
    );
  });

  it("with a wish only those that meet it, where there are such", () => {
    const bends = [line(3, 40)];
    const [some, others] = [
      [die(24), die(32)],
      [punch(1), punch(2)],
    ];
    const all = names(toolOptions(bends, BRAKE, some, others, "mm"));
    expect(all).toEqual(["V24/80 P1/78", "V24/80 P2/78", "V32/80 P1/78", "V32/80 P2/78"]);
    const wide = toolOptions(bends, BRAKE, some, others, "mm", (setup) => setup.die.opening > 30);
    expect(names(wide)).toEqual(all.slice(2));
    expect(names(toolOptions(bends, BRAKE, some, others, "mm", () => false))).toEqual(all);
  });

  it("a flat part, or an empty shop, has none", () => {
    expect(toolOptions([], BRAKE, [die(24)], [punch(1)], "mm")).toEqual([]);
    expect(toolOptions([line(3, 40)], BRAKE, [], [punch(1)], "mm")).toEqual([]);
    expect(toolOptions([line(3, 40)], BRAKE, [die(24)], [], "mm")).toEqual([]);
  });

  it("how far from the usual opening is the same half as twice as wide", () => {
    const off = (opening: number) => offUsual(toolOptions([line(3, 40)], BRAKE, [die(opening)], [punch(1)], "mm")[0]!);
    expect(off(24)).toBe(0);
    expect(off(12)).toBeCloseTo(Math.log(2), 12);
    expect(off(48)).toBeCloseTo(Math.log(2), 12);
  });

  it("say what is wrong with them, of both directions", () => {
    const [only] = toolOptions([line(3, 40), line(3, 5)], BRAKE, [die(24)], [punch(1)], "mm");
    expect(only!.problems.map(({ check }) => check)).toContain("flange");
    expect(only!.bends).toHaveLength(2);
  });
});
