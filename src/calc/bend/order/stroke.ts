import { firstOf, itemAt } from "../../../units/certain.ts";
import { mm } from "../../../units/quantity.ts";
import type { Half } from "./half.ts";
import { type Piece, straightPiece } from "./piece.ts";
import { bentPose, flatPose } from "./seat.ts";
import type { Motion, Obstacle, Phase, Reading } from "./watch.ts";

/**
 * One side of the sheet from the gauge to the end of the stroke: at the stop, the punch closing on it, bent and overbent.
 * How it comes off the punch is a question of its own (see ways.ts).
 */
export function strokeReading(half: Half): Reading {
  const { seat, thickness: t, side, press, chain, rules } = half;
  const { loaded } = seat;
  const reach = (seat.radius(loaded) + t / 2) * Math.tan(loaded) + chain.run;
  const slips = seat.restsAt(loaded) - reach;
  if (slips > 1e-9) return stopped(half, "bend", "die opening", slips);
  const gauge = side.finger && gaugeProblem(half);
  if (gauge) return gauge;
  const still = half.atRest(press.fingerRetracts);
  const stroke: Motion = {
    pose: (a) => bentPose(seat, t, a),
    stands: (a) => [...still, half.punchAt(seat.tip(a))],
    shift: (a, b) => originShift(half, a, b),
    arm: chain.radius,
  };
  const closing = [{ solids: side.above, x: 0, y: t }];
  const watch = half.watch();
  // The end of the stroke before the stroke itself: most collisions show there already, at their worst.
  watch.look(half.pieces(0), flatPose(seat, t), half.atRest(), rules.look, "gauge") &&
    watch.look(half.pieces(0), flatPose(seat, t), closing, rules.look, "close") &&
    watch.look(half.pieces(loaded), stroke.pose(loaded), stroke.stands(loaded), rules.look, "bend") &&
    watch.sweep(outside(half), 0, loaded, stroke, rules.sweep, "bend");
  return watch;
}

function gaugeProblem(half: Half): Reading | undefined {
  const { press, contact, thickness } = half;
  if (!contact) return stopped(half, "gauge", "finger", Math.max(press.gaugeFrom - thickness, -press.gaugeTo));
  const off = Math.max(press.nearestStop - contact.x, contact.x - press.furthestStop);
  return off > 1e-9 ? stopped(half, "gauge", "gauge travel", off) : fingerMeetsTools(half, contact.x);
}

/** The finger against die and bed, and against the punch as far as that comes down before the finger draws back. */
function fingerMeetsTools(half: Half, stop: number): Reading | undefined {
  const { press, seat, side, thickness } = half;
  const { finger } = press;
  const edges = finger.map((p, i) => straightPiece(0, 3, 0, [p, itemAt(finger, (i + 1) % finger.length)]));
  const tip = press.fingerRetracts ? thickness : seat.tip(seat.loaded);
  const stands = [
    { solids: side.tools.fixed, x: 0, y: 0 },
    { solids: side.above, x: 0, y: tip },
  ];
  const watch = half.watch(0);
  watch.look(edges, { x: stop, y: 0, angle: 0 }, stands, half.rules.look, "gauge");
  const { collision } = watch;
  return collision && { gap: watch.gap, nearest: undefined, collision: () => ({ ...collision(), leg: "finger" }) };
}

/** Pieces without what stays between the die's shoulders, where punch and die hold the sheet all through the stroke. */
function outside({ seat, press, thickness, chain }: Half): Piece[] {
  const from = seat.restsAt(0) + press.shoulderRadius + thickness - seat.zoneLength / 2;
  return chain.pieces.flatMap((p) => {
    if (p.zone !== 1 || Math.min(p.ax, p.bx) >= from) return [p];
    return p.bx <= from ? [] : [{ ...p, ax: from }];
  });
}

function originShift({ seat, thickness }: Half, a: number, b: number): number {
  const [p, q] = [bentPose(seat, thickness, a), bentPose(seat, thickness, b)];
  // The path of the origin bends a little: a thickness times the angle covers its bulge between two values.
  const bulge = thickness * Math.abs(a - b);
  return bulge + Math.abs(p.x - q.x) + Math.abs(p.y - q.y) + Math.abs(seat.tip(a) - seat.tip(b));
}

export function stopped({ chain }: Half, phase: Phase, tool: Obstacle["tool"], by: number): Reading {
  const leg = firstOf(chain.pieces).leg;
  return { gap: -by, nearest: undefined, collision: () => ({ phase, tool, leg, by: mm(by) }) };
}
