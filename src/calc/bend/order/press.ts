import type { Degrees, Millimeters } from "../../../units/quantity.ts";
import { wrong } from "../../../units/refusal.ts";
import {
  crossesItself,
  mirrored,
  type Outline,
  type Solid,
  shadowAbove,
  shadowAlong,
  shadowBehind,
  shadowBelow,
  solid,
} from "./solid.ts";

/**
 * The tools seen from the end of the bed: x towards the back gauge, y up, 0, 0 on the middle of the V at the level of
 * the die's top. Punch and ram are drawn with the punch tip at 0, 0 and travel together; the gauge finger is drawn with
 * its face at x = 0 and stands behind it.
 */
export interface Press {
  readonly punch: Outline;
  readonly ram: Outline;
  readonly die: Outline;
  readonly bed: Outline;
  readonly finger: Outline;
  /** V opening at the theoretical corners, and the radius of the shoulders: 0 when the outline is drawn with sharp corners. */
  readonly dieOpening: Millimeters;
  readonly shoulderRadius: Millimeters;
  readonly dieAngle: Degrees;
  /** Heights above the die's top between which the finger's face can touch the sheet. */
  readonly gaugeFrom: Millimeters;
  readonly gaugeTo: Millimeters;
  /** Travel of the gauge: nearest and furthest stop from the middle of the V. */
  readonly nearestStop: Millimeters;
  readonly furthestStop: Millimeters;
  /** True where the finger draws back once the punch holds the sheet, so that it is not in the way of the bend. */
  readonly fingerRetracts: boolean;
  /** Punch tip above the die's top with the ram fully up: daylight less punch height less die height. */
  readonly openHeight: Millimeters;
  readonly stroke: Millimeters;
  /** Below this a gap is called tight; 0 asks only for no contact. */
  readonly clearance: Millimeters;
  /** True where the finished piece may be drawn off the end of the punch, so it need not come out to the front. */
  readonly offTheEnd: boolean;
}

/** One set of obstacles for a phase. `moving` travels with the punch. */
interface Obstacles {
  readonly fixed: readonly Solid[];
  readonly moving: readonly Solid[];
}

/** Everything the sheet on one side of the V can meet; the front side is mirrored so that both read alike. */
export interface Side {
  readonly tools: Obstacles;
  /** What the sheet passes when it comes in from, or goes out to, the front. */
  readonly behind: Obstacles;
  /** What is in the way of the closing or opening punch, and of a sheet that rises to it. */
  readonly above: readonly Solid[];
  /** What is in the way of a punch that leaves aslant, radians from straight up towards the front. */
  readonly leaving: (slope: number) => readonly Solid[];
  /** What is in the way of a sheet laid down or lifted. */
  readonly below: readonly Solid[];
  readonly finger?: { readonly tool: Solid; readonly behind: Solid; readonly below: Solid };
}

interface Sides {
  readonly back: Side;
  readonly front: Side;
}

/** A bill bends part after part on the same tools: what follows from them alone is worked out once. */
const sidesKnown = new WeakMap<Press, Sides>();

export function sides(press: Press): Sides {
  const known = sidesKnown.get(press) ?? sidesOf(press);
  sidesKnown.set(press, known);
  return known;
}

function sidesOf(press: Press): Sides {
  const { punch, ram, die, bed, finger } = press;
  type Change = (outline: readonly (readonly [number, number])[]) => [number, number][];
  const side = (facing: Change): Side => {
    const moving = (change: Change) => [solid("punch", facing(change(punch))), solid("ram", facing(change(ram)))];
    const fixed = (change: Change) => [solid("die", facing(change(die))), solid("bed", facing(change(bed)))];
    const aslant = new Map<number, readonly Solid[]>();
    const leaving = (slope: number): readonly Solid[] => {
      const known = aslant.get(slope) ?? moving((outline) => shadowAlong(outline, slope));
      aslant.set(slope, known);
      return known;
    };
    const same: Change = (outline) => outline.map(([x, y]) => [x, y]);
    return {
      tools: { fixed: fixed(same), moving: moving(same) },
      behind: { fixed: fixed(shadowBehind), moving: moving(shadowBehind) },
      above: moving(shadowAbove),
      leaving,
      below: fixed(shadowBelow),
    };
  };
  const gauge = {
    tool: solid("finger", finger),
    behind: solid("finger", shadowBehind(finger)),
    below: solid("finger", shadowBelow(finger)),
  };
  return { back: { ...side((o) => o.map(([x, y]) => [x, y])), finger: gauge }, front: side(mirrored) };
}

/** No press brake is larger, mm (chosen). */
const LARGEST = 1e4;

/** How far a drawn punch tip or finger face may be off the origin, mm (chosen). */
const OFF_ORIGIN = 0.1;

const checked = new WeakSet<Press>();

/** @throws Refusal on tools that cannot be computed with. */
export function checkPress(press: Press): void {
  if (checked.has(press)) return;
  for (const name of ["punch", "ram", "die", "bed", "finger"] as const) {
    const outline = press[name];
    if (outline.length < 3) throw wrong(`outlines "${name}"`, "3 or more corners", outline.length);
    if (outline.length > 200) throw wrong(`outlines "${name}"`, "at most 200 corners", outline.length);
    const outlying = outline.find(([x, y]) => !(Math.abs(x) <= LARGEST && Math.abs(y) <= LARGEST));
    if (outlying) throw wrong(`outlines "${name}"`, "corners within 10 m of the origin", outlying.join(", "));
    if (crossesItself(outline))
      throw wrong(`outlines "${name}"`, "a polygon that does not cross itself", "one that does");
  }
  const tip = Math.min(...press.punch.map(([, y]) => y));
  if (Math.abs(tip) > OFF_ORIGIN) throw wrong('outlines "punch"', "drawn with its tip at height 0", tip);
  const face = Math.min(...press.finger.map(([x]) => x));
  if (Math.abs(face) > OFF_ORIGIN)
    throw wrong('outlines "finger"', "drawn with its face at 0 and its body behind it", face);
  const above0 = (name: string, value: number) => {
    if (!(value > 0 && value < LARGEST)) throw wrong(name, "above 0", value);
  };
  const atLeast0 = (name: string, value: number) => {
    if (!(value >= 0 && value < LARGEST)) throw wrong(name, "0 or more", value);
  };
  above0('press "Opening"', press.dieOpening);
  atLeast0('press "Shoulder radius"', press.shoulderRadius);
  if (!(press.dieAngle > 0 && press.dieAngle < 180))
    throw wrong('press "Die angle"', "above 0 and below 180 degrees", press.dieAngle);
  if (!(press.gaugeFrom < press.gaugeTo))
    throw wrong('press "Finger from, Finger to"', "a lower and a higher one", `${press.gaugeFrom}, ${press.gaugeTo}`);
  atLeast0('press "Nearest stop"', press.nearestStop);
  if (!(press.furthestStop > press.nearestStop))
    throw wrong('press "Furthest stop"', 'beyond "Nearest stop"', press.furthestStop);
  above0('press "Open height"', press.openHeight);
  above0('press "Stroke"', press.stroke);
  atLeast0('press "Clearance"', press.clearance);
  checked.add(press);
}
