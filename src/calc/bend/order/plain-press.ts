/**
 * A press brake seen from its end, as far as the die and punch tables tell: a V with its shoulders, a wedge with its
 * nose; ram and bed no wider than they, because nothing is known of them. It shows how a bend sits and proposes an order;
 * it is not the outline of a real tool, against which the order must be tried.
 */

import { degrees, mm, radians } from "../../../units/quantity.ts";
import { remember } from "../../../units/remember.ts";
import type { Die, Punch } from "../tooling.ts";
import type { Press } from "./press.ts";
import { shoulderCentre } from "./seat.ts";
import type { Outline } from "./solid.ts";

/** Plain sizes of what the tables do not state, mm (chosen, about those of a small brake): they decide what is found in the way. */
const PUNCH_HEIGHT = 120;
const PUNCH_HALF_WIDTH = 12;
const DIE_WALL = 12;
const RAM_HEIGHT = 400;
const BED_DEPTH = 600;
const OPEN_HEIGHT = 250;
const STROKE = 300;
const FURTHEST_STOP = 1000;
const FINGER = { length: 60, height: 15 };
const ARC_STEPS = 8;

export const plainPress = remember(256, (die: Die, punch: Punch | undefined): Press => drawPress(die, punch));

function drawPress(die: Die, punch: Punch | undefined): Press {
  const shoulderRadius = die.shoulder ?? mm(0);
  const common = {
    dieOpening: die.opening,
    shoulderRadius,
    dieAngle: die.angle,
    gaugeFrom: mm(0),
    gaugeTo: mm(FINGER.height),
    nearestStop: mm(0),
    furthestStop: mm(FURTHEST_STOP),
    fingerRetracts: true,
    openHeight: mm(OPEN_HEIGHT),
    stroke: mm(STROKE),
    clearance: mm(1),
    offTheEnd: true,
  };
  const depth = die.opening / 2 / Math.tan(radians(die.angle) / 2);
  const bottom = -(depth + DIE_WALL * 2);
  const centre = shoulderCentre({ ...common, punch: [], ram: [], die: [], bed: [], finger: [] });
  const half = Math.max(centre + DIE_WALL, die.opening / 2 + DIE_WALL);
  return {
    ...common,
    punch: punchOutline(punch),
    ram: box(-PUNCH_HALF_WIDTH, PUNCH_HEIGHT, PUNCH_HALF_WIDTH, PUNCH_HEIGHT + RAM_HEIGHT),
    die: outline([
      ...mirrored(shoulder(centre, shoulderRadius, radians(die.angle) / 2, die.opening)),
      [0, -depth],
      ...shoulder(centre, shoulderRadius, radians(die.angle) / 2, die.opening),
      [half, 0],
      [half, bottom],
      [-half, bottom],
      [-half, 0],
    ]),
    bed: box(-half, bottom - BED_DEPTH, half, bottom),
    finger: box(0, 0, FINGER.length, FINGER.height),
  };
}

type Corner = readonly [number, number];
const outline = (corners: readonly Corner[]): Outline => corners.map(([x, y]) => [mm(x), mm(y)] as const);
const mirrored = (corners: readonly Corner[]): Corner[] => corners.map(([x, y]): Corner => [-x, y]).reverse();
const box = (left: number, bottom: number, right: number, top: number): Outline =>
  outline([
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ]);

/** From the flank of the V up and round to the die's top, right side. */
function shoulder(centre: number, radius: number, half: number, opening: number): Corner[] {
  if (radius === 0) return [[opening / 2, 0]];
  const [from, to] = [Math.PI - half, Math.PI / 2];
  return arc(centre, -radius, radius, from, to);
}

function punchOutline(punch: Punch | undefined): Outline {
  const half = radians(punch?.angle ?? degrees(60)) / 2;
  const nose = punch?.nose ?? 0;
  // The round nose, then the flank up to the body.
  const right = nose > 0 ? arc(0, nose, nose, -Math.PI / 2, -half) : [[0, 0] as Corner];
  const [x, y] = right.at(-1)!;
  const width = Math.max(PUNCH_HALF_WIDTH, nose * 1.2);
  const body: Corner[] = [
    [width, y + (width - x) / Math.tan(half)],
    [width, PUNCH_HEIGHT],
  ];
  const whole: Corner[] = [...right, ...body];
  return outline([...whole, ...mirrored(whole.slice(1))]);
}

const arc = (x: number, y: number, radius: number, from: number, to: number): Corner[] =>
  Array.from({ length: ARC_STEPS + 1 }, (_, i): Corner => {
    const angle = from + ((to - from) * i) / ARC_STEPS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
