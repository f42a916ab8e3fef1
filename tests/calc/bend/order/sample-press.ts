import type { Press } from "../../../../src/calc/bend/order/press.ts";
import type { Outline } from "../../../../src/calc/bend/order/solid.ts";
import { degrees, mm } from "../../../../src/units/quantity.ts";

export const outline = (...points: [number, number][]): Outline => points.map(([x, y]) => [mm(x), mm(y)] as const);

/** Area within a polygon, taken round in either sense. */
export const area = (points: readonly (readonly [number, number])[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length]!;
      return sum + x * v - u * y;
    }, 0),
  ) / 2;

/** Whether a point lies in a polygon: a line from it to the right crosses its sides an odd number of times. */
export const inside = (points: readonly (readonly [number, number])[], x: number, y: number): boolean =>
  points.reduce((odd, [ax, ay], i) => {
    const [bx, by] = points[(i + 1) % points.length]!;
    return ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay) ? !odd : odd;
  }, false);

/**
 * An invented press of plain shapes: V 16 with sharp shoulders and an 80 degree die 40 wide, a straight punch of
 * 60 degrees that becomes 20 wide, a ram 80 wide that starts 120 above the punch tip.
 */
export const samplePress: Press = {
  punch: outline([0, 0], [10, 17.320508], [10, 120], [-10, 120], [-10, 17.320508]),
  ram: outline([-40, 120], [40, 120], [40, 600], [-40, 600]),
  die: outline([-20, 0], [-8, 0], [0, -9.534], [8, 0], [20, 0], [20, -60], [-20, -60]),
  bed: outline([-50, -60], [50, -60], [50, -700], [-50, -700]),
  finger: outline([0, 0], [60, 0], [60, 25], [0, 25]),
  dieOpening: mm(16),
  shoulderRadius: mm(0),
  dieAngle: degrees(80),
  gaugeFrom: mm(0),
  gaugeTo: mm(25),
  fingerRetracts: true,
  nearestStop: mm(5),
  furthestStop: mm(700),
  openHeight: mm(150),
  stroke: mm(200),
  clearance: mm(1),
  offTheEnd: false,
};

/** A punch that is hollow behind its tip: an outline that is not convex. */
export const gooseneck = outline(
  [0, 0],
  [6, 12],
  [-8, 40],
  [-8, 80],
  [12, 110],
  [12, 120],
  [-10, 120],
  [-22, 90],
  [-22, 30],
  [-6, 10],
);
