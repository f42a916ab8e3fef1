/** A Z, a hat, a channel and a flat plate in every function that takes flanges: signs change no length and no force (geometry). */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";

const call = (name: string, ...given: readonly (CellValue | CellMatrix)[]) =>
  shopFunctions.call(
    name,
    given.map((value) => (Array.isArray(value) ? value : [[value as CellValue]])) as CellMatrix[],
  ).value;
const figure = (...given: Parameters<typeof call>) => {
  const value = call(...given);
  if (typeof value !== "number") throw new Error(JSON.stringify(value));
  return value;
};
const message = (...given: Parameters<typeof call>) => {
  const value = call(...given);
  return isCellError(value) ? value.message : "answered";
};

const DIES = [
  ["Die", "Opening (in)", "Angle (deg)"],
  ["V 1", 1, 80],
];
const BRAKES = [
  ["Brake", "Rated force (US ton)", "Bed length (in)", "Between housings (in)"],
  ["B", 100, 120, 96],
];
const PUNCHES = [
  ["Punch", "Nose radius (in)", "Angle (deg)"],
  ["P", 0.0625, 75],
];

describe.each([
  ["Z", "2; 3; 1.5", "90; -90", "90; 90"],
  ["hat", "1.5; 2; 4; 2; 1.5", "-90; 90; 90; -90", "90"],
  ["leaning Z", "2; 3; 1.5", "-60; 45", "60; 45"],
])("%s", (_, flanges, signed, plain) => {
  it("is as long as the same flanges bent one way", () => {
    expect(figure("FLAT.LENGTH", flanges, signed, 0.125, 0.125)).toBe(
      figure("FLAT.LENGTH", flanges, plain, 0.125, 0.125),
    );
    expect(figure("AIR.FLAT", "A36", 0.125, flanges, signed, 1)).toBe(
      figure("AIR.FLAT", "A36", 0.125, flanges, plain, 1),
    );
  });

  it("has the same gauge settings for the first bend, and a setting for every one", () => {
    const order = flanges
      .split(";")
      .slice(1)
      .map((__, i) => i + 1)
      .join("; ");
    const stops = (angles: string) => call("BEND.STOPS", flanges, angles, order, 0.125, 0.125) as CellMatrix;
    expect(stops(signed)[1]![2]).toBe(stops(plain)[1]![2]);
    expect(stops(signed)).toHaveLength(flanges.split(";").length);
  });

  it("is checked", () => {
    const [[status]] = call("BEND.CHECK", "A36", 0.125, 12, flanges, signed, "V 1", BRAKES, DIES, PUNCHES) as [
      [string],
    ];
    expect(["clear", "check"]).toContain(status);
  });
});

describe("a flat plate, one flange and no angle", () => {
  it.each([null, "", 0])("is as long as it is, with %j for its bends", (none) => {
    expect(figure("FLAT.LENGTH", 6, none, 0.125, 0.125)).toBe(6);
    expect(figure("AIR.FLAT", "A36", 0.125, 6, none, 1)).toBe(6);
  });
  it("has no order, no setting and nothing against it", () => {
    expect((call("BEND.STOPS", 6, null, null, 0.125, 0.125) as CellMatrix)[1]).toContain("no bends: cut only");
    const [row] = call("BEND.CHECK", "A36", 0.125, 12, 6, null, "V 1", BRAKES, DIES, PUNCHES) as CellMatrix;
    expect(row![0]).toBe("clear");
  });
  it.each([
    ["FLAT.LENGTH", ["2,3", 90, 0.125, 0.125]],
    ["AIR.FLAT", ["A36", 0.25, "2,3", 90, 2]],
    ["BEND.STOPS", ["2,3", 90, null, 0.125, 0.125]],
  ] as [string, CellValue[]][])("%s: one flange and a bend angle is a slip, most often of the comma", (name, given) => {
    expect(message(name, ...given)).toMatch(/^flanges must be two or more where a bend angle is given; .*write "2; 3"/);
  });
  it("but two flanges have a bend between them", () => {
    expect(message("FLAT.LENGTH", "2; 3", null, 0.125, 0.125)).toMatch(/^bend_angles must be one angle for all/);
    expect(message("BEND.STOPS", "2; 3", 90, null, 0.125, 0.125)).toMatch(/^order must be/);
  });
});

describe("a thickness in inches that is a gauge", () => {
  it.each([
    ["AIR.RADIUS", ["A36", 10, 90, 100]],
    ["BEND.TONNAGE", ["A36", "10", 48, 2]],
    ["JET.FEED", ["A36", 16, 3, 50, 0.014, 0.75, 0.04]],
    ["BEND.MINFLANGE", [12, 2]],
  ] as [string, CellValue[]][])("%s asks which", (name, given) => {
    expect(message(name, ...given)).toMatch(/^thickness must be a thickness with its unit; got .*write "\d+ ga" for/);
  });
  it("in millimeters it is not a gauge, and 10 in may be said", () => {
    expect(figure("BEND.MINFLANGE", 10, 80, 90, null, null, "mm")).toBe(62);
    expect(figure("JET.FEED", "A36", "7 in", 3, 50, 0.014, 0.75, 0.04)).toBeGreaterThan(0);
  });
});

describe("a mixing tube narrower than its orifice", () => {
  it("cuts nothing", () => {
    expect(message("JET.FEED", "A36", 0.5, 3, 50, 0.014, 0.75, 0.01)).toMatch(/^nozzle_diameter must be at least the/);
  });
});

describe("a single bend the other way", () => {
  it.each(["BEND.SETBACK", "BEND.ALLOWANCE", "BEND.DEDUCTION"])("%s", (name) => {
    for (const angle of [45, 90, 120]) expect(figure(name, 0.125, 0.2, -angle)).toBe(figure(name, 0.125, 0.2, angle));
  });
  it("AIR.SPRINGBACK and AIR.TONNAGE", () => {
    expect(figure("AIR.SPRINGBACK", "A36", 0.125, -90, 1)).toBe(figure("AIR.SPRINGBACK", "A36", 0.125, 90, 1));
  });
});

describe("a closed hem", () => {
  it.each([
    ["BEND.SETBACK", [0.125, 0.2, 180]],
    ["BEND.DEDUCTION", [0.125, 0.2, 179.5]],
    ["FLAT.LENGTH", ["0.5; 3", -180, 0.06, 0.06]],
    ["AIR.FLAT", ["A36", 0.06, "0.5; 3", 180, 0.5]],
    ["BEND.STOPS", ["0.5; 3", 180, 1, 0.06, 0.06]],
  ] as [string, CellValue[]][])("%s says what the tool needs, and no number", (name, given) => {
    expect(message(name, ...given)).toMatch(/hem .*flattened in a hem die/);
  });
});
