import { degrees, radians } from "../../../units/quantity.ts";
import { posed } from "./chain.ts";
import type { Half } from "./half.ts";
import { bentPose, flatPose, type Pose, turnedPose } from "./seat.ts";
import { stopped } from "./stroke.ts";
import type { Motion, Reading, Stand } from "./watch.ts";

/** Heights the sheet is carried at, as shares of the room between die and raised punch (chosen). */
const LIFTS = [0, 0.25, 0.5, 0.75, 1] as const;
/** How short of the gauge a sheet may be laid down to be pushed back to it, mm, and the steps in which the push is looked at (chosen). */
const PUSH = 10;
const PUSH_STEP = 2.5;

/** Over the die at a lift, then laid down: in place, or short of the gauge so that a flange gets under the finger. */
export interface WayIn {
  readonly lift: number;
  readonly short: number;
}
export const WAYS_IN: readonly WayIn[] = [0, PUSH]
  .flatMap((short) => LIFTS.map((lift) => ({ lift, short })))
  .filter((way) => way.lift > 0 || way.short === 0);

/** Lifted out of the V as it came off the punch, or tipped until the back or the front lies level. */
export interface WayOut {
  readonly lift: number;
  readonly tilt: "as bent" | "back level" | "front level";
}
export const WAYS_OUT: readonly WayOut[] = (["as bent", "back level", "front level"] as const).flatMap((tilt) =>
  LIFTS.map((lift) => ({ lift, tilt })),
);

/**
 * How a bent sheet comes off the punch, degrees from straight down towards the gauge: the punch leaves straight up while
 * the sheet stays on the die, or the sheet hangs on the raised punch and is drawn off aslant, as a deep U off a gooseneck.
 */
export const WAYS_OFF: readonly number[] = [0, -45, 45, -30, 30, -60, 60, -15, 15];

export function liftingReading(half: Half, way: number): Reading {
  const { seat, thickness, press, side, rules } = half;
  const a = seat.free;
  const y = seat.tip(a);
  const pieces = half.pieces(a);
  const pose = bentPose(seat, thickness, a);
  const watch = half.watch();
  if (way === 0) {
    const still = half.atRest(press.fingerRetracts);
    watch.look(pieces, pose, [...still, { solids: side.above, x: 0, y }], rules.look, "lift-off");
    return watch;
  }
  // A finger that stays would be met as the sheet goes up with the punch; and what hangs needs room to come down.
  const hangs = Math.max(...posed(pieces, pose).map((p) => Math.max(p.ay, p.by))) - y;
  if (side.finger && !press.fingerRetracts) return stopped(half, "lift-off", "finger", 0);
  if (hangs > press.openHeight) return stopped(half, "lift-off", "open height", hangs - press.openHeight);
  watch.look(pieces, pose, [{ solids: side.leaving(radians(degrees(way))), x: 0, y }], rules.look, "lift-off");
  return watch;
}

export function insertionReading(half: Half, { lift, short }: WayIn): Reading {
  const { seat, thickness, press, side } = half;
  const rules = half.rules.look;
  const pieces = half.pieces(0);
  const pose = (back: number, up: number): Pose => {
    const there = flatPose(seat, thickness, up * (press.openHeight - thickness));
    return { ...there, x: there.x + (side.finger ? -back : back) };
  };
  const watch = half.watch();
  watch.look(pieces, pose(short, lift), half.wayOut(), rules, "insert");
  if (lift > 0) watch.look(pieces, pose(short, 0), half.wayUp(), rules, "insert");
  // The push is short: the die is nearest at one of its ends, anything else is thicker than these steps.
  for (let back = short - PUSH_STEP; back > 0; back -= PUSH_STEP)
    watch.look(pieces, pose(back, 0), half.atRest(), rules, "insert");
  return watch;
}

export function removalReading(half: Half, { lift, tilt }: WayOut): Reading {
  const { seat, thickness: t, press, side, rules } = half;
  const a = seat.free;
  const gone = press.fingerRetracts;
  const own = side.finger ? "back level" : "front level";
  const levelled = tilt === own ? 0 : 2 * a;
  const slope = tilt === "as bent" ? a : levelled;
  const pieces = half.pieces(a);
  const tipped = tipping(half, lift * (press.openHeight - t), [...half.atRest(gone), half.punchAt(press.openHeight)]);
  const watch = half.watch();
  watch.look(pieces, tipped.pose(slope), half.wayOut(gone), rules.look, "remove");
  watch.look(pieces, bentPose(seat, t, a), half.wayUp(gone), rules.look, "remove");
  if (slope !== a) watch.sweep(pieces, a, slope, tipped, rules.tilt, "remove");
  return watch;
}

/** The finished bend tipped about its outside corner at a height, over the slope of this side: its frame swings about the corner. */
export function tipping({ seat, thickness: t, chain }: Half, corner: number, stands: readonly Stand[]): Motion {
  const a = seat.free;
  const swing = Math.hypot((seat.radius(a) + t / 2) * Math.tan(a), t / 2);
  return {
    pose: (slope) => turnedPose(seat, t, a, slope, corner),
    stands: () => stands,
    shift: (p, q) => swing * Math.abs(p - q),
    arm: chain.radius,
  };
}
