/** Bends at the edge of what is known: materials without a figure, limits met to the last bit, and what is then said. */
import { describe, expect, it } from "vitest";
import { mechanicsInput } from "../../../src/calc/bend/air-bend.ts";
import { askedOver, estimateAirBend, knownOrNot } from "../../../src/calc/bend/air-estimate.ts";
import { airRadiusByRule } from "../../../src/calc/bend/air-radius.ts";
import type { BendLine } from "../../../src/calc/bend/check/line.ts";
import { lineLoadLimit } from "../../../src/calc/bend/line-load.ts";
import { hardeningOf } from "../../../src/calc/bend/material-hardening.ts";
import { maximumLength } from "../../../src/calc/bend/maximum-length.ts";
import { maximumThickness } from "../../../src/calc/bend/maximum-thickness.ts";
import { safeFlange, shortestFlange } from "../../../src/calc/bend/minimum-flange.ts";
import { minimumRadius } from "../../../src/calc/bend/minimum-radius.ts";
import { neutralAxis } from "../../../src/calc/bend/neutral-axis.ts";
import { acceptRadius } from "../../../src/calc/bend/radius-acceptance.ts";
import { estimateSpringback } from "../../../src/calc/bend/springback-estimate.ts";
import { bendForce } from "../../../src/calc/bend/tonnage.ts";
import type { Brake } from "../../../src/calc/bend/tooling.ts";
import { rankDies } from "../../../src/calc/bend/tools/die-choice.ts";
import { STATUSES } from "../../../src/calc/finding.ts";
import { fact } from "../../../src/data/fact.ts";
import { CURRENT_EDITION } from "../../../src/data/materials/editions.ts";
import type { Material } from "../../../src/data/materials/material.ts";
import { degrees, megapascals, mm, newtons } from "../../../src/units/quantity.ts";
import type { Working } from "../../../src/units/working.ts";

const given = (value: number, unit = "MPa") => fact(value, unit, "given", "this test");
const A36 = CURRENT_EDITION.materials.find(({ name }) => name === "A36")!;
const material = (changed: { [K in keyof Material]?: Material[K] | undefined }): Material =>
  ({ name: "M", aliases: [], ...changed }) as Material;
const saying = (words: RegExp) => expect.objectContaining({ message: expect.stringMatching(words) });
const { tensileTypical, modulus, poisson } = A36;

describe("springback where no hardening is known", () => {
  it("is 3 S arm / (E' t), worked by hand", () => {
    const known = material({ tensileTypical: given(400), modulus: given(200_000), poisson: given(0.3, "") });
    // S 461.88, E' 219780, arm 20 / (2 sin 45): 3 x 461.88 x 14.142 / (219780 x 2) = 0.044581 radians.
    expect(estimateSpringback(known, mm(2), mm(20), degrees(90))).toBeCloseTo(2.5543, 3);
    // A bend of 60 degrees leaves 120 included: arm 20 / (2 sin 60).
    expect(estimateSpringback(known, mm(2), mm(20), degrees(60))).toBeCloseTo(
      (2.5543 * Math.SQRT1_2) / (Math.sqrt(3) / 2),
      3,
    );
    const withoutPoisson = material({ tensileTypical: given(400), modulus: given(200_000) });
    expect(estimateSpringback(withoutPoisson, mm(2), mm(20), degrees(90))).toBeCloseTo(2.5543 / 0.91, 3);
  });

  it("is not known without strength or modulus", () => {
    expect(estimateSpringback(material({ modulus: given(2e5) }), mm(2), mm(20), degrees(90))).toBeUndefined();
    expect(estimateSpringback(material({ tensileTypical: given(400) }), mm(2), mm(20), degrees(90))).toBeUndefined();
  });
});

describe("a material without a figure", () => {
  const tools = { dieOpening: mm(24) };
  it("is refused by the mechanics without modulus, Poisson's ratio or hardening", () => {
    const refusal = (lacks: string) =>
      saying(new RegExp(`^material must be one whose bending is known; got M; give ${lacks} in the data range$`));
    const solve = (known: Parameters<typeof material>[0]) => () => mechanicsInput(material(known), mm(3), tools);
    expect(solve({ tensileTypical, poisson })).toThrow(refusal("modulus, yield typical"));
    expect(solve({ tensileTypical, modulus })).toThrow(refusal("Poisson ratio, yield typical"));
    expect(solve({})).toThrow(refusal("modulus, Poisson ratio, tensile typical, yield typical"));
    for (const [known, lacks] of [
      [{ hardeningExponent: given(0.2, "") }, "tensile typical"],
      [{ yieldMinimum: given(250) }, "tensile typical"],
      [{ tensileTypical }, "yield typical"],
    ] as const)
      expect(() => hardeningOf(material({ ...known, modulus, poisson }))).toThrow(refusal(lacks));
  });

  it("hardening by Considere from strength and exponent; anisotropy goes through", () => {
    const { strength, exponent } = hardeningOf(
      material({ tensileTypical: given(400), hardeningExponent: given(0.2, "") }),
    );
    expect(exponent).toBe(0.2);
    expect(strength).toBeCloseTo(400 * (Math.E / 0.2) ** 0.2, 9);
    const whole = { ...A36, anisotropy: given(1.4, "") };
    expect(mechanicsInput(whole, mm(3), tools)).toMatchObject({ anisotropy: 1.4 });
    const { anisotropy: _, ...plain } = A36;
    expect(mechanicsInput(plain, mm(3), tools)).not.toHaveProperty("anisotropy");
  });

  it("has no radius by rule without both shares, and its estimate says what it does not know", () => {
    for (const one of [{ airRadiusLow: given(0.15, "") }, { airRadiusHigh: given(0.17, "") }])
      expect(() => airRadiusByRule(material(one), mm(24), undefined)).toThrow(saying(/share of the opening/));
    const die = { name: "V", opening: mm(24), angle: degrees(80) };
    expect(estimateAirBend(askedOver(material({}), mm(3), degrees(90), die, mm(1)))).toEqual({
      radius: undefined,
      tightest: undefined,
      springback: undefined,
      stroke: undefined,
    });
    const folds = estimateAirBend(askedOver(material({ foldsRoundNose: true }), mm(3), degrees(90), die, mm(1)));
    expect(folds.tightest).toBe(1);
    expect(
      estimateAirBend(askedOver(material({ foldsRoundNose: true }), mm(3), degrees(90), die, undefined)).tightest,
    ).toBeUndefined();
  });

  it("only a refusal is a figure not known; another fault is passed on", () => {
    const fault = new TypeError("ours");
    expect(() =>
      knownOrNot(() => {
        throw fault;
      }),
    ).toThrow(fault);
  });
});

describe("the largest that a brake bends", () => {
  const brake = (force: number, bed = 3000): Brake => ({
    name: "B",
    ratedForce: newtons(force),
    bedLength: mm(bed),
    betweenHousings: mm(2500),
  });
  const bend = { dieOpening: mm(60), tensile: megapascals(400), isSteel: true };
  const force = (thickness: number, bendLength: number) =>
    bendForce({ ...bend, thickness: mm(thickness), bendLength: mm(bendLength) }, "Groover");

  it("thickness: a bend as long as the bed is no longer than it, and what needs the whole rating is within", () => {
    const whole = force(10, 1000);
    // The beam allows 1000 mm of its 1500.
    const strong = maximumThickness({ ...bend, bendLength: mm(1000) }, brake((whole * 1500) / 1000, 1000), "Groover");
    expect(strong).toBe(10); // V / 6
    for (const opening of [7, 10, 11, 13, 17, 19, 23])
      expect(maximumThickness({ ...bend, dieOpening: mm(opening), bendLength: mm(1) }, brake(1e9), "Groover")).toBe(
        opening / 6,
      );
    const weak = maximumThickness({ ...bend, bendLength: mm(1000) }, brake((force(5, 1000) * 1500) / 1000), "Groover");
    expect(weak).toBeCloseTo(5, 9);
    expect(() => maximumThickness({ ...bend, bendLength: mm(1001) }, brake(1e6, 1000), "Groover")).toThrow(
      saying(/^bend_length must be at most the bed of B/),
    );
  });

  it("thickness: tells the working of the thickest, and refuses where not even the thinnest goes", () => {
    const work: Working = [];
    const found = maximumThickness({ ...bend, bendLength: mm(1000) }, brake(force(5, 1000) * 1.5), "Groover", work);
    expect(work.at(-1)).toMatchObject({ symbol: "t max", value: found });
    expect(work.find(({ symbol }) => symbol === "F")!.value).toBeCloseTo(force(found, 1000), 6);
    expect(() => maximumThickness({ ...bend, bendLength: mm(1000) }, brake(-1), "Groover")).toThrow(
      saying(/^bend_length must be short enough for B/),
    );
  });

  it("length: a load just at the beam's limit is taken", () => {
    const perLength = force(5, 1);
    const just = brake(perLength * 0.6 * 2500);
    expect(lineLoadLimit(just)).toBeCloseTo(perLength, 9);
    const exactly: Brake = { ...just, ratedForce: newtons(perLength), betweenHousings: mm(1 / 0.6) };
    expect(lineLoadLimit(exactly)).toBe(perLength);
    expect(maximumLength({ ...bend, thickness: mm(5) }, exactly, "Groover")).toBe(1);
    const same = { ...just, ratedForce: newtons(just.ratedForce * (1 + 1e-12)) };
    expect(maximumLength({ ...bend, thickness: mm(5) }, same, "Groover")).toBeCloseTo(1500, 6);
    const under = { ...just, ratedForce: newtons(just.ratedForce * 0.99) };
    expect(() => maximumLength({ ...bend, thickness: mm(5) }, under, "Groover")).toThrow(
      saying(/^die_opening must be wide enough/),
    );
  });

  it("force: the highest of the formulas hides no fault, and a formula out of range says where it ends", () => {
    const thin = { ...bend, thickness: mm(0.1), bendLength: mm(100) };
    expect(() => bendForce(thin, "Lange")).toThrow(saying(/\(0\.0\d+ to 0\.\d+ in\) for method "Lange"/));
    const broken = {
      ...bend,
      thickness: undefined,
      get bendLength(): never {
        throw new TypeError("ours");
      },
    };
    expect(() => bendForce(broken as never, "highest")).toThrow(TypeError);
  });
});

describe("radius and neutral axis at their limits", () => {
  it("a radius given in thicknesses stays as it is", () => {
    const rule = { table: "given", multiple: 1.5, source: "this test" } as const;
    expect(minimumRadius({ name: "M", radiusRule: rule as never, tensile: undefined }, mm(2), "across")).toBe(3);
  });

  it("the tables say where they end, and for which direction", () => {
    const aluminum = CURRENT_EDITION.materials.find(({ name }) => name === "6061-T6")!;
    expect(() => minimumRadius({ ...aluminum, tensile: undefined }, mm(13), "across")).toThrow(
      saying(/at most 0\.5 in \(12\.7 mm\)/),
    );
    expect(() => minimumRadius({ ...A36, tensile: undefined }, mm(100), "across")).toThrow(
      saying(/at most 0\.75 in \(19\.05 mm\) for ASTM A6/),
    );
    const sheet = CURRENT_EDITION.materials.find(({ name }) => name === "A1011 CS")!;
    const din = (thickness: number, grain: "across" | "along", tensile?: number) => () =>
      minimumRadius(
        { ...sheet, tensile: tensile === undefined ? undefined : megapascals(tensile) },
        mm(thickness),
        grain,
      );
    expect(din(3, "across")).toThrow(saying(/got A1011 CS without one/));
    expect(din(3, "across", 700)).toThrow(saying(/got 700 MPa/));
    // DIN 6935 (1975-10) as reprinted (read): 12 mm is the last row, and along rolling the one before it is.
    expect(din(99, "along", 360)).toThrow(saying(/at most 0\.3937 in \(10 mm\) for DIN 6935 along rolling; got/));
    expect(din(99, "across", 360)).toThrow(saying(/at most 0\.4724 in \(12 mm\) for DIN 6935; got/));
    const told = (grain: "across" | "along") => {
      const work: Working = [];
      minimumRadius({ ...sheet, tensile: megapascals(360) }, mm(3), grain, work);
      return work.at(-1)!.meaning;
    };
    expect(told("across")).toBe("least inside radius");
    expect(told("along")).toMatch(/next thicker row/);
  });

  it("DIN 6935 at five thicknesses, at the zero of its k, and a K that is given", () => {
    // 0.65 + 0.5 lg 5 = 0.99949, not yet 1; lg(r/s) = -1.3 makes nothing of it.
    expect(neutralAxis(mm(2), mm(10), "DIN 6935") * 2).toBeCloseTo(0.65 + 0.5 * Math.log10(5), 12);
    expect(neutralAxis(mm(2), mm(10.001), "DIN 6935") * 2).toBe(1);
    expect(() => neutralAxis(mm(1), mm(10 ** -1.3), "DIN 6935")).toThrow(saying(/^radius must be more than 0\.05/));
    const source = (k: number) => {
      const work: Working = [];
      neutralAxis(mm(2), mm(2), k, work);
      return work[0]!.source;
    };
    expect(source(0.33)).toBe("given");
    expect(source(0.42)).not.toBe("given");
  });

  it("a flange at an obtuse and at a sharp bend, rounded up to the next step and no further", () => {
    // Included 120 and 60 degrees: 20 / (2 sin 60), 20 / (2 sin 30).
    expect(shortestFlange(mm(20), degrees(60))).toBeCloseTo(10 / Math.sin(Math.PI / 3), 12);
    expect(shortestFlange(mm(20), degrees(120))).toBeCloseTo(20, 12);
    const square = { thickness: mm(2), dieOpening: mm(20), bendAngle: degrees(90) };
    const safe = safeFlange({ ...square, shoulder: undefined }, "mm");
    expect(Number.isInteger(safe)).toBe(true);
    // 20 / 2 and half a thickness: 11 as it is, on sharp shoulders.
    expect(safeFlange({ ...square, bendAngle: degrees(0), shoulder: mm(0) }, "mm")).toBe(11);
    const inches = safeFlange({ ...square, dieOpening: mm(25.4), shoulder: undefined }, "in") / 25.4;
    expect(inches * 16).toBeCloseTo(Math.round(inches * 16), 9);
  });
});

describe("the drawing's radius", () => {
  const gives = { low: mm(3), expected: mm(4), high: mm(5) };
  const judge = (drawing: number, tolerance = 0) =>
    acceptRadius({ radius: mm(drawing), tolerance: mm(tolerance) }, gives, 0.16, "mm");
  it.each([
    [4, 1, "accept", /all of it is within the tolerance of the drawing's 4 mm/],
    [5, 2, "accept", /all of it is within/],
    [
      4,
      0.9,
      "measure",
      /about 4 mm \(3 mm to 5 mm\), not all of it within the drawing's 4 mm, plus or minus 0.9 mm: mea/,
    ],
    [5, 1, "measure", /measure the first piece/],
    [6, 1, "ask", /of 6 mm, plus or minus 1 mm; our tooling gives about 4 mm \(3 mm to 5 mm\). Please confirm/],
    [2, 0.5, "ask", /asks for an inside radius of 2 mm; .* Please confirm in writing/],
    [7, 1, "other tool", /needs a punch nose of 7 mm or an opening of about 44 mm/],
  ] as const)("%d mm, plus and minus %d: %s", (drawing, tolerance, verdict, words) => {
    expect(judge(drawing, tolerance).verdict).toBe(verdict);
    expect(judge(drawing, tolerance).sentence).toMatch(words);
  });

  it("a wide die for a radius that nobody waives: an opening is named", () => {
    const wide = acceptRadius(
      { radius: mm(8), tolerance: mm(0) },
      { low: mm(9), expected: mm(10), high: mm(11) },
      0.16,
      "mm",
    );
    expect(wide.verdict).toBe("other tool");
    expect(wide.sentence).toMatch(/needs an opening of about 50 mm, if that is at least 6 thicknesses/);
  });
});

describe("dies in order", () => {
  const line: BendLine = {
    material: A36,
    thickness: mm(3),
    bendLength: mm(300),
    flanges: [mm(60), mm(60)],
    bendAngles: [degrees(90)],
    grain: "across",
  };
  const die = (opening: number, angle = 80) => ({ name: `V${opening}`, opening: mm(opening), angle: degrees(angle) });
  const brake: Brake = { name: "B", ratedForce: newtons(1e7), bedLength: mm(3000), betweenHousings: mm(2500) };

  it("the clear ones first, the nearest to eight thicknesses first among them", () => {
    const found = rankDies(line, [die(10), die(36), die(24, 88), die(20), die(28)], brake, undefined, "mm");
    const ranks = found.map(({ status }) => STATUSES.indexOf(status));
    expect(ranks).toEqual([...ranks].sort());
    expect(found.filter(({ status }) => status === found[0]!.status).map(({ die }) => die.name)[0]).toBe("V28");
    for (const { die, faceRoom, estimate } of found)
      expect(faceRoom).toBeCloseTo(180 - die.angle - 90 - estimate.springback!, 9);
  });

  it("without a springback there is no room to tell", () => {
    const bare = material({
      airRadiusLow: given(0.15, ""),
      airRadiusHigh: given(0.17, ""),
      tensileTypical: given(400),
    });
    const [only] = rankDies({ ...line, material: bare }, [die(24)], brake, undefined, "mm");
    expect(only!.faceRoom).toBeUndefined();
  });
});
