/** What the bend order finds on tools as their tables state them; what nobody stated is measured, and stops nothing. */
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../../src/units/cell.ts";
import type { Line } from "../../cells/example/tables.ts";
import { answerOf, bracket, kindsOf, planned, shopOf } from "../shop.ts";

type Row = Record<string, CellValue>;
const table = (row: Row): CellValue[][] => [Object.keys(row), Object.values(row)];
const BRAKE: Row = {
  Brake: "B",
  "Rated force (US ton)": 200,
  "Bed length (in)": 120,
  "Between housings (in)": 100,
  "Open stroke (in)": 4,
  "Approach speed (in/min)": 280,
  "Bend speed (in/min)": 22,
  "Return speed (in/min)": 240,
  "Gauge speed (in/min)": 500,
};
const DIE: Row = { Die: "V 1", "Opening (in)": 1, "Angle (deg)": 80, "Block width (in)": 1.25, "Block height (in)": 3 };
const PUNCH: Row = {
  Punch: "P",
  "Nose radius (in)": 0.0625,
  "Angle (deg)": 75,
  "Body width (in)": 0.75,
  "Height (in)": 6,
};

const plate = { Material: "A1011 CS", Thickness: "11 ga", Width: 10, Holes: 0 };
function found(line: Line, brake: Row = {}, die: Row = {}, punch: Row = {}) {
  const shop = shopOf({
    brakes: table({ ...BRAKE, ...brake }),
    dies: table({ ...DIE, ...die }),
    punches: table({ ...PUNCH, ...punch }),
  });
  const answer = answerOf(planned([bracket({ Part: "X", ...plate, ...line })], shop), "X");
  const about = (finding: string) => /^(?:bend order|room|flange|off center):/.test(finding);
  return { answer, kinds: kindsOf(answer).filter(about) };
}
const U = { Flanges: "4; 4; 4", "Bend angles": 90 };
const Z = { Flanges: "2; 3; 2", "Bend angles": "90; -90" };
/** Lips 1.5 in over a base of 4: they close to 1 in. */
const C = { Flanges: "1.5; 3; 4; 3; 1.5", "Bend angles": 90 };

describe("a deep U", () => {
  it("has no order under a straight punch, and one over a throat that is deep and high enough", () => {
    expect(found(U).kinds).toEqual(["bend order: check none on a plain punch"]);
    const neck = { "Height (in)": 8, "Relief depth (in)": 0.75, "Relief width (in)": 6.5 };
    expect(found(U, {}, {}, neck).kinds).toEqual([]);
    expect(found(U, {}, {}, { ...neck, "Relief width (in)": 3 }).kinds).toEqual([
      "bend order: check none on plain tools",
    ]);
  });
});

describe("what no table states", () => {
  it("is drawn as usual, and where only that is in the way it is asked for, a note where a hair is missing", () => {
    // Turned up at 45 degrees beside the punch, a leg of 3.4 over a base of 4 ends 0.34 in before the tip's line: past a
    // body of 12 mm, not of 24; one of 3.1 misses that by a hair.
    const u = (leg: number) =>
      found({ Flanges: `${leg}; 4; ${leg}`, "Bend angles": 90 }, {}, {}, { "Body width (in)": null });
    expect(u(3.4).kinds).toEqual(["bend order: check hangs on a size"]);
    expect(u(3.4).answer.findings.map(({ words }) => words)).toContain("body width of punch P");
    expect(u(3.1).kinds).toEqual(["bend order: note near a size"]);
    expect(u(3).kinds).toEqual([]);
  });
  it("stops nothing: 5 in dies have stroke enough where nobody stated it", () => {
    const plain: Row = { "Opening (in)": 5, "Block width (in)": null, "Block height (in)": null };
    const heavy = { ...Z, Material: "A36", Thickness: 0.25, Flanges: "8; 8", "Bend angles": 90 };
    expect(found(heavy, {}, plain).kinds.filter((kind) => kind.startsWith("room"))).toEqual([]);
  });
});

describe("daylight and stroke", () => {
  it("stop where all heights are stated, and ask for the height that is not", () => {
    // 3 in of die and 6 in of punch in 9 in of daylight.
    expect(found(Z, { "Daylight (in)": 9 }).kinds).toEqual(["room: stop daylight"]);
    expect(found(Z, { "Daylight (in)": 18, "Shut height (in)": 8 }).kinds).toEqual([]);
    // A bend ends about 0.4 in below the die's top: 8.6 in between ram and bed, no less.
    expect(found(Z, { "Daylight (in)": 18, "Shut height (in)": 8.4 }).kinds).toEqual([]);
    expect(found(Z, { "Daylight (in)": 18, "Shut height (in)": 8.9 }).kinds).toEqual(["room: stop stroke"]);
    expect(found(Z, { "Daylight (in)": 18, "Shut height (in)": 12 }, {}, { "Height (in)": null }).kinds).toEqual([
      "room: check stroke, heights not stated",
    ]);
  });
});

describe("the gauge", () => {
  it.each([
    [{ "Nearest gauge (in)": 2 }, ["flange: note gauge nearer"]],
    [{ "Nearest gauge (in)": 1.5 }, []],
    [{ "Furthest gauge (in)": 1.5 }, ["flange: note gauge beyond"]],
    [{ "Furthest gauge (in)": 30 }, []],
  ] as [Row, string[]][])("%j of an angle of 2 by 2 in", (brake, kinds) => {
    const { answer, kinds: said } = found({ Flanges: "2; 2", "Bend angles": 90 }, brake);
    expect(said).toEqual(kinds);
    expect(answer.status).toBe("clear");
  });
});

describe("a shape that closes", () => {
  it("comes off over the end of the punch, and says so", () => {
    const neck = { "Height (in)": 8, "Body width (in)": 0.5, "Relief depth (in)": 1, "Relief width (in)": 6.5 };
    const { kinds } = found(C, {}, {}, neck);
    expect(kinds).toEqual([expect.stringMatching(/^bend order: check (?:slides off|none on plain tools)$/)]);
  });
});

describe("a tray", () => {
  const tray = { Flanges: "2; 12; 2", "Bend angles": 90, Width: null, "Cross flanges": "2; 9; 2", "Cross angles": 90 };
  const made = (sections: string | null, changed: Line = {}) =>
    found({ ...tray, ...changed }, {}, {}, { "Sections (in)": sections }).kinds;
  it("needs a punch that goes in between the flanges that stand, of either direction", () => {
    expect(made(null)).toEqual(["room: check box, none listed"]);
    // 12 - 0.24 = 11.76 inside, or 8.76 the other way round.
    expect(made("5; 5; 1.5; 100")).toEqual([]);
    expect(made("8.5; 100")).toEqual([]);
    expect(made("8; 10; 100")).toEqual(["room: check box"]);
  });
  it("with one end free, or flanges that hang down, needs none of the punch", () => {
    expect(made(null, { "Cross flanges": "9; 2" })).toEqual([]);
    // Down in one direction and up in the other: the die goes in between them.
    expect(made("100", { "Cross angles": -90 })).toEqual(["room: check box, none listed"]);
  });
});

it("a bend off the middle is judged by what its near side takes", () => {
  const heavy = { Material: "A36", Thickness: 0.25, Flanges: "3; 3", "Bend angles": 90, Width: 60 };
  const small: Row = { "Rated force (US ton)": 200, "Between housings (in)": 100 };
  const wide: Row = { "Opening (in)": 2, "Angle (deg)": 78, "Block width (in)": 3 };
  expect(found(heavy, small, wide).kinds).toEqual([]);
  // About 93 tons: 93 (1 + 2 x 30 / 100) = 149 of 200; of 40 in 167.
  expect(found({ ...heavy, "Off center": 30 }, small, wide).kinds).toEqual([]);
  expect(found({ ...heavy, "Off center": 40 }, small, wide).kinds).toEqual(["off center: check near side"]);
});
