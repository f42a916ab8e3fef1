/** The angle under load against the faces of die and punch; a few degrees past them thin sheet bottoms. Common practice. */
import { describe, expect, it } from "vitest";
import type { AirEstimate } from "../../../../src/calc/bend/air-estimate.ts";
import { type BendLine, type Setup, sharpestBend } from "../../../../src/calc/bend/check/line.ts";
import { loadedAngleFindings } from "../../../../src/calc/bend/check/loaded-angle.ts";
import { forceCases } from "../../../../src/calc/bend/force-cases.ts";
import { degrees, mm, newtons, newtonsPerMillimeter } from "../../../../src/units/quantity.ts";
import { BRAKE, die, line, material, punch, setup } from "./set-up.ts";

const sharp = punch({ angle: degrees(30) });
const spring = (springback: number) => ({ springback: degrees(springback) }) as AirEstimate;
const inDie = (angle: number, springback = 2, changed: Partial<BendLine> = {}, tools: Partial<Setup> = {}) =>
  loadedAngleFindings(
    line(changed),
    setup({ punch: sharp, die: die({ angle: degrees(angle) }), ...tools }),
    spring(springback),
  );
const said = (...given: Parameters<typeof inDie>) => inDie(...given).map(({ status, kind }) => `${status} ${kind}`);

describe("92 degrees under load leave 88 included", () => {
  it.each([
    [87.5, []], // half a degree of room, the least band
    [87.6, ["note is near die"]],
    [88, ["note is near die"]],
    [88.1, ["check bottoms die"]],
    [91, ["check bottoms die"]], // 3 degrees past the face
    [91.1, ["stop passes die"]],
  ])("a die of %d degrees", (angle, found) => expect(said(angle)).toEqual(found));

  it("the band is a quarter of the springback where that is more", () => {
    // 94 under load leave 86; the band is 1 degree.
    expect(said(85, 4)).toEqual([]);
    expect(said(85.1, 4)).toEqual(["note is near die"]);
    expect(inDie(85.1, 4)[0]).toMatchObject({
      figure: 94,
      limit: 180 - 85.1,
      beside: 4,
      quantity: "angle",
      name: "V24",
    });
  });

  it("sheet too thick to be bottomed must keep clear of the faces", () => {
    expect(said(87.5, 2, { thickness: mm(4) })).toEqual([]);
    expect(said(87.6, 2, { thickness: mm(4) })).toEqual(["check touches die"]);
    expect(said(88.1, 2, { thickness: mm(4) })).toEqual(["stop passes die"]);
  });

  it("what no V die reaches is told how else it is closed, without a figure of its springback", () => {
    for (const angle of [150.1, 170, 179.9])
      for (const springback of [2, 40, 600])
        expect(inDie(80, springback, { bendAngles: [degrees(angle)] })).toMatchObject([
          { kind: "no die", status: "stop", figure: angle, limit: 150 },
        ]);
    expect(said(26, 2, { bendAngles: [degrees(150)] }, { punch: punch({ angle: degrees(24) }) })).toEqual([]);
  });

  it("the punch is asked too, and only where there is one", () => {
    const blunt = setup({ punch: punch({ angle: degrees(92) }) });
    expect(loadedAngleFindings(line(), blunt, spring(2))).toMatchObject([{ kind: "passes punch", status: "stop" }]);
    expect(loadedAngleFindings(line(), { brake: BRAKE, die: die() }, spring(2))).toEqual([]);
  });
});

describe("bottoming is within reach", () => {
  it.each([
    ["A36", 3.175, "check bottoms die"],
    ["A36", 3.2, "stop passes die"],
    ["304", 1.98, "check bottoms die"], // 14 ga, 0.0781 in
    ["304", 2, "stop passes die"],
  ] as const)("of %s up to its thickness: %d mm, %s", (name, thickness, found) => {
    expect(said(90, 2, { material: material(name), thickness: mm(thickness) })).toEqual([found]);
  });

  const { expected, worst } = forceCases(sharpestBend(line(), setup()), mm(400));
  const most = Math.max(5 * expected, 3 * worst);
  it("where 5 times the expected and 3 times the worst force fit the brake", () => {
    // Housings this near leave the beam its whole rating: 400 mm of bend over 60 % of 500 mm.
    const on = (force: number) =>
      said(90, 2, {}, { brake: { ...BRAKE, betweenHousings: mm(500), ratedForce: newtons(force) } });
    expect(on(most)).toEqual(["check bottoms die"]);
    expect(on(most / 1.001)).toEqual(["stop passes die"]);
  });
  it("and its beam, which takes the rating over 60 % of the distance between the housings", () => {
    // 400 mm of bend may take 400 / 1200 of the rating where the housings are 2000 mm apart.
    const on = (force: number) => said(90, 2, {}, { brake: { ...BRAKE, ratedForce: newtons(force) } });
    expect(on(3 * most * 1.001)).toEqual(["check bottoms die"]);
    expect(on((3 * most) / 1.001)).toEqual(["stop passes die"]);
  });
  it.each(["die", "punch"] as const)("and the %s", (tool) => {
    const on = (load: number) => {
      const rating = newtonsPerMillimeter(load / 400);
      const tools = { die: die({ angle: degrees(90) }), punch: sharp };
      return said(90, 2, {}, { ...tools, [tool]: { ...tools[tool], rating } });
    };
    expect(on(most * 1.001)).toEqual(["check bottoms die"]);
    expect(on(most / 1.001)).toEqual(["stop passes die"]);
  });
});

it("a springback that is not known is a note", () => {
  expect(loadedAngleFindings(line(), setup(), { springback: undefined } as AirEstimate)).toEqual([
    { about: "springback", status: "note", kind: "unknown", name: "A36" },
  ]);
});
