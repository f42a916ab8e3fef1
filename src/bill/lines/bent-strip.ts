/** How a strip of a line is bent: order and stops, on the shop's tool outlines or else on tools drawn from their tables. */
import { estimateAirBend } from "../../calc/bend/air-estimate.ts";
import { type BendOrder, bendOrder, type OrderedHit } from "../../calc/bend/order/order.ts";
import type { BentPart } from "../../calc/bend/order/part.ts";
import { plainPress } from "../../calc/bend/order/plain-press.ts";
import { checkPress, type Press } from "../../calc/bend/order/press.ts";
import { seat } from "../../calc/bend/order/seat.ts";
import { bendStops, type Stop } from "../../calc/bend/order/stops.ts";
import { usualOrder } from "../../calc/time/usual-order.ts";
import { type Degrees, degrees, type Millimetres, mm } from "../../units/quantity.ts";
import { remember } from "../../units/remember.ts";
import type { BillLine, Strip } from "../nouns/line.ts";
import { type BendNumbers, bentPart } from "./blank.ts";
import type { Tools } from "./tools.ts";

const SAME_OPENING_MM = 0.01; // chosen: far below any step between two dies

export interface BentStrip {
  readonly part: BentPart;
  readonly press: Press;
  /** Tools known from their tables only: an order found with them is a proposal. */
  readonly isPlain: boolean;
  /** Overbend of each bend; undefined where nothing is known of the material. */
  readonly springback: readonly (Degrees | undefined)[];
  /** Of the punch tip below the die's top at the end of each bend, under load: solved where it can be, else geometry. */
  readonly depths: readonly Millimetres[];
  readonly order: BendOrder;
}

/** Throws a Refusal on a part that no sheet can be. */
export function bendStrip(
  line: BillLine,
  strip: Strip,
  { die, punch }: Tools,
  bend: BendNumbers,
  drawn: Press | undefined,
): BentStrip {
  const part = bentPart(line, strip, bend);
  // The outlines of the workbook are those of one die; over another they would be wrong.
  const fits = drawn !== undefined && Math.abs(drawn.dieOpening - die.opening) < SAME_OPENING_MM;
  const press = fits ? drawn : plainPress(die, punch && { ...punch, nose: withinRound(punch.nose, bend.radius) });
  checkPress(press);
  const solved = strip.angles.map((angle) =>
    estimateAirBend(line.material, line.thickness, degrees(Math.abs(angle)), die, punch?.nose),
  );
  const springback = solved.map((estimate) => estimate.springback);
  const overbends = springback.map((angle) => angle ?? degrees(0));
  const order = orderKnown(part, overbends, press);
  const depths = solved.map(({ stroke }, i) => {
    if (stroke !== undefined) return mm(stroke - line.thickness);
    const { tip, loaded } = seat(part, i + 1, overbends[i]!, press);
    return mm(-tip(loaded));
  });
  return { part, press, isPlain: !fits, springback, depths, order };
}

/** A nose as wide as the round lies in it; drawn at its full size it would stand in the overbent sheet. */
const withinRound = (nose: Millimetres | undefined, radius: Millimetres): Millimetres | undefined =>
  nose === undefined ? undefined : mm(Math.min(nose, NOSE_IN_ROUND * radius));
const NOSE_IN_ROUND = 0.8; // chosen: the round under load is tighter than the one that is left

/** A hit as it is set and made: what touches the gauge, where the gauge stands, how the sheet is moved for it. */
export type StripHit = Pick<OrderedHit, "bend" | "gaugedEnd" | "stop" | "datum" | "turned" | "flipped">;

/** Hits with their stops: the order found, else the usual one from the ends inward. */
export const hitsOf = ({ order, part }: BentStrip): readonly StripHit[] => (order.feasible ? order.hits : usual(part));

function usual(part: BentPart): StripHit[] {
  const stops = bendStops(part, usualOrder(part.bends.length));
  const goesUp = ({ bend }: Stop) => part.bends[bend - 1]!.angle > 0;
  return stops.map((stop, i) => {
    const before = stops[i - 1];
    return {
      ...stop,
      turned: before !== undefined && before.gaugedEnd !== stop.gaugedEnd,
      flipped: before !== undefined && goesUp(before) !== goesUp(stop),
    };
  });
}

/** After an edit of one line all the others ask again: the same strip on the same tools has the same order. */
const orderKnown = remember(8192, (part: BentPart, overbends: readonly Degrees[], press: Press) =>
  bendOrder(part, overbends, press),
);
