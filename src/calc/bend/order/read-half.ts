import { Half } from "./half.ts";
import { strokeReading } from "./stroke.ts";
import type { Reading } from "./watch.ts";
import { insertionReading, liftingReading, removalReading, type WayIn, type WayOut } from "./ways.ts";

/** A side of the sheet with what each of its motions meets, read once. */
export class ReadHalf extends Half {
  private readonly insertions = new Map<WayIn, Reading>();
  private readonly liftings = new Map<number, Reading>();
  private readonly removals = new Map<WayOut, Reading>();
  private strokeRead: Reading | undefined;

  /** Gauging, closing, bending under load. */
  stroke(): Reading {
    this.strokeRead ??= strokeReading(this);
    return this.strokeRead;
  }

  /** Sprung back and taken off the punch. */
  lifting(way: number): Reading {
    const reading = this.liftings.get(way) ?? liftingReading(this, way);
    this.liftings.set(way, reading);
    return reading;
  }

  /** Carried in over the die and under the open punch, laid down and pushed to the gauge. */
  insertion(way: WayIn): Reading {
    const reading = this.insertions.get(way) ?? insertionReading(this, way);
    this.insertions.set(way, reading);
    return reading;
  }

  /** Lifted out of the V, tilted or not, and drawn out to the front. */
  removal(way: WayOut): Reading {
    const reading = this.removals.get(way) ?? removalReading(this, way);
    this.removals.set(way, reading);
    return reading;
  }
}
