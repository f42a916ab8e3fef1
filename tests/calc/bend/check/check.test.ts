/** All checks of one bend together. */
import { describe, expect, it } from "vitest";
import { checkBend, findingsOfBend, findingsOfTools } from "../../../../src/calc/bend/check/check.ts";
import { statusOf } from "../../../../src/calc/finding.ts";
import { mm, newtons } from "../../../../src/units/quantity.ts";
import type { Working } from "../../../../src/units/working.ts";
import { BRAKE, line, setup } from "./set-up.ts";

const about = (found: ReturnType<typeof checkBend>) => found.map(({ about: subject }) => subject);

describe("checking a bend", () => {
  it("nothing is wrong with an ordinary one", () => {
    expect(statusOf(checkBend(line(), setup(), "mm"))).toBe("clear");
  });
  it("says everything that is wrong, each once, and the worst as its working's last step", () => {
    const work: Working = [];
    const bad = line({ flanges: [mm(8), mm(60)], holeDistance: mm(1), bendLength: mm(2600) });
    const found = checkBend(bad, setup({ brake: { ...BRAKE, ratedForce: newtons(1000) } }), "mm", work);
    expect(about(found)).toEqual(expect.arrayContaining(["brake force", "room", "flange", "hole"]));
    expect(new Set(about(found)).size).toBe(found.length);
    expect(work.at(-1)).toMatchObject({ symbol: "status", value: "stop" });
  });
  it("is what the tools say and what the bend itself says, and no more", () => {
    const bad = line({ flanges: [mm(8), mm(60)], holeDistance: mm(1) });
    const parts = [...findingsOfTools(bad, setup(), "mm"), ...findingsOfBend(bad, setup())];
    expect(checkBend(bad, setup(), "mm")).toEqual(parts);
  });
});
