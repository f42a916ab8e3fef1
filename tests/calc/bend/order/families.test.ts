import { describe, expect, test } from "vitest";
import { bendOrder } from "../../../../src/calc/bend/order/order.ts";
import type { BentPart } from "../../../../src/calc/bend/order/part.ts";
import type { Press } from "../../../../src/calc/bend/order/press.ts";
import { randomFrom } from "../../../../src/tools/random/random.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";
import { deductionFor } from "./random-part.ts";
import { outline, samplePress } from "./sample-press.ts";

/**
 * Limits of three families from plane trigonometry (derived here, independent of the code under test). Under load a bend
 * of 90 degrees is turned by 2a = 90 + springback. The corner of the outside faces is on the middle of the V; along the
 * web from there a neighboring flange's outside stands at D = (r' + t) tan a + web - (r + t), where r' is the radius
 * under load: BA / (2a) - kt, with BA = (pi / 2) (r + kt), kt = 0.42 t. A point at `along` the web and `high` above its
 * outside face is at x = along cos a - high sin a. A straight punch of half width w is met where x falls to w.
 */
interface Case {
  t: number;
  r: number;
  w: number;
  web: number;
  springback: number;
  leg: number;
}
const cases: Case[] = Array.from({ length: 12 }, (_, i) => {
  const draw = randomFrom(i + 1);
  const between = (low: number, high: number) => low + (high - low) * draw();
  const t = between(1, 4);
  return {
    t,
    r: t * between(0.8, 1.5),
    w: between(4, 10),
    web: between(70, 130),
    springback: between(0, 4),
    leg: between(35, 50),
  };
});

function loaded({ t, r, web, springback }: Case): { a: number; D: number } {
  const a = ((90 + springback) * Math.PI) / 360;
  const radius = ((Math.PI / 2) * (r + 0.42 * t)) / (2 * a) - 0.42 * t;
  return { a, D: (radius + t) * Math.tan(a) + web - (r + t) };
}

const part = (c: Case, flanges: number[], angles: number[]): BentPart => ({
  thickness: mm(c.t),
  flanges: flanges.map(mm),
  bends: angles.map((a) => ({ angle: degrees(a), deduction: mm(deductionFor(a, c.r, c.t)), insideRadius: mm(c.r) })),
});

/** Tall tools, so that only the punch's side, or the die's, can be in the way. */
const press = (w: number, dieHalf = 14): Press => ({
  ...samplePress,
  punch: outline([0, 0], [w, 2.5 * w], [w, 900], [-w, 900], [-w, 2.5 * w]),
  ram: outline([-60, 900], [60, 900], [60, 1500], [-60, 1500]),
  die: outline([-dieHalf, 0], [-8, 0], [0, -13.856], [8, 0], [dieHalf, 0], [dieHalf, -400], [-dieHalf, -400]),
  bed: outline([-60, -400], [60, -400], [60, -900], [-60, -900]),
  dieAngle: degrees(60),
  openHeight: mm(1000),
  stroke: mm(1100),
  clearance: mm(0),
  offTheEnd: true,
});

const feasible = (c: Case, p: BentPart, tools: Press) =>
  bendOrder(
    p,
    p.bends.map(() => degrees(c.springback)),
    tools,
  ).feasible;

/** The value between `good` and `bad` where feasibility ends. */
function limit(good: number, bad: number, ok: (value: number) => boolean): number {
  expect(ok(good)).toBe(true);
  expect(ok(bad)).toBe(false);
  while (Math.abs(good - bad) > 1e-4) {
    const middle = (good + bad) / 2;
    if (ok(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

describe("Limits of part families to 0.01 mm", () => {
  test.each(cases)("U: leg up to ((D - t) cos a - w) / sin a; t $t, web $web", (c) => {
    const { a, D } = loaded(c);
    const longest = ((D - c.t) * Math.cos(a) - c.w) / Math.sin(a);
    const found = limit(25, longest + 20, (leg) => feasible(c, part(c, [leg, c.web, leg], [90, 90]), press(c.w)));
    expect(Math.abs(found - longest)).toBeLessThan(0.01);
  });

  test.each(cases)("Z: web down to die half width + r + t + BD / 2; t $t", (c) => {
    const dieHalf = 16 + c.leg / 4;
    const least = dieHalf + c.r + c.t + deductionFor(90, c.r, c.t) / 2;
    const found = limit(least + 20, least - 4, (web) =>
      feasible(c, part(c, [40, web, 40], [90, -90]), press(c.w, dieHalf)),
    );
    expect(Math.abs(found - least)).toBeLessThan(0.01);
  });

  test.each(cases)(
    "lip channel: lip up to the lesser of D - (w + leg sin a) / cos a and the limit of the swung lip; t $t",
    (given) => {
      // A web little wider than the leg, so that now one and now the other limit rules. It is still too wide for an order
      // that makes a lip last: then the web would stand where the lip does.
      const c = { ...given, web: given.leg + 1.5 * given.w + given.web / 2 - 10 };
      const { a, D } = loaded(c);
      // The lip made before stands across the web: its outer corner, at the leg's height, comes nearest to the punch.
      const opposite = D - (c.w + c.leg * Math.sin(a)) / Math.cos(a);
      // The lip on the leg that is swung up: its inside stands at D_leg - t along the leg.
      const swung = ((loaded({ ...c, web: c.leg }).D - c.t) * Math.cos(a) - c.w) / Math.sin(a);
      const longest = Math.min(opposite, swung);
      const found = limit(longest - 3, longest + 10, (lip) =>
        feasible(c, part(c, [lip, c.leg, c.web, c.leg, lip], [90, 90, 90, 90]), press(c.w)),
      );
      expect(Math.abs(found - longest)).toBeLessThan(0.01);
    },
  );
});
