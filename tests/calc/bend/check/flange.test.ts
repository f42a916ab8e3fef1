/** A flange must reach the die's edge (geometry) and rest well on it (common practice). */
import { describe, expect, it } from "vitest";
import { flangeFinding } from "../../../../src/calc/bend/check/flange.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { die, line, setup } from "./set-up.ts";

describe("flange over a 24 mm die, 3 mm sheet, square", () => {
  // Edge at 24 / (2 sin 45) = 16.971; half a thickness and a shoulder of 0.5 more, up to the next millimeter: 19.
  // A shoulder that is not given adds none, and 18.471 is 19 as well.
  const flange = (length: number, shoulder?: number) =>
    flangeFinding(
      line({ flanges: [mm(200), mm(length)] }),
      setup({ die: die({ shoulder: shoulder === undefined ? undefined : mm(shoulder) }) }),
      "mm",
    );
  it.each([
    [16.9, "stop", "falls in"],
    [17, "check", "barely rests"],
    [18.9, "check", "barely rests"],
    [19, undefined, ""],
  ] as const)("%d mm: %s", (length, status, kind) => {
    const found = flange(length, 0.5);
    expect(found?.status).toBe(status);
    if (found) expect(found).toMatchObject({ kind, figure: length, limit: 19, name: "V24" });
  });

  it("a shoulder radius asks for more; in inches it is rounded up to 1/16", () => {
    expect(flange(19, 2)).toMatchObject({ status: "check", limit: 21 });
    expect(flange(18.9)).toEqual(flange(18.9, 0));
    const inches = flangeFinding(line({ flanges: [mm(10), mm(60)] }), setup(), "in")!;
    expect(inches.limit! / 25.4).toBeCloseTo(0.75, 9); // 0.7272 in
  });

  it("the sharpest bend decides, whichever way it goes", () => {
    const sharp = { flanges: [mm(20), mm(40), mm(20)], bendAngles: [degrees(60), degrees(-120)] };
    // 24 / (2 sin 30) = 24: the flanges of 20 fall in.
    expect(flangeFinding(line(sharp), setup({ die: die({ angle: degrees(50) }) }), "mm")).toMatchObject({
      kind: "falls in",
    });
    // A die of 80 degrees lets go of it at 100: 24 / (2 sin 40) = 18.7.
    expect(flangeFinding(line(sharp), setup(), "mm")).toMatchObject({ kind: "barely rests" });
  });
});
