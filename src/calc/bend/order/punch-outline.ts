/** A punch drawn from its row of the table: nose, flanks, body, and the throat of a gooseneck. */
import { lastOf } from "../../../units/certain.ts";
import { degrees, mm, radians } from "../../../units/quantity.ts";
import type { Punch } from "../tooling.ts";
import type { Outline } from "./solid.ts";

export type Corner = readonly [number, number];
export const outline = (corners: readonly Corner[]): Outline => corners.map(([x, y]) => [mm(x), mm(y)] as const);

/** Taken where the table states none, mm. */
export interface PunchSizes {
  readonly bodyWidth: number;
  readonly punchHeight: number;
}

const ARC_STEPS = 8;
/** The front of a gooseneck's tip stands this far before its line, mm (chosen). */
const LIP = 6;

/**
 * Tip at (0, 0), the throat to the front (x below 0): where the sheet is turned instead of the punch it comes to the
 * same. Relief depth counts from the tip's line back to the throat, relief width up the throat's mouth; it begins
 * along the flank and ends at 45 degrees, and behind it the neck is as thick as the body (chosen).
 */
export function punchOutline(punch: Punch | undefined, assumed: PunchSizes): Outline {
  const half = radians(punch?.angle ?? degrees(60)) / 2;
  const nose = punch?.nose ?? 0;
  const body = punch?.bodyWidth ?? assumed.bodyWidth;
  const wide = Math.max(body / 2, nose * 1.2);
  const right = nose > 0 ? roundNose(nose, half) : [[0, 0] as Corner];
  const [x, y] = lastOf(right);
  const flankAt = (out: number): Corner => [out, y + (out - x) / Math.tan(half)];
  const left = right
    .slice(1)
    .reverse()
    .map(([px, py]): Corner => [-px, py]);
  const depth = punch?.reliefDepth;
  if (depth === undefined) {
    const [, shoulder] = flankAt(wide);
    const top = Math.max(punch?.height ?? assumed.punchHeight, shoulder + 1);
    return outline([...right, flankAt(wide), [wide, top], [-wide, top], [-wide, shoulder], ...left]);
  }
  const lip = Math.max(Math.min(wide, LIP), nose * 1.2);
  const back = Math.max(wide, depth + body);
  const [, from] = flankAt(lip);
  const [, shoulder] = flankAt(back);
  const mouth = punch?.reliefWidth ?? 4 * depth + 3 * lip;
  const top = Math.max(punch?.height ?? Math.max(assumed.punchHeight, from + mouth + wide), shoulder + 2);
  const until = Math.min(from + mouth, top - 1);
  // A mouth too low for its slopes is cut less deep.
  const rise = 1 / Math.tan(half);
  const deep = Math.min(depth, (until - from - lip * rise - wide) / (1 + rise));
  return outline([
    ...right,
    flankAt(back),
    [back, top - 1],
    [wide, top],
    [-wide, top],
    [-wide, until],
    ...(deep > -lip ? [[deep, until - (deep + wide)] as Corner, [deep, from + (deep + lip) * rise] as Corner] : []),
    [-lip, from],
    ...left,
  ]);
}

const roundNose = (nose: number, half: number): Corner[] =>
  Array.from({ length: ARC_STEPS + 1 }, (_, i): Corner => {
    const angle = -Math.PI / 2 + ((Math.PI / 2 - half) * i) / ARC_STEPS;
    return [nose * Math.cos(angle), nose + nose * Math.sin(angle)];
  });
