/** What a press lacks for a hit, by how much: given just that more it is no longer in the way, given less it still is. */
import { describe, expect, test } from "vitest";
import { Hits } from "../../../../src/calc/bend/order/hit.ts";
import { checkPart } from "../../../../src/calc/bend/order/part.ts";
import type { Press } from "../../../../src/calc/bend/order/press.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { samplePress } from "./sample-press.ts";
import { BD, square } from "./square-part.ts";

/** Its stop is 60 less half a deduction. */
const angle = square([40, 60], [1]);

function inTheWay(change: Partial<Record<keyof Press, number>>) {
  const press = { ...samplePress, ...change } as Press;
  const found = new Hits(angle, [degrees(2)], press).reading(0, { bend: 1, gaugedEnd: "last" }).collision?.();
  return found && { tool: found.tool, by: found.by };
}

describe("a press that lacks something for a square angle", () => {
  test("the sample press lacks nothing", () => {
    expect(inTheWay({})).toBeUndefined();
  });

  test("stroke: from open down to the die and on into it", () => {
    const short = inTheWay({ stroke: 140 });
    expect(short?.tool).toBe("ram travel");
    // Open 150 over the die, and into V 16 less than the 8 of a sharp square corner, by the round of 2 and its sheet at most half of it.
    expect(short!.by).toBeGreaterThan(10 + 4);
    expect(short!.by).toBeLessThan(10 + 8);
    expect(inTheWay({ stroke: 140 + short!.by })).toBeUndefined();
    expect(inTheWay({ stroke: 140 + short!.by - 0.01 })?.tool).toBe("ram travel");
    expect(inTheWay({ stroke: 130 })?.by).toBeCloseTo(short!.by + 10, 9);
  });

  test("open height: the sheet must pass under the punch", () => {
    expect(inTheWay({ openHeight: 1.5 })).toEqual({ tool: "open height", by: 0.5 });
    expect(inTheWay({ openHeight: 2 })).toEqual({ tool: "open height", by: 0 });
    expect(inTheWay({ openHeight: 30, stroke: 60 })?.tool).not.toBe("open height");
  });

  test("gauge travel: too short or too far for the stop of 60 less half a deduction", () => {
    const stop = 60 - BD / 2;
    const far = inTheWay({ furthestStop: 50 });
    expect(far?.tool).toBe("gauge travel");
    expect(far!.by).toBeCloseTo(stop - 50, 9);
    const near = inTheWay({ nearestStop: 70 });
    expect(near?.tool).toBe("gauge travel");
    expect(near!.by).toBeCloseTo(70 - stop, 9);
    expect(inTheWay({ nearestStop: stop })).toBeUndefined();
    expect(inTheWay({ furthestStop: stop })).toBeUndefined();
  });

  test("a finger above the sheet, or below it, touches nothing", () => {
    expect(inTheWay({ gaugeFrom: 5, gaugeTo: 25 })).toEqual({ tool: "finger", by: 3 });
    expect(inTheWay({ gaugeFrom: 1.9, gaugeTo: 25 })?.tool).not.toBe("finger");
    expect(inTheWay({ gaugeFrom: -30, gaugeTo: -4 })).toEqual({ tool: "finger", by: 4 });
  });
});

describe("a part that no sheet can be", () => {
  test("has a bend, and a flange more than bends", () => {
    expect(() => checkPart({ ...angle, bends: [] })).toThrow(/^bend_angles must be 1 to \d+ parallel bends; got 0/);
    expect(() => checkPart({ ...angle, flanges: [mm(40)] })).toThrow(/^flanges must be one more than the bends \(2\)/);
  });

  test("names the deductions its angle, radius and thickness allow", () => {
    // Setbacks 2 (2 + 2) = 8, zone from 2 pi/2 = 3.1416 to 4 pi/2 = 6.2832: by hand 1.7168 to 4.8584.
    const ask = (deduction: number) =>
      checkPart({ ...angle, bends: [{ ...angle.bends[0]!, deduction: mm(deduction) }] });
    expect(() => ask(1)).toThrow(/^deduction of bend 1 must be 0\.06759 in \(1\.717 mm\) to 0\.1913 in \(4\.858 mm\)/);
    expect(() => ask(1.717)).not.toThrow();
    expect(() => ask(4.858)).not.toThrow();
    expect(() => ask(4.86)).toThrow(/^deduction of bend 1/);
  });
});
