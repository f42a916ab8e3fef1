import { type Degrees, mm } from "../../../units/quantity.ts";
import { type Chain, chain } from "./chain.ts";
import { Half, type Reading, WAYS_IN, WAYS_OUT } from "./half.ts";
import { type BentPart, straightLengths } from "./part.ts";
import { gapBetween, STRIDE } from "./piece.ts";
import { type Press, sides } from "./press.ts";
import { Room } from "./room.ts";
import { bentPose, type Seat, seat } from "./seat.ts";
import type { End, Hit } from "./stops.ts";
import { CONTACT, type Nearest, type Obstacle } from "./watch.ts";

/** What is known of one hit with a given set of bends finished before it. */
export interface HitReading {
  /** Least gap, up to the clearance asked for. */
  readonly gap: number;
  readonly nearest: Nearest | undefined;
  readonly collision: (() => Obstacle) | undefined;
  readonly back: Half;
}

const NOTHING: Reading = { gap: Infinity, nearest: undefined, collision: undefined };

/** Answers for hits, each side of the sheet computed once for each set of finished bends on it. */
export class Hits {
  private readonly seats: readonly Seat[];
  /** The same chain is looked at as the back and as the front of the sheet. */
  private readonly chains = new Map<number, Chain>();
  private readonly straights: readonly number[];
  private readonly halves = new Map<number, Half>();
  private readonly met = new Map<number, (() => Obstacle) | undefined>();
  private readonly room = new Room();
  private readonly press: ReturnType<typeof sides>;

  constructor(
    private readonly part: BentPart,
    springback: readonly Degrees[],
    private readonly tools: Press,
  ) {
    this.press = sides(tools);
    this.straights = straightLengths(part);
    this.seats = part.bends.map((_, i) => seat(part, i + 1, springback[i]!, tools));
  }

  /** @param finished bit i - 1 set when bend i is finished. */
  reading(finished: number, { bend, gaugedEnd }: Hit): HitReading {
    const back = this.half(finished, bend, gaugedEnd, true);
    const front = this.half(finished, bend, gaugedEnd === "first" ? "last" : "first", false);
    const travel = this.travelOf(bend);
    const readings = [travel, back.mandatory()];
    if (!worst(readings).collision) readings.push(front.mandatory());
    if (!worst(readings).collision)
      readings.push(best(WAYS_IN.keys(), (way) => [back.insertion(way), front.insertion(way)], this.tools));
    if (!worst(readings).collision && !this.tools.offTheEnd)
      readings.push(best(WAYS_OUT.keys(), (way) => [back.removal(way), front.removal(way)], this.tools));
    if (!worst(readings).collision) {
      const collision = this.meetsItself(finished, bend);
      readings.push({ ...NOTHING, collision });
    }
    return { ...worst(readings), back };
  }

  private travelOf(bend: number): Reading {
    const s = this.seats[bend - 1]!;
    const closed = this.part.thickness - this.tools.openHeight;
    const short = this.tools.openHeight - this.tools.stroke - s.tip(s.loaded);
    const stopped = (tool: Obstacle["tool"], by: number): Reading => ({
      gap: -by,
      nearest: undefined,
      collision: () => ({ phase: tool === "ram travel" ? "bend" : "insert", tool, leg: bend, by: mm(by) }),
    });
    if (closed >= 0) return stopped("open height", closed);
    return short > CONTACT ? stopped("ram travel", short) : NOTHING;
  }

  half(finished: number, bend: number, towards: End, isBack: boolean): Half {
    const below = (1 << (bend - 1)) - 1;
    const own = finished & (towards === "first" ? below : ~below & ~(1 << (bend - 1)));
    const key = ((own * 16 + bend) * 2 + (towards === "first" ? 1 : 0)) * 2 + (isBack ? 1 : 0);
    let half = this.halves.get(key);
    if (!half) {
      let shape = this.chains.get(key >> 1);
      if (!shape) {
        shape = chain(this.part, bend, towards, own, this.straights);
        this.chains.set(key >> 1, shape);
      }
      const side = isBack ? this.press.back : this.press.front;
      half = new Half(shape, this.seats[bend - 1]!, this.part.thickness, this.tools, side, this.room);
      this.halves.set(key, half);
    }
    return half;
  }

  /** The two sides of the sheet swing towards each other: does one meet the other? Whichever way round the part lies. */
  private meetsItself(finished: number, bend: number): (() => Obstacle) | undefined {
    const key = finished * 16 + bend;
    if (!this.met.has(key)) {
      const last = this.half(finished, bend, "last", true).chain;
      const first = this.half(finished, bend, "first", false).chain;
      this.met.set(key, swingTogether(last, first, this.seats[bend - 1]!, this.part.thickness, this.room));
    }
    return this.met.get(key);
  }
}

function swingTogether(
  one: Half["chain"],
  other: Half["chain"],
  s: Seat,
  thickness: number,
  room: Room,
): (() => Obstacle) | undefined {
  const count = one.pieces.length;
  if (![...one.pieces, ...other.pieces].some((p) => p.zone > 1)) return undefined;
  const apart = (a: number): { gap: number; leg: number } => {
    const pose = bentPose(s, thickness, a);
    room.lay(one.pieces, pose);
    room.lay(other.pieces, pose, count, true);
    let gap = Infinity;
    let leg = 0;
    for (let i = 0; i < count; i++)
      for (let j = count; j < count + other.pieces.length; j++) {
        const p = one.pieces[i]!;
        const q = other.pieces[j - count]!;
        // The straights on either side of the bend share its round and cannot meet.
        if ((p.zone <= 1 && q.zone <= 1) || room.apart(i, j, gap)) continue;
        const here = gapBetween(p, q, room.layout, i * STRIDE, j * STRIDE);
        if (here >= gap) continue;
        gap = here;
        leg = Math.max(p.leg, q.leg);
      }
    return { gap, leg };
  };
  const speed = one.radius + other.radius + 4 * thickness + 2 * s.radius(s.loaded);
  const meets = (from: number, to: number): (() => Obstacle) | undefined => {
    const { gap, leg } = apart((from + to) / 2);
    if (gap < -CONTACT) return () => ({ phase: "bend", tool: "part", leg, by: mm(-gap) });
    const reach = (speed * (to - from)) / 2;
    if (gap >= reach || reach < 0.01) return undefined;
    return meets(from, (from + to) / 2) ?? meets((from + to) / 2, to);
  };
  return meets(s.loaded, s.loaded) ?? meets(0, s.loaded);
}

function worst(readings: readonly Reading[]): Reading {
  return readings.reduce((a, b) => (b.collision && !a.collision ? b : a.collision || a.gap <= b.gap ? a : b));
}

/** The first way that keeps the clearance, else the roomiest, else the collision of the first way. */
function best<Way>(ways: Iterable<Way>, look: (way: Way) => Reading[], { clearance }: Press): Reading {
  let found: Reading | undefined;
  for (const way of ways) {
    const reading = worst(look(way));
    if (!found || (found.collision && !reading.collision) || (!reading.collision && reading.gap > found.gap))
      found = reading;
    if (!found.collision && found.gap >= clearance) break;
  }
  return found!;
}
