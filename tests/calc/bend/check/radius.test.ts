/** The tightest radius against the published one and the usual one. Radii: sources in src/data; severities common practice. */
import { describe, expect, it } from "vitest";
import type { AirEstimate } from "../../../../src/calc/bend/air-estimate.ts";
import type { BendLine } from "../../../../src/calc/bend/check/line.ts";
import { radiusFinding } from "../../../../src/calc/bend/check/radius.ts";
import type { Material } from "../../../../src/data/materials/material.ts";
import { type Millimeters, mm } from "../../../../src/units/quantity.ts";
import { line, material } from "./set-up.ts";

const at = (tightest: number | undefined, changed: Partial<BendLine> = {}) =>
  radiusFinding(line(changed), { tightest } as AirEstimate);
const said = (...given: Parameters<typeof at>) => {
  const found = at(...given);
  return found && `${found.status} ${found.kind}`;
};
const LITTLE = 1.0001;

describe("ductile sheet", () => {
  const published = at(2.8)!.limit!;
  it("tighter than published but usual on a brake is a note", () => {
    expect(said(published)).toBeUndefined();
    expect(said(published / LITTLE)).toBe("note usual");
    expect(at(published / LITTLE)!.limit).toBeCloseTo(published, 9);
  });
  it("tighter than usual is a check; what is usual is known to a tenth", () => {
    const usual = material("304").usualRadius!.value * 3;
    expect(said(0.9 * usual, { material: material("304") })).toBeUndefined();
    expect(said((0.9 * usual) / LITTLE, { material: material("304") })).toBe("check tighter than usual");
    const steel = material("A36").usualRadius!.value * 3;
    expect(said(0.9 * steel)).toBe("note usual");
    expect(said((0.9 * steel) / LITTLE)).toBe("check tighter than usual");
  });
  it("grain that is not known is judged along", () => {
    const along = at(2.8, { grain: "along" })!.limit!;
    expect(along).toBeGreaterThan(published);
    expect(at(2.8, { grain: undefined })!.limit).toBe(along);
  });
});

describe("plate from 1/4 in along the grain needs 1.5 thicknesses", () => {
  const plate = (inches: number, times: number, grain: BendLine["grain"]) => {
    const thickness = mm(inches * 25.4);
    const found = at(times * thickness, { thickness, grain });
    return found?.kind === "plate along" ? found.status : undefined;
  };
  it.each([
    [0.25, 1.5, "along", undefined],
    [0.25, 1.499, "along", "check"],
    [0.249, 1.499, "along", undefined],
    [0.25, 1.499, "across", undefined],
    [0.25, 1.499, undefined, undefined],
  ] as const)("%d in at %d thicknesses, %s the grain: %s", (inches, times, grain, status) => {
    expect(plate(inches, times, grain)).toBe(status);
  });
});

describe("a temper that cracks", () => {
  const alloy = { material: material("6061-T6") };
  const least = at(0.1, { ...alloy, grain: "across" })!.limit! as Millimeters;
  it("below its table stops, whatever the nose", () => {
    expect(said(least, { ...alloy, grain: "across" })).toBeUndefined();
    expect(said(least / LITTLE, { ...alloy, grain: "across" })).toBe("stop cracks");
  });
  it("along the grain stops, with a grain nobody knows it is a check", () => {
    expect(said(least, { ...alloy, grain: "along" })).toBe("stop along");
    expect(said(least, { ...alloy, grain: undefined })).toBe("check across only");
    for (const grain of ["along", undefined] as const)
      expect(said(least / LITTLE, { ...alloy, grain })).toBe("stop cracks");
  });
});

describe("what is not known", () => {
  it("of a material that nobody publishes, or a nose that nobody names, is a check", () => {
    const { radiusRule: _, usualRadius: __, ...bare } = material("A36");
    expect(said(5, { material: { ...bare, name: "Unheard of" } as Material })).toBe("check nothing published");
    expect(said(undefined)).toBe("check nose unknown");
  });
});
