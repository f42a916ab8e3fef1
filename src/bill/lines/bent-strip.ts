/** How a strip of a line is bent: order and stops, on the shop's tool outlines or else on tools drawn from their tables. */

import { askedOver, estimateAirBend } from "../../calc/bend/air-estimate.ts";
import { pressedShare } from "../../calc/bend/check/bottoming.ts";
import type { Setup } from "../../calc/bend/check/line.ts";
import { type BendOrder, bendOrder, type OrderedHit } from "../../calc/bend/order/order.ts";
import { type BentPart, bendOf } from "../../calc/bend/order/part.ts";
import {
  ANY_STOP,
  type Assumed,
  type DrawnBrake,
  LEAN,
  plainPress,
  type Unstated,
  unstated,
} from "../../calc/bend/order/plain-press.ts";
import { checkPress, type Press } from "../../calc/bend/order/press.ts";
import { seat } from "../../calc/bend/order/seat.ts";
import { bendStops, type Hit, type Stop } from "../../calc/bend/order/stops.ts";
import type { Obstacle } from "../../calc/bend/order/watch.ts";
import { firstOf } from "../../units/certain.ts";
import { atLeast, atMost } from "../../units/nearly.ts";
import { type Degrees, degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { remember } from "../../units/remember.ts";
import type { BillLine, Strip } from "../nouns/line.ts";
import type { Brake, Die, Punch } from "../nouns/machines.ts";
import { type BendNumbers, bentPart } from "./blank.ts";
import { pressedIn, type Tools } from "./tools.ts";

const SAME_OPENING_MM = 0.01; // chosen: far below any step between two dies

export interface BentStrip {
  readonly part: BentPart;
  readonly press: Press;
  /** Tools known from their tables only: an order found with them is a proposal. */
  readonly isPlain: boolean;
  /** Sizes that no table states and that are drawn by an assumption. */
  readonly assumed: Unstated;
  /** What is in the way of tools of the usual width, where the order was found only on lean ones. */
  readonly inTheWay: Obstacle | undefined;
  /** Overbend of each bend; undefined where nothing is known of the material. */
  readonly springback: readonly (Degrees | undefined)[];
  /** Of the punch tip below the die's top at the end of each bend, under load: solved where it can be, else geometry. */
  readonly depths: readonly Millimeters[];
  readonly order: BendOrder;
  /** Gauge settings that this brake's gauge has not, by bend. */
  readonly scribed: readonly Scribed[];
}

/** A setting nearer than the gauge comes, or further than it goes. */
interface Scribed {
  readonly bend: number;
  readonly stop: Millimeters;
  readonly limit: Millimeters;
  readonly kind: "gauge nearer" | "gauge beyond";
}

/** Throws a Refusal on a part that no sheet can be. */
export function bendStrip(
  line: BillLine,
  strip: Strip,
  tools: Tools & Setup,
  bend: BendNumbers,
  drawn: Press | undefined,
): BentStrip {
  const { brake, die, punch } = tools;
  const part = bentPart(line, strip, bend);
  // The outlines of the workbook are those of one die; over another they would be wrong.
  const fits = drawn !== undefined && Math.abs(drawn.dieOpening - die.opening) < SAME_OPENING_MM;
  if (fits) checkPress(drawn);
  const nosed = punch && drawnPunch(punch, withinRound(punch.nose, bend.radius));
  const plain = (assumed?: Assumed) => plainPress(drawnDie(die), nosed, travelOf(brake), assumed);
  const bottoms = pressedIn(line, tools) > 0;
  const solved = strip.angles.map((angle) => {
    const turn = degrees(Math.abs(angle));
    const free = estimateAirBend(askedOver(line.material, line.thickness, turn, die, punch?.nose));
    const pressed = bottoms ? pressedShare(turn, free.springback, tools) : 0;
    const springback = free.springback && degrees((1 - pressed) * free.springback);
    // A bend that no die reaches is said so elsewhere: here it only has to stay a bend.
    const overbend = degrees(Math.min(springback ?? 0, SHARPEST - turn));
    return { springback, overbend, stroke: pressed === 0 ? free.stroke : undefined };
  });
  const springback = solved.map((bent) => bent.springback);
  const overbends = solved.map(({ overbend }) => overbend);
  const assumed = fits ? NOTHING_ASSUMED : unstated(die, punch);
  let press = fits ? anyStop(drawn) : plain();
  let order = orderKnown(part, overbends, press);
  let inTheWay: Obstacle | undefined;
  if (!order.feasible && assumed.punch.length + assumed.die.length > 0) {
    // A tool nobody measured may be slimmer: the order then depends on that, and the finding says what to measure.
    const lean = orderKnown(part, overbends, plain(LEAN));
    if (lean.feasible) [press, inTheWay, order] = [plain(LEAN), firstOf(order.blocked).obstacle, lean];
  }
  const depths = solved.map(({ stroke, overbend }, i) => {
    if (stroke !== undefined) return mm(stroke - line.thickness);
    const { tip, loaded } = seat(part, i + 1, overbend, press);
    return mm(-tip(loaded));
  });
  const travel = fits
    ? { nearest: drawn.nearestStop, furthest: drawn.furthestStop }
    : { nearest: brake.nearestGauge, furthest: brake.furthestGauge };
  const strips = { part, press, isPlain: !fits, assumed, inTheWay, springback, depths, order };
  return { ...strips, scribed: scribedOf(hitsOf(strips), travel) };
}

/** A press whose gauge reaches everywhere: the rest is scribed. One object, so that its outlines are laid out once. */
const anyStop = remember(
  16,
  (drawn: Press): Press => ({
    ...drawn,
    nearestStop: mm(0),
    furthestStop: mm(ANY_STOP),
  }),
);
const NOTHING_ASSUMED: Unstated = { punch: [], die: [] };
const SHARPEST = 179.5; // chosen: a round of more would meet itself

/** The part of a tool that is drawn: a change of its rating or name redraws nothing. */
const drawnDie = ({ opening, angle, shoulder, blockWidth, blockHeight }: Die) => ({
  name: "",
  opening,
  angle,
  shoulder,
  blockWidth,
  blockHeight,
});
const drawnPunch = ({ angle, height, bodyWidth, reliefDepth, reliefWidth }: Punch, nose: Millimeters | undefined) => ({
  name: "",
  nose,
  angle,
  height,
  bodyWidth,
  reliefDepth,
  reliefWidth,
});
const travelOf = ({ daylight, shutHeight, stroke }: Brake): DrawnBrake => ({ daylight, shutHeight, stroke });

/** A stop that the gauge cannot stand at is scribed on the sheet, or set against a block. */
function scribedOf(
  hits: readonly StripHit[],
  { nearest, furthest }: { readonly nearest: Millimeters | undefined; readonly furthest: Millimeters | undefined },
): Scribed[] {
  return hits.flatMap(({ bend, stop }): Scribed[] => {
    if (nearest !== undefined && !atLeast(stop, nearest)) return [{ bend, stop, limit: nearest, kind: "gauge nearer" }];
    if (furthest !== undefined && !atMost(stop, furthest))
      return [{ bend, stop, limit: furthest, kind: "gauge beyond" }];
    return [];
  });
}

/** A nose as wide as the round lies in it; drawn at its full size it would stand in the overbent sheet. */
const withinRound = (nose: Millimeters | undefined, radius: Millimeters): Millimeters | undefined =>
  nose === undefined ? undefined : mm(Math.min(nose, NOSE_IN_ROUND * radius));
const NOSE_IN_ROUND = 0.8; // chosen: the round under load is tighter than the one that is left

/**
 * Angle a bend is turned to under load, before it springs back: to the half degree that is read at a machine, rounded here
 * once for every table and picture. undefined where nothing is known of the springback.
 */
export function turnedTo({ part, springback }: Pick<BentStrip, "part" | "springback">, bend: number) {
  const over = springback[bend - 1];
  return over === undefined ? undefined : degrees(Math.round(2 * (Math.abs(bendOf(part, bend).angle) + over)) / 2);
}

/** A hit as it is set and made: what touches the gauge, where the gauge stands, how the sheet is moved for it. */
export type StripHit = Pick<OrderedHit, "bend" | "gaugedEnd" | "stop" | "datum" | "turned" | "flipped">;

/** Hits with their stops: the order found, else the usual one from the ends inward. */
export const hitsOf = ({ order, part }: Pick<BentStrip, "order" | "part">): readonly StripHit[] =>
  order.feasible ? order.hits : usual(part);

/** From the ends inward, each bend gauged from its nearer edge (common practice); BEND.ORDER proves one. */
function usualOrder(bends: number): Hit[] {
  const hits: Hit[] = [];
  for (let front = 1, back = bends; front <= back; front++, back--) {
    hits.push({ bend: front, gaugedEnd: "first" });
    if (back > front) hits.push({ bend: back, gaugedEnd: "last" });
  }
  return hits;
}

function usual(part: BentPart): StripHit[] {
  const stops = bendStops(part, usualOrder(part.bends.length));
  const goesUp = ({ bend }: Stop) => bendOf(part, bend).angle > 0;
  return stops.map((stop, i) => {
    const before = stops[i - 1];
    return {
      ...stop,
      turned: before !== undefined && before.gaugedEnd !== stop.gaugedEnd,
      flipped: before !== undefined && goesUp(before) !== goesUp(stop),
    };
  });
}

/** After an edit of one line all the others ask again; the same strip on the same tools has the same order. */
const orderKnown = remember(8192, (part: BentPart, overbends: readonly Degrees[], press: Press) =>
  bendOrder(part, overbends, press),
);
