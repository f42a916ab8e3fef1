import { type Degrees, type Millimetres, mm } from "../../../units/quantity.ts";
import { Refusal } from "../../../units/refusal.ts";
import { step, type Working } from "../../../units/working.ts";
import { type HitReading, Hits } from "./hit.ts";
import { type BentPart, checkPart } from "./part.ts";
import { checkPress, type Press } from "./press.ts";
import type { Datum, End, Hit } from "./stops.ts";
import type { Nearest, Obstacle } from "./watch.ts";

export interface OrderedHit extends Hit {
  /** Against the hit before: ends exchanged, other face up. False for the first. */
  readonly turned: boolean;
  readonly flipped: boolean;
  readonly stop: Millimetres;
  readonly datum: Datum;
  readonly verdict: "clear" | "tight";
  /** Least gap when it is below the clearance asked for, and between what. */
  readonly gap?: Millimetres;
  readonly nearest?: Nearest;
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

const ENDS: readonly End[] = ["first", "last"];

/** What an order costs, compared in this sequence: hits with a tight gap, turns and flips together, flips. */
export const costOf = (tight: number, turns: number, flips: number): number =>
  (tight * 64 + turns + flips) * 64 + flips;

/**
 * An order in which the part can be bent on these tools, with the fewest tight hits and then the fewest turns and
 * flips; or, when there is none, what stands in the way.
 *
 * Whether a hit can be made depends only on which bends are finished, not on their sequence; so the best way to every
 * pair of finished set and lie of the sheet is found from smaller sets, which is exact (Held & Karp's recursion over sets).
 * Rounds are true arcs, the bend under load is overbent by its springback, and the sheet is followed on its way in, up
 * with the flanges, off the punch and out. In the plane of the section only: box ends, split tools, notches and bends
 * that are not parallel are not seen. Not tried either: tilting the sheet on its way in, and taking a part that hooks
 * the punch off it while the ram rises.
 * @param springback overbend under load of every bend, degrees, 0 or more.
 * @throws Refusal on an impossible part or tools.
 */
export function bendOrder(part: BentPart, springback: readonly Degrees[], press: Press, work?: Working): BendOrder {
  checkPart(part);
  checkSpringback(part, springback);
  checkPress(press);
  const hits = new Hits(part, springback, press);
  const count = part.bends.length;
  const all = (1 << count) - 1;
  const faces = part.bends.map((bend) => (bend.angle > 0 ? 1 : 0));
  // A lie is the end at the back (0, 1) and the face that is up (0, 2).
  const cost = new Float64Array((all + 1) * 4).fill(Infinity);
  const before = new Int32Array((all + 1) * 4).fill(-1);
  const lastBend = new Int8Array((all + 1) * 4);
  const lieOf = (bend: number, end: number) => end + 2 * faces[bend - 1]!;

  for (let set = 0; set < all; set++) {
    const lies = set === 0 ? [-1] : [0, 1, 2, 3].filter((lie) => cost[set * 4 + lie]! < Infinity);
    if (lies.length === 0) continue;
    for (let bend = 1; bend <= count; bend++) {
      if (set & (1 << (bend - 1))) continue;
      for (const end of [0, 1]) {
        const reading = hits.reading(set, { bend, gaugedEnd: ENDS[end]! });
        if (reading.collision) continue;
        const tight = reading.gap < press.clearance ? 1 : 0;
        const lie = lieOf(bend, end);
        const to = (set | (1 << (bend - 1))) * 4 + lie;
        for (const from of lies) {
          const changed = from < 0 ? 0 : from ^ lie;
          const total = (from < 0 ? 0 : cost[set * 4 + from]!) + costOf(tight, changed & 1, changed >> 1);
          if (total >= cost[to]!) continue;
          cost[to] = total;
          before[to] = from < 0 ? -1 : set * 4 + from;
          lastBend[to] = bend;
        }
      }
    }
  }

  const wayTo = (set: number): OrderedHit[] => {
    const ends = [0, 1, 2, 3].map((lie) => set * 4 + lie);
    const chain: number[] = [];
    for (let at = ends.reduce((a, b) => (cost[b]! < cost[a]! ? b : a)); at >= 0; at = before[at]!) chain.unshift(at);
    return chain.map((at, i) => {
      const previous = chain[i - 1];
      const hit: Hit = { bend: lastBend[at]!, gaugedEnd: ENDS[at & 1]! };
      const changed = previous === undefined ? 0 : (previous & 3) ^ (at & 3);
      const reading = hits.reading(previous === undefined ? 0 : previous >> 2, hit);
      return ordered(hit, reading, changed, press);
    });
  };

  if (ENDS.some((_, end) => cost[all * 4 + end]! < Infinity || cost[all * 4 + end + 2]! < Infinity)) {
    const found = wayTo(all);
    const turns = found.filter((hit) => hit.turned).length;
    const flips = found.filter((hit) => hit.flipped).length;
    for (const hit of found)
      step(
        work,
        `bend ${hit.bend}`,
        `stop, against ${hit.datum.on} of flange ${hit.datum.flange}`,
        hit.stop,
        "mm",
        SOURCE,
      );
    step(work, "turns, flips", "handlings between the hits", `${turns}, ${flips}`, "", SOURCE);
    return { feasible: true, hits: found, turns, flips };
  }
  const reached = Array.from({ length: all }, (_, set) => set).filter(
    (set) => set === 0 || [0, 1, 2, 3].some((lie) => cost[set * 4 + lie]! < Infinity),
  );
  const size = (set: number) => set.toString(2).replaceAll("0", "").length;
  const furthest = Math.max(...reached.map(size));
  const failures = reached
    .filter((set) => size(set) === furthest)
    .map((set) => ({ set, blocked: blockedAt(hits, count, set) }))
    .sort((a, b) => a.blocked[0]!.obstacle.by - b.blocked[0]!.obstacle.by);
  const { set, blocked } = failures[0]!;
  const { bend, obstacle } = blocked[0]!;
  step(
    work,
    `bend ${bend}`,
    `flange ${obstacle.leg} meets ${obstacle.tool} (${obstacle.phase}) by`,
    obstacle.by,
    "mm",
    SOURCE,
  );
  return { feasible: false, finished: set === 0 ? [] : wayTo(set), blocked };
}

const SOURCE = "plane geometry of sheet and tool outlines, dynamic programming over sets of finished bends (derived)";

function blockedAt(hits: Hits, count: number, set: number): BlockedHit[] {
  const tries = Array.from({ length: count }, (_, i) => i + 1)
    .filter((bend) => !(set & (1 << (bend - 1))))
    .flatMap((bend) => ENDS.map((gaugedEnd) => ({ bend, gaugedEnd })));
  return tries
    .map((hit) => ({ ...hit, obstacle: hits.reading(set, hit).collision!() }))
    .sort((a, b) => a.obstacle.by - b.obstacle.by);
}

function ordered(hit: Hit, { gap, nearest, back }: HitReading, changed: number, press: Press): OrderedHit {
  const contact = back.contact!;
  return {
    ...hit,
    turned: (changed & 1) === 1,
    flipped: (changed & 2) === 2,
    stop: mm(contact.x),
    datum: { on: contact.on, flange: contact.leg },
    verdict: gap < press.clearance ? "tight" : "clear",
    ...(gap < press.clearance ? { gap: mm(Math.max(0, gap)) } : {}),
    ...(gap < press.clearance && nearest ? { nearest } : {}),
  };
}

function checkSpringback(part: BentPart, springback: readonly Degrees[]): void {
  const refuse = (rule: string, got: unknown) => {
    throw new Refusal("#VALUE!", `springback must be ${rule}; got ${got}`);
  };
  if (springback.length !== part.bends.length)
    refuse(`one angle for each of ${part.bends.length} bends`, springback.length);
  springback.forEach((angle, i) => {
    if (!(angle >= 0 && Math.abs(part.bends[i]!.angle) + angle < 180))
      refuse("0 degrees or more, and with its bend below 180", angle);
  });
}
