/**
 * A press brake seen from its end, as far as the tables of brakes, dies and punches tell: a V with its shoulders in its
 * block, a wedge with its nose and, where it is stated, the throat of a gooseneck; ram and bed no wider than they,
 * because nothing is known of them. What no table states is drawn by an assumption, which `unstated` names.
 */

import { type Millimeters, mm, radians } from "../../../units/quantity.ts";
import { remember } from "../../../units/remember.ts";
import type { Brake, Die, Punch } from "../tooling.ts";
import type { Press } from "./press.ts";
import { type Corner, outline, type PunchSizes, punchOutline } from "./punch-outline.ts";
import { shoulderCenter } from "./seat.ts";
import type { Outline } from "./solid.ts";

/** Sizes taken where the tables state none, mm (chosen): those of common tools, and the leanest that a tool may have. */
export interface Assumed extends PunchSizes {
  /** Of a die's block beside its shoulders. */
  readonly dieWall: number;
}
export const USUAL: Assumed = { bodyWidth: 24, punchHeight: 120, dieWall: 12 };
export const LEAN: Assumed = { bodyWidth: 12, punchHeight: 300, dieWall: 3 };

const RAM_HEIGHT = 400;
const BED_DEPTH = 600;
const OPEN_HEIGHT = 250;
/** What lies beyond the gauge's travel is scribed, so that no order fails by it; a press that is drawn ends at 10 m. */
export const ANY_STOP = 9999;
/** Millimeters (assumed, chosen): a sheet whose stop rests on the height says so. */
const FINGER = { length: 60, height: 15 };
const ARC_STEPS = 8;

/** Only what is drawn, so that a change of a rating draws nothing anew. */
export type DrawnBrake = Pick<Brake, "daylight" | "shutHeight" | "stroke">;

export const plainPress = remember(
  256,
  (die: Die, punch: Punch | undefined, brake: DrawnBrake = {}, assumed: Assumed = USUAL): Press =>
    drawPress(brake, die, punch, assumed),
);

function drawPress(brake: DrawnBrake, die: Die, punch: Punch | undefined, assumed: Assumed): Press {
  const shoulderRadius = die.shoulder ?? mm(0);
  const half = radians(die.angle) / 2;
  const depth = die.opening / 2 / Math.tan(half);
  const bottom = -Math.max(die.blockHeight ?? 0, depth + (die.blockHeight === undefined ? 2 * USUAL.dieWall : 1));
  const drawnPunch = punchOutline(punch, assumed);
  const top = Math.max(...drawnPunch.map(([, y]) => y));
  // Tools that fill the brake altogether are a finding of their own: here they only must not be drawn into each other.
  const openHeight = brake.daylight === undefined ? OPEN_HEIGHT : Math.max(1, brake.daylight - top + bottom);
  const common = {
    dieOpening: die.opening,
    shoulderRadius,
    dieAngle: die.angle,
    gaugeFrom: mm(0),
    gaugeTo: mm(FINGER.height),
    nearestStop: mm(0),
    furthestStop: mm(ANY_STOP),
    fingerRetracts: true,
    openHeight: mm(openHeight),
    // A stroke that nobody stated is never too short.
    stroke: strokeOf(brake) ?? mm(openHeight + depth),
    clearance: mm(1),
    offTheEnd: true,
  };
  const center = shoulderCenter({ ...common, punch: [], ram: [], die: [], bed: [], finger: [] });
  const least = Math.max(center, die.opening / 2) + 0.1;
  const wide = die.blockWidth === undefined ? least + assumed.dieWall : Math.max(least, die.blockWidth / 2);
  const body = Math.max(...drawnPunch.filter(([, y]) => y > top - 1e-6).map(([x]) => x));
  return {
    ...common,
    punch: drawnPunch,
    ram: box(-body, top, body, top + RAM_HEIGHT),
    die: outline([
      ...shoulder(center, shoulderRadius, half, die.opening)
        .map(([x, y]): Corner => [-x, y])
        .reverse(),
      [0, -depth],
      ...shoulder(center, shoulderRadius, half, die.opening),
      [wide, 0],
      [wide, bottom],
      [-wide, bottom],
      [-wide, 0],
    ]),
    bed: box(-wide, bottom - BED_DEPTH, wide, bottom),
    finger: box(0, 0, FINGER.length, FINGER.height),
  };
}

/** Of the ram, stated or by the difference of its two ends. */
function strokeOf({ stroke, daylight, shutHeight }: DrawnBrake): Millimeters | undefined {
  if (stroke !== undefined) return stroke;
  return daylight === undefined || shutHeight === undefined ? undefined : mm(Math.max(1, daylight - shutHeight));
}

/** What of punch and die is drawn by an assumption, to be measured where it decides. */
export interface Unstated {
  readonly punch: readonly string[];
  readonly die: readonly string[];
}

export const unstated = (die: Die, punch: Punch | undefined): Unstated => ({
  punch: [
    ...(punch?.bodyWidth === undefined ? ["body width"] : []),
    ...(punch?.height === undefined ? ["height"] : []),
  ],
  die: [
    ...(die.blockWidth === undefined ? ["block width"] : []),
    ...(die.blockHeight === undefined ? ["block height"] : []),
  ],
});

const box = (left: number, bottom: number, right: number, top: number): Outline =>
  outline([
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ]);

/** From the flank of the V up and round to the die's top, right side. */
function shoulder(center: number, radius: number, half: number, opening: number): Corner[] {
  if (radius === 0) return [[opening / 2, 0]];
  const [from, to] = [Math.PI - half, Math.PI / 2];
  return Array.from({ length: ARC_STEPS + 1 }, (_, i): Corner => {
    const angle = from + ((to - from) * i) / ARC_STEPS;
    return [center + radius * Math.cos(angle), -radius + radius * Math.sin(angle)];
  });
}
