/** Bed and tools as long as the bend. Geometry. */
import { describe, expect, it } from "vitest";
import { roomFindings } from "../../../../src/calc/bend/check/room.ts";
import type { Material } from "../../../../src/data/materials/material.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { BRAKE, die, line, material, punch, setup } from "./set-up.ts";

describe("room", () => {
  const kinds = (bendLength: number) =>
    roomFindings(
      line({ bendLength: mm(bendLength) }),
      setup({ die: die({ length: mm(1500) }), punch: punch({ length: mm(1000) }) }),
    ).map(({ kind, status, limit }) => [kind, status, limit]);
  it.each([
    [1000, []],
    [1001, [["punch", "stop", 1000]]],
    [1500, [["punch", "stop", 1000]]],
    // Die and bed are too short as well: the shortest says it for all.
    [1501, [["punch", "stop", 1000]]],
    [2501, [["punch", "stop", 1000]]],
  ])("a bend of %d mm", (bendLength, found) => expect(kinds(bendLength)).toEqual(found));

  /*
   * 3 mm over 24 mm of 80 degrees, shoulder 2 mm, its center 12 + 2 tan 25 = 12.933 mm out; a sheet of no springback turns
   * 45 degrees: 12.933 - (R + 5) sin 45 is left, 3 cos 45 of it wanted.
   */
  it("a nose must leave some straight sheet beside it: 3 mm, or a check up to where it nips", () => {
    const { modulus: _, ...stiff } = material("A36");
    const nose = (radius: number) =>
      roomFindings(
        line({ material: stiff as Material }),
        setup({ die: die({ shoulder: mm(2) }), punch: punch({ nose: mm(radius) }) }),
      ).map(({ kind, status, limit }) => [kind, status, Number(limit!.toFixed(2))]);
    expect(nose(10.28)).toEqual([]);
    expect(nose(10.3)).toEqual([["nose fills", "check", 10.29]]);
    expect(nose(13.28)).toEqual([["nose fills", "check", 10.29]]);
    expect(nose(13.3)).toEqual([["nose", "stop", 10.29]]);
  });

  it("a length that stands in no table is not judged", () => {
    expect(roomFindings(line({ bendLength: mm(2500) }), { brake: BRAKE, die: die() })).toEqual([]);
  });

  it("a tool of sections alone is as long as all of them together", () => {
    const tools = { die: die({ sections: [mm(300), mm(100)] }), punch: punch({ sections: [mm(200), mm(200)] }) };
    expect(roomFindings(line({ bendLength: mm(400) }), setup(tools))).toEqual([]);
    expect(roomFindings(line({ bendLength: mm(401) }), setup(tools))).toMatchObject([{ kind: "die", limit: 400 }]);
  });

  describe("behind a bend that is longer than the housings less 1 in", () => {
    const throat = (bendLength: number, flanges: number[], stated?: number) =>
      roomFindings(
        line({
          bendLength: mm(bendLength),
          flanges: flanges.map(mm),
          bendAngles: flanges.slice(1).map(() => degrees(90)),
        }),
        setup({ brake: { ...BRAKE, throat: stated === undefined ? undefined : mm(stated) } }),
      ).map(({ kind, status, figure, limit }) => [kind, status, figure, limit]);
    it.each([
      // 2000 less 25.4: up to here the sheet goes through between the housings.
      [1974.6, [400, 500], 300, []],
      [1974.7, [400, 500], 300, [["throat", "stop", 400, 300]]],
      // The shorter side goes behind, whichever it is.
      [2200, [300, 500], 300, []],
      [2200, [500, 301], 300, [["throat", "stop", 301, 300]]],
      // A channel's base is folded up on one side of its second bend.
      [2200, [60, 900, 60], 300, []],
      // Of a throat that nobody stated 8 in is taken, and it is asked about.
      [2200, [203, 500], undefined, []],
      [2200, [204, 500], undefined, [["throat not stated", "check", 204, 203.2]]],
    ] as [number, number[], number | undefined, unknown[]][])("%d mm long, flanges %j, throat %s", (...given) =>
      expect(throat(given[0], given[1], given[2])).toEqual(given[3]),
    );
  });
});
