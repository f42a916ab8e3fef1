/** A flat as it is cut: on the grid of the cut plan, 320 steps to the millimeter, and read as the same size. */
import { describe, expect, it } from "vitest";
import { asCut } from "../../../src/bill/cut/as-cut.ts";
import type { Blank } from "../../../src/bill/lines/blank.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";
import { mm } from "../../../src/units/quantity.ts";
import { showPlain } from "../../../src/units/show.ts";
import { UNIT_SYSTEMS } from "../../../src/units/system.ts";

const STEP = 1 / 320;

describe("a blank as it is cut", () => {
  const unit = randomFrom(34);
  const sizes = Array.from({ length: 3000 }, () => mm(10 + unit() * 2000));
  it.each(UNIT_SYSTEMS)("lies on the grid within a step, and reads as before in a shop that works in %s", (system) => {
    for (const size of sizes) {
      const { length, width } = asCut({ length: size, width: size } as Blank, system);
      expect(width).toBe(length);
      expect(Math.abs(length * 320 - Math.round(length * 320))).toBeLessThan(1e-6);
      expect(Math.abs(length - size)).toBeLessThanOrEqual(STEP + 1e-9);
      expect(showPlain(length, system)).toBe(showPlain(size, system));
      const steps = [Math.floor(size / STEP) * STEP, Math.ceil(size / STEP) * STEP];
      const readsSame = (step: number) =>
        UNIT_SYSTEMS.every((each) => showPlain(mm(step), each) === showPlain(size, each));
      // In the other units, too, where one of the two steps does.
      if (steps.some(readsSame)) expect(readsSame(length)).toBe(true);
    }
  });
});
