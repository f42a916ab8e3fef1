/** Die opening over thickness: 6 to 12 is usual, the force formulas end at 5 and 20. Common practice. */
import { describe, expect, it } from "vitest";
import { openingFinding } from "../../../../src/calc/bend/check/opening.ts";
import { mm } from "../../../../src/units/quantity.ts";
import { die, line, setup } from "./set-up.ts";

describe("die opening", () => {
  it.each([
    [4.9, "stop", "narrow"],
    [5, "check", "narrow"],
    [5.79, "check", "narrow"],
    [5.8, undefined, ""],
    [6, undefined, ""],
    [12, undefined, ""],
    [12.1, "note", "wide"],
    [20, "note", "wide"],
    [20.1, "check", "wide"],
  ] as const)("%d thicknesses: %s", (times, status, kind) => {
    const found = openingFinding(line(), setup({ die: die({ opening: mm(3 * times) }) }));
    expect(found?.status).toBe(status);
    if (found) expect(found).toMatchObject({ kind, limit: kind === "wide" ? 12 : 6, name: "V24" });
    if (found) expect(found.figure).toBeCloseTo(times, 9);
  });

  it("a strip that the shop bent of this sheet over this die makes a wide one a note, and no other", () => {
    const strip = {
      material: "A36",
      regime: "point",
      opening: mm(66),
      thicknessFrom: mm(2.9),
      thicknessTo: mm(3.1),
      offset: 0,
    } as const;
    const measured = { ...line(), material: { ...line().material, strips: [strip] } };
    const over = (opening: number, thickness = 3) =>
      openingFinding({ ...measured, thickness: mm(thickness) }, setup({ die: die({ opening: mm(opening) }) }))?.status;
    expect([over(66), over(67), over(66, 3.2), over(66, 14)]).toEqual(["note", "check", "check", "stop"]);
  });
});
