/** A bend off the middle of the bed: the nearer side takes F (1/2 + e / S), and half the rating is each side's. Statics. */
import { expect, it } from "vitest";
import { sharpestBend } from "../../../../src/calc/bend/check/line.ts";
import { offCenterFinding } from "../../../../src/calc/bend/check/off-center.ts";
import { forceCases } from "../../../../src/calc/bend/force-cases.ts";
import { mm, newtons } from "../../../../src/units/quantity.ts";
import { BRAKE, line, setup } from "./set-up.ts";

const { expected } = forceCases(sharpestBend(line(), setup()), mm(400));
const at = (offCenter: number, share: number) =>
  offCenterFinding(
    line({ offCenter: mm(offCenter) }),
    setup({ brake: { ...BRAKE, ratedForce: newtons(expected / share) } }),
  );

it.each([
  // 500 mm off between housings of 2000 mm: the near side takes three quarters.
  [500, 0.53, undefined],
  [500, 0.54, "check"], // 1.5 x 0.54 = 0.81 of half the rating
  [500, 0.66, "check"],
  [500, 0.67, "stop"],
  [1000, 0.5, "check"], // over one housing: all of it
  [1000, 0.51, "stop"],
  [0, 0.99, undefined],
])("%d mm off, %d of the rating: %s", (offCenter, share, status) => expect(at(offCenter, share)?.status).toBe(status));

it("says what the near side takes", () =>
  expect(at(500, 0.67)).toMatchObject({
    figure: expect.closeTo(0.75 * expected, 3),
    limit: expect.closeTo(expected / 1.34, 3),
  }));
