import { itemAt } from "../../../units/certain.ts";
import { type Millimeters, mm } from "../../../units/quantity.ts";
import { wrong } from "../../../units/refusal.ts";
import { step, type Working } from "../../../units/working.ts";
import { allowance, type BentPart, bendLines, checkPart, flatOfPart, setback } from "./part.ts";

/** Which edge of the part lies towards the back gauge: that of flange 1 or that of the last flange. */
export type End = "first" | "last";

export interface Hit {
  /** Bend number from 1, counted from the first edge. */
  readonly bend: number;
  readonly gaugedEnd: End;
}

/** What the gauge finger touches. */
export type Datum =
  | { readonly on: "edge"; readonly flange: number }
  /** Square (90 degrees) flange: its outside face. */
  | { readonly on: "flange"; readonly flange: number }
  /**
   * Flange bent by less than 90 degrees leans outward: the stop is to where a finger meets it at this height above the
   * die's top, further back the higher; without a height to its mold line.
   */
  | { readonly on: "leaning flange"; readonly flange: number; readonly height?: Millimeters }
  /** Flange bent past 90 degrees leans inward: the finger touches the round of the bend. */
  | { readonly on: "round"; readonly flange: number };

export interface Stop extends Hit {
  /** From the bend line to the datum. */
  readonly stop: Millimeters;
  readonly datum: Datum;
  /** Which way a bent datum flange points while this bend is made upward; "flat" when the datum is an edge. */
  readonly points: "flat" | "up" | "down";
}

/**
 * Back-gauge stop of every hit in a given order. Until something on the gauged side is bent, the finger touches the
 * free edge and the stop is the flat length from there to the bend line. Afterwards it touches the outside of the
 * nearest finished bend on that side: flat length between the two bend lines, plus the reach of the finished bend past
 * its own line, which is BD / 2 up to 90 degrees (SB - BA / 2, mold line) and r + t - BA / 2 past it (derived).
 * Where the tools leave room for a finger is not asked here: see bendOrder.
 * @param order every bend once. @throws Refusal on an impossible part or an order that is not a permutation.
 */
export function bendStops(part: BentPart, order: readonly Hit[], work?: Working): Stop[] {
  checkPart(part);
  const count = part.bends.length;
  const named = order.map((hit) => hit.bend);
  if (named.length !== count || new Set(named).size !== count || named.some((b) => !part.bends[b - 1]))
    throw wrong("order", `every bend from 1 to ${count} once`, named.join(", "));
  const lines = bendLines(part);
  const finished = new Set<number>();
  return order.map((hit) => {
    const stop = stopOfHit(part, lines, finished, hit);
    finished.add(hit.bend);
    step(
      work,
      `stop ${hit.bend}`,
      `bend line ${hit.bend} to ${stop.datum.on} of flange ${stop.datum.flange}`,
      stop.stop,
      "mm",
      "flat length to the bend line; past a finished bend its outside, BD / 2 beyond its line (derived)",
    );
    return stop;
  });
}

function stopOfHit(part: BentPart, lines: readonly Millimeters[], finished: ReadonlySet<number>, hit: Hit): Stop {
  const outward = hit.gaugedEnd === "first" ? -1 : 1;
  const line = itemAt(lines, hit.bend - 1);
  let neighbor = hit.bend + outward;
  while (part.bends[neighbor - 1] && !finished.has(neighbor)) neighbor += outward;
  const bend = part.bends[neighbor - 1];
  if (!bend) {
    const edge = outward < 0 ? 0 : flatOfPart(part);
    const flange = outward < 0 ? 1 : part.flanges.length;
    return { ...hit, stop: mm(Math.abs(edge - line)), datum: { on: "edge", flange }, points: "flat" };
  }
  const turned = Math.abs(bend.angle);
  const outside = turned > 90 ? bend.insideRadius + part.thickness : setback(part, bend);
  const reach = outside - allowance(part, bend) / 2;
  const on = turned > 90 ? "round" : turned === 90 ? "flange" : "leaning flange";
  return {
    ...hit,
    stop: mm(Math.abs(itemAt(lines, neighbor - 1) - line) + reach),
    datum: { on, flange: outward < 0 ? neighbor : neighbor + 1 },
    points: Math.sign(bend.angle) === Math.sign(itemAt(part.bends, hit.bend - 1).angle) ? "up" : "down",
  };
}
