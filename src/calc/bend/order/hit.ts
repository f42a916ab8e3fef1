import { itemAt } from "../../../units/certain.ts";
import { type Degrees, mm } from "../../../units/quantity.ts";
import { type Chain, chain } from "./chain.ts";
import { type BentPart, straightLengths } from "./part.ts";
import { type Press, sides } from "./press.ts";
import { ReadHalf } from "./read-half.ts";
import { Room } from "./room.ts";
import { type Seat, seat } from "./seat.ts";
import type { End, Hit } from "./stops.ts";
import { CONTACT, type Obstacle, type Reading } from "./watch.ts";
import { WAYS_IN, WAYS_OFF, WAYS_OUT } from "./ways.ts";

/** What is known of one hit with a given set of bends finished before it. */
interface HitReading extends Reading {
  readonly back: ReadHalf;
  /** The piece closes around the punch and comes off only over its end: avoided like a tight hit. */
  readonly slidesOff: boolean;
}

const NOTHING: Reading = { gap: Infinity, nearest: undefined, collision: undefined };

/**
 * Answers for hits, each side of the sheet computed once for each set of finished bends on it. That the two sides meet
 * each other is not asked: they would close a loop around the punch and ram, or around die and bed, and meet those
 * first.
 */
export class Hits {
  private readonly seats: readonly Seat[];
  /** The same chain is looked at as the back and as the front of the sheet. */
  private readonly chains = new Map<number, Chain>();
  private readonly straights: readonly number[];
  private readonly halves = new Map<number, ReadHalf>();
  private readonly room = new Room();
  private readonly press: ReturnType<typeof sides>;

  constructor(
    private readonly part: BentPart,
    springback: readonly Degrees[],
    private readonly tools: Press,
  ) {
    this.press = sides(tools);
    this.straights = straightLengths(part);
    this.seats = part.bends.map((_, i) => seat(part, i + 1, itemAt(springback, i), tools));
  }

  /** @param finished bit i - 1 set when bend i is finished. */
  reading(finished: number, { bend, gaugedEnd }: Hit): HitReading {
    const back = this.half(finished, bend, gaugedEnd, true);
    const front = this.half(finished, bend, gaugedEnd === "first" ? "last" : "first", false);
    const travel = this.travelOf(bend);
    const readings = [travel, back.stroke()];
    if (!worst(readings).collision) readings.push(front.stroke());
    let slidesOff = false;
    if (!worst(readings).collision) {
      const off = best(WAYS_OFF, (way) => [back.lifting(way), front.lifting(way)], this.tools);
      slidesOff = this.tools.offTheEnd && off.collision !== undefined;
      if (!slidesOff) readings.push(off);
    }
    if (!worst(readings).collision)
      readings.push(best(WAYS_IN, (way) => [back.insertion(way), front.insertion(way)], this.tools));
    if (!worst(readings).collision && !this.tools.offTheEnd)
      readings.push(best(WAYS_OUT, (way) => [back.removal(way), front.removal(way)], this.tools));
    return { ...worst(readings), back, slidesOff };
  }

  private travelOf(bend: number): Reading {
    const s = itemAt(this.seats, bend - 1);
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

  half(finished: number, bend: number, towards: End, isBack: boolean): ReadHalf {
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
      half = new ReadHalf(shape, itemAt(this.seats, bend - 1), this.part.thickness, this.tools, side, this.room);
      this.halves.set(key, half);
    }
    return half;
  }
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
  if (!found) throw new Error("a hit without a way into the brake");
  return found;
}
