/** Every die of a shop for one bend, best first. Common practice: as near as may be to 8 thicknesses. */
import { describe, expect, it } from "vitest";
import { checkBend } from "../../../../src/calc/bend/check/check.ts";
import { fromUsual, rankDies } from "../../../../src/calc/bend/tools/die-choice.ts";
import { STATUSES, statusOf } from "../../../../src/calc/finding.ts";
import { mm } from "../../../../src/units/quantity.ts";
import { BRAKE, die, line, punch } from "../check/set-up.ts";

const dies = [12, 16, 24, 32, 40, 63].map((opening) => die({ name: `V${opening}`, opening: mm(opening) }));

describe("dies", () => {
  it("half and twice the usual opening are equally far from it", () => {
    expect(fromUsual(die(), mm(3))).toBe(0);
    expect(fromUsual(die({ opening: mm(12) }), mm(3))).toBeCloseTo(Math.log(2), 12);
    expect(fromUsual(die({ opening: mm(48) }), mm(3))).toBeCloseTo(Math.log(2), 12);
  });
  it("by status, then by how near the opening is to 8 thicknesses; each status is what the check says", () => {
    const ranked = rankDies(line({ flanges: [mm(20), mm(60)] }), dies, BRAKE, punch(), "mm");
    const rank = ranked.map(({ status }) => STATUSES.indexOf(status));
    expect(rank).toEqual([...rank].sort());
    expect(new Set(rank).size).toBeGreaterThan(1);
    expect(ranked[0]!.die.name).toBe("V24");
    for (const { die: one, status } of ranked)
      expect(
        statusOf(checkBend(line({ flanges: [mm(20), mm(60)] }), { brake: BRAKE, die: one, punch: punch() }, "mm")),
      ).toBe(status);
  });
  it("the order of the table changes nothing", () => {
    const of = (table: typeof dies) => rankDies(line(), table, BRAKE, punch(), "mm").map(({ die: one }) => one.name);
    const twins = [...dies, die({ name: "A24" })];
    expect(of([...twins].reverse())).toEqual(of(twins));
    expect(of(twins).slice(0, 2)).toEqual(["A24", "V24"]);
  });
});
