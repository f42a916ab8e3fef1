/** A hole beside the bend: pulled out of shape inside the tangent, oval over the open die. Common practice. */
import { describe, expect, it } from "vitest";
import type { AirEstimate } from "../../../../src/calc/bend/air-estimate.ts";
import { holeFinding } from "../../../../src/calc/bend/check/hole.ts";
import { mm } from "../../../../src/units/quantity.ts";
import { line, setup } from "./set-up.ts";

describe("a hole", () => {
  const at = (distance: number | undefined, radius: number | undefined = 4) =>
    holeFinding(line({ holeDistance: distance === undefined ? undefined : mm(distance) }), setup(), {
      radius: radius === undefined ? undefined : mm(radius),
    } as AirEstimate);
  // Tangent at R tan 45 = 4 from the inside face. Half the opening from the bend line is 12 + 4 - half the arc,
  // (pi/2)(4 + 0.42 x 3)/2 = 4.131: 11.869, more than 2t + R = 10.
  it.each([
    [3.99, "stop", "is pulled"],
    [4, "check", "goes oval"],
    [11.86, "check", "goes oval"],
    [11.87, undefined, ""],
  ] as const)("%d mm from the flange: %s", (distance, status, kind) => {
    const found = at(distance);
    expect(found?.status).toBe(status);
    if (found) expect(found.kind).toBe(kind);
    if (found) expect(found.limit).toBeCloseTo(11.869, 3);
  });
  it("2t + R rules where the opening is narrow for it", () => {
    expect(at(10, 20)?.limit).toBeCloseTo(26, 9);
  });
  it("none, or a radius that is not known, is not judged", () => {
    expect(at(undefined)).toBeUndefined();
    expect(holeFinding(line({ holeDistance: mm(1) }), setup(), { radius: undefined } as AirEstimate)).toBeUndefined();
  });
});
