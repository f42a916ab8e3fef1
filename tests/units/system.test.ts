import { unit } from "mathjs";
import { describe, expect, it } from "vitest";
import { fromInternal, type QuantityKind, SCALES, toInternal, UNIT_SYSTEMS } from "../../src/units/system.ts";
import { unitSize, unitWords } from "../../src/units/unit-words.ts";

/** Our internal unit of each kind, and a US ton, in the words of mathjs, an independent library of units. */
const INTERNAL: Record<Exclude<QuantityKind, "angle">, string> = {
  length: "mm",
  force: "N",
  lineLoad: "N/mm",
  mass: "kg",
  stress: "N/mm^2",
  density: "kg/mm^3",
  feed: "mm/min",
  massFlow: "g/min",
};
/** Words that mathjs spells otherwise. */
const SPELLED: Record<string, string> = {
  "US ton": "2000 lbf",
  "us ton": "2000 lbf",
  "us tons": "2000 lbf",
  ton: "2000 lbf",
  tons: "2000 lbf",
  "US ton/ft": "2000 lbf/ft",
  "us ton/ft": "2000 lbf/ft",
  "ton/ft": "2000 lbf/ft",
  "tons/ft": "2000 lbf/ft",
  "us ton/in": "2000 lbf/in",
  "ton/in": "2000 lbf/in",
  ksi: "1000 psi",
  mpa: "MPa",
  gpa: "GPa",
  kn: "kN",
  n: "N",
  kip: "1000 lbf",
  "kn/m": "kN/m",
  "n/mm": "N/mm",
  "n/mm2": "N/mm^2",
  lb: "lbm",
  lbs: "lbm",
  "lb/in^3": "lbm/in^3",
  "lb/in3": "lbm/in^3",
  "kg/m3": "kg/m^3",
  "g/cm3": "g/cm^3",
  "kg/dm3": "kg/dm^3",
  "lb/min": "lbm/min",
  ipm: "in/min",
};

function inInternalUnits(word: string, kind: keyof typeof INTERNAL): number {
  const spelled = SPELLED[word] ?? word;
  const [, factor = "1", name = spelled] = /^(\d+) (.+)$/.exec(spelled) ?? [];
  return Number(factor) * unit(1, name).toNumber(INTERNAL[kind]);
}
const kinds = Object.keys(INTERNAL) as (keyof typeof INTERNAL)[];

/** mathjs rounds its psi to 11 figures; everything else agrees to the last bits. */
const figures = (kind: QuantityKind): number => (kind === "stress" ? 9 : 12);

describe("unit systems against mathjs", () => {
  it.each(kinds.flatMap((kind) => UNIT_SYSTEMS.map((system) => [kind, system] as const)))(
    "%s in %s",
    (kind, system) => {
      const wanted = inInternalUnits(SCALES[kind][system].name, kind);
      expect(toInternal(1, kind, system) / wanted).toBeCloseTo(1, figures(kind));
      expect(fromInternal(wanted, kind, system)).toBeCloseTo(1, figures(kind));
    },
  );

  it.each(kinds.flatMap((kind) => unitWords(kind).map((word) => [word, kind] as const)))(
    "%s in a header of %s",
    (word, kind) => {
      expect(unitSize(word, kind)! / inInternalUnits(word, kind)).toBeCloseTo(1, figures(kind));
    },
  );

  it("there and back is the same figure", () => {
    for (const kind of kinds)
      for (const system of UNIT_SYSTEMS)
        for (const value of [0, 1e-6, 0.1, 1, 17.97, 1e6])
          expect(fromInternal(toInternal(value, kind, system), kind, system)).toBeCloseTo(value, 9);
  });
});

describe("unit words in headers", () => {
  it.each(["", "furlong", "mmm", "constructor", "toString", "__proto__"])("%j is no unit of length", (word) => {
    expect(unitSize(word, "length")).toBeUndefined();
  });

  it("case and outer blanks do not matter, the kind does", () => {
    expect(unitSize(" MM ", "length")).toBe(1);
    expect(unitSize("kN", "force")).toBe(1000);
    expect(unitSize("mm", "force")).toBeUndefined();
  });
});
