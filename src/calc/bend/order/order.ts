import { firstOf, itemAt } from "../../../units/certain.ts";
import { type Degrees, type Millimeters, mm } from "../../../units/quantity.ts";
import { wrong } from "../../../units/refusal.ts";
import { step, type Working } from "../../../units/working.ts";
import { Hits } from "./hit.ts";
import { type BentPart, checkPart } from "./part.ts";
import { checkPress, type Press } from "./press.ts";
import { cheapestWay, size, type Way } from "./search.ts";
import type { Datum, End, Hit } from "./stops.ts";
import type { Nearest, Obstacle } from "./watch.ts";

export interface OrderedHit extends Hit {
  /** Against the hit before: ends exchanged, other face up. False for the first. */
  readonly turned: boolean;
  readonly flipped: boolean;
  readonly stop: Millimeters;
  readonly datum: Datum;
  readonly verdict: "clear" | "tight";
  /** Least gap when it is below the clearance asked for, and between what. */
  readonly gap?: Millimeters;
  readonly nearest?: Nearest;
  /** The piece closes around the punch and comes off over its end, which must be free. */
  readonly slidesOff?: true;
}

export interface BlockedHit extends Hit {
  readonly obstacle: Obstacle;
}

export type BendOrder =
  | { readonly feasible: true; readonly hits: readonly OrderedHit[]; readonly turns: number; readonly flips: number }
  | {
      readonly feasible: false;
      /** One way to get as far as possible, and why every remaining bend fails there, the nearest miss first. */
      readonly finished: readonly OrderedHit[];
      readonly blocked: readonly BlockedHit[];
    };

const ENDS: readonly [End, End] = ["first", "last"];

/**
 * An order in which the part can be bent on these tools, with the fewest tight hits and then the fewest turns and
 * flips; or, when there is none, what stands in the way.
 *
 * Whether a hit can be made depends only on which bends are finished, not on their sequence; so the best way to every
 * pair of finished set and lie of the sheet is found from smaller sets, which is exact (Held & Karp 1962; memory).
 * Rounds are true arcs, the bend under load is overbent by its springback, and the sheet is followed on its way in, up
 * with the flanges, off the punch and out. A part that hooks the raised punch is drawn off it aslant, or over the punch's
 * end where that is allowed. In the plane of the section only: box ends, split tools, notches and bends that are not
 * parallel are not seen. Not tried either: tilting the sheet on its way in.
 * @param springback overbend under load of every bend, degrees, 0 or more.
 * @throws Refusal on an impossible part or tools.
 */
export function bendOrder(part: BentPart, springback: readonly Degrees[], press: Press, work?: Working): BendOrder {
  checkPart(part);
  checkSpringback(part, springback);
  checkPress(press);
  const hits = new Hits(part, springback, press);
  const faces = part.bends.map((bend) => (bend.angle > 0 ? 1 : 0));
  const found = cheapestWay(faces, (set, { bend, end }) => {
    const { collision, gap, slidesOff } = hits.reading(set, { bend, gaugedEnd: ENDS[end] });
    return collision ? undefined : slidesOff || gap < press.clearance ? 1 : 0;
  });
  if (found.complete) {
    const done = follow(found.complete, hits, faces, press);
    const turns = done.filter((hit) => hit.turned).length;
    const flips = done.filter((hit) => hit.flipped).length;
    for (const { bend, datum, stop } of done)
      step(work, `bend ${bend}`, `stop, against ${datum.on} of flange ${datum.flange}`, stop, "mm", SOURCE);
    step(work, "turns, flips", "handlings between the hits", `${turns}, ${flips}`, "", SOURCE);
    return { feasible: true, hits: done, turns, flips };
  }
  const furthest = Math.max(...found.reached.map((way) => size(way.set)));
  const failures = found.reached
    .filter((way) => size(way.set) === furthest)
    .map((way) => ({ way, blocked: blockedAt(hits, part.bends.length, way.set) }))
    .sort((a, b) => firstOf(a.blocked).obstacle.by - firstOf(b.blocked).obstacle.by);
  const { way, blocked } = firstOf(failures);
  const { bend, obstacle } = firstOf(blocked);
  const what = `flange ${obstacle.leg} meets ${obstacle.tool} (${obstacle.phase}) by`;
  step(work, `bend ${bend}`, what, obstacle.by, "mm", SOURCE);
  return { feasible: false, finished: follow(way, hits, faces, press), blocked };
}

const SOURCE = "plane geometry of sheet and tool outlines, dynamic programming over sets of finished bends (derived)";

function blockedAt(hits: Hits, count: number, set: number): BlockedHit[] {
  const tries = Array.from({ length: count }, (_, i) => i + 1)
    .filter((bend) => !(set & (1 << (bend - 1))))
    .flatMap((bend) => ENDS.map((gaugedEnd) => ({ bend, gaugedEnd })));
  return tries
    .flatMap((hit) => {
      const obstacle = hits.reading(set, hit).collision?.();
      return obstacle ? [{ ...hit, obstacle }] : [];
    })
    .sort((a, b) => a.obstacle.by - b.obstacle.by);
}

function follow(way: Way, hits: Hits, faces: readonly number[], press: Press): OrderedHit[] {
  let set = 0;
  return way.moves.map(({ bend, end }, i) => {
    const previous = way.moves[i - 1];
    const hit: Hit = { bend, gaugedEnd: ENDS[end] };
    const { gap, nearest, back, slidesOff } = hits.reading(set, hit);
    set |= 1 << (bend - 1);
    const { contact } = back;
    if (!contact) throw new Error("a hit without a stop at its gauge");
    const tight = gap < press.clearance;
    return {
      ...hit,
      turned: previous !== undefined && previous.end !== end,
      flipped: previous !== undefined && faces[previous.bend - 1] !== faces[bend - 1],
      stop: mm(contact.x),
      datum: {
        on: contact.on,
        flange: contact.leg,
        ...(contact.on === "leaning flange" ? { height: mm(contact.y) } : {}),
      },
      verdict: tight || slidesOff ? "tight" : "clear",
      ...(slidesOff ? { slidesOff } : {}),
      ...(tight ? { gap: mm(Math.max(0, gap)) } : {}),
      ...(tight && nearest ? { nearest } : {}),
    };
  });
}

function checkSpringback(part: BentPart, springback: readonly Degrees[]): void {
  if (springback.length !== part.bends.length)
    throw wrong("springback", `one angle for each of ${part.bends.length} bends`, springback.length);
  springback.forEach((angle, i) => {
    if (!(angle >= 0 && Math.abs(itemAt(part.bends, i).angle) + angle < 180))
      throw wrong("springback", "0 degrees or more, and with its bend below 180", angle);
  });
}
