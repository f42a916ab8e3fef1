/** Bed and tools as long as the bend. Geometry. */
import { describe, expect, it } from "vitest";
import { roomFindings } from "../../../../src/calc/bend/check/room.ts";
import { mm } from "../../../../src/units/quantity.ts";
import { BRAKE, die, line, punch, setup } from "./set-up.ts";

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

  it("a nose must leave the sheet's outer face between the die's edges: (R + 3) sin 45 at most 12 mm", () => {
    const nose = (radius: number) => roomFindings(line(), setup({ punch: punch({ nose: mm(radius) }) }));
    expect(nose(13.97)).toEqual([]);
    expect(nose(13.98)).toMatchObject([
      { kind: "nose", status: "stop", figure: 13.98, limit: expect.closeTo(13.9706, 4) },
    ]);
  });

  it("a length that stands in no table is not judged", () => {
    expect(roomFindings(line({ bendLength: mm(2500) }), { brake: BRAKE, die: die() })).toEqual([]);
  });
});
