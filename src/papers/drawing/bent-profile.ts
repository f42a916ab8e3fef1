/** The finished part seen from its end: true thickness, true arcs, flanges and angles written beside them. */

import { type BentPart, checkPart } from "../../bill/pictures.ts";
import { itemAt, missing } from "../../units/certain.ts";
import { show, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { dimension } from "./dimension.ts";
import { type Drawn, FIGURE, type Frame, fitted, Ink, NOTE, scaleSays } from "./ink.ts";
import { ring, stretch } from "./ring.ts";
import { at, boxOf, type Point, path } from "./svg.ts";

interface Corner {
  /** Where the outside mold lines meet. */
  readonly mold: Point;
  readonly direction: number;
}

const step = ([x, y]: Point, direction: number, length: number): Point => [
  x + length * Math.cos(direction),
  y + length * Math.sin(direction),
];

/**
 * The mid line as straight parts and arcs, drawn as wide as the sheet is thick: exact outside and inside faces without
 * computing either. Flanges run along the mold line of the outside; the mid line lies t/2 inside. Turns left for a bend
 * upward (y grows downward on a screen, so upward is a negative turn).
 */
interface MidLine {
  /** At true size, to be scaled. */
  readonly d: (scale: number) => string;
  readonly points: readonly Point[];
  readonly corners: readonly Corner[];
}

function midLine({ flanges, bends, thickness }: BentPart): MidLine {
  const taken = bends.map(
    ({ angle, insideRadius }) => Math.tan((Math.abs(angle) * Math.PI) / 360) * (insideRadius + thickness),
  );
  let direction = 0;
  let position: Point = [0, 0];
  const moves: { readonly to: Point; readonly radius?: number; readonly isClockwise?: boolean }[] = [];
  const points: Point[] = [position];
  const corners: Corner[] = [];
  flanges.forEach((flange, i) => {
    const straight = flange - (taken[i - 1] ?? 0) - (taken[i] ?? 0);
    const bend = bends[i];
    const before = position;
    position = step(position, direction, straight);
    points.push(position);
    moves.push({ to: position });
    if (!bend) return;
    const mid = bend.insideRadius + thickness / 2;
    const turn = (-bend.angle * Math.PI) / 180;
    const side = Math.sign(bend.angle);
    // The mold-line corner: on along the leg, and half a thickness to the outside of the bend.
    const ahead = step(before, direction, straight + itemAt(taken, i));
    corners.push({ mold: step(ahead, direction + (side * Math.PI) / 2, thickness / 2), direction });
    const center = step(position, direction - (side * Math.PI) / 2, mid);
    for (let k = 1; k <= ARC_POINTS; k++)
      points.push(step(center, direction + (side * Math.PI) / 2 + (turn * k) / ARC_POINTS, mid));
    direction += turn;
    position = step(center, direction + (side * Math.PI) / 2, mid);
    moves.push({ to: position, radius: mid, isClockwise: turn > 0 });
  });
  const d = (scale: number) =>
    moves.reduce((so, { to: [x, y], radius, isClockwise }) => {
      const to = `${at(x * scale)} ${at(y * scale)}`;
      if (radius === undefined) return `${so} L ${to}`;
      return `${so} A ${at(radius * scale)} ${at(radius * scale)} 0 0 ${isClockwise ? 1 : 0} ${to}`;
    }, "M 0 0");
  return { d, points, corners };
}
const ARC_POINTS = 8;

const FRAME: Frame = { width: 58, height: 46 };
const LARGEST = 1.5; // a small clip is not drawn larger than this

/** What is marked on the part. */
interface BentFault {
  readonly bends?: "all" | "sharpest";
  /** Counted from 0. */
  readonly flange?: number;
  /** From a flange's inside face, mm. */
  readonly holesFrom?: number;
}

/** Refuses (Refusal) a part that no sheet can be. Lengths in mm; figures are written in the reader's units. */
export function drawBentProfile(
  part: BentPart,
  system: UnitSystem,
  name = "part",
  frame = FRAME,
  fault: BentFault = {},
): Drawn {
  checkPart(part);
  const { d, points, corners } = midLine(part);
  const box = boxOf([...points, ...corners.map(({ mold }) => mold)]);
  const length = (value: number) => show(value, "length", system, 4);
  const plain = (value: number) => length(value).replace(/ \S+$/, "");
  const { ink, scale } = fitted(frame, Math.min(LARGEST, frame.width / Math.max(1, box.right - box.left)), (scale) => {
    const ink = new Ink();
    const put = ([x, y]: Point): Point => [x * scale, y * scale];
    const thick = Math.max(part.thickness * scale, LEAST_THICK);
    ink.add(path(d(scale), { "stroke-width": thick, "stroke-linecap": "butt", opacity: 0.75 }), points.map(put), thick);
    markFault(ink, part, corners, put, fault);
    corners.forEach((corner, i) => {
      label(ink, part, corner, i, scale);
    });
    part.flanges.forEach((flange, i) => {
      const { from, to } = legEnds(part, corners, i, flange);
      dimension(ink, { from: put(from), to: put(to), words: plain(flange) });
    });
    return ink;
  });
  const svg = ink.svg(
    `${name}: bent profile`,
    `Sheet ${length(part.thickness)} thick, ${part.bends.length} bends. Outside flanges ${part.flanges.map(length).join(", ")}; bend angles ${part.bends.map(({ angle }) => `${showNumber(angle)} degrees`).join(", ")}.`,
  );
  const isThick = part.thickness * scale < LEAST_THICK;
  return { svg, words: [], height: ink.height, scale: `${scaleSays(scale)}${isThick ? ", sheet drawn thicker" : ""}` };
}
const LEAST_THICK = 0.8; // mm on paper: a thin sheet is still seen

function markFault(
  ink: Ink,
  part: BentPart,
  corners: readonly Corner[],
  put: (point: Point) => Point,
  { bends, flange, holesFrom }: BentFault,
): void {
  const angles = part.bends.map(({ angle }) => Math.abs(angle));
  corners.forEach(({ mold }, i) => {
    if (bends === "all" || (bends === "sharpest" && angles[i] === Math.max(...angles))) ring(ink, put(mold));
  });
  if (flange !== undefined) {
    const { from, to } = legEnds(part, corners, flange, itemAt(part.flanges, flange));
    ring(ink, put([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]));
  }
  if (holesFrom === undefined) return;
  corners.forEach(({ mold, direction }, i) => {
    const turn = (itemAt(part.bends, i).angle * Math.PI) / 180;
    const sine = Math.abs(Math.sin(turn));
    if (sine < LEAST_SINE) return;
    // Where the inside face of one flange meets the outside of the other.
    const face = part.thickness / sine;
    for (const [way, length] of [
      [direction + Math.PI, itemAt(part.flanges, i)],
      [direction - turn, itemAt(part.flanges, i + 1)],
    ] as const)
      stretch(ink, put(step(mold, way, face)), put(step(mold, way, Math.min(face + holesFrom, length))));
  });
}
const LEAST_SINE = 0.5; // a bend under 30 degrees has no face to measure from

/** Mold-line ends of an outside flange, in the order in which its outside lies to the left. */
function legEnds(part: BentPart, corners: readonly Corner[], i: number, flange: number): { from: Point; to: Point } {
  const before = corners[i - 1];
  const after = corners[i];
  const bendBefore = part.bends[i - 1];
  const bendAfter = part.bends[i];
  const outside = (side: number, from: Point, to: Point) => (side > 0 ? { from: to, to: from } : { from, to });
  if (before && after && bendBefore && bendAfter && Math.sign(bendBefore.angle) === Math.sign(bendAfter.angle))
    return outside(Math.sign(bendAfter.angle), before.mold, after.mold);
  if (after && bendAfter)
    return outside(Math.sign(bendAfter.angle), step(after.mold, after.direction + Math.PI, flange), after.mold);
  const { mold, direction } = before ?? missing();
  const { angle } = bendBefore ?? missing();
  const turned = direction - (angle * Math.PI) / 180;
  return outside(Math.sign(angle), mold, step(mold, turned, flange));
}

/** Number and angle inside the bend where there is room, else outside. */
function label(ink: Ink, part: BentPart, { mold, direction }: Corner, i: number, scale: number): void {
  const { angle, insideRadius } = itemAt(part.bends, i);
  const side = Math.sign(angle);
  const bisector = direction - (angle * Math.PI) / 360 - (side * Math.PI) / 2;
  const least = insideRadius * 0.6 + part.thickness * 1.5;
  const [x, y] = [mold[0] * scale, mold[1] * scale];
  const places = [1, -1].flatMap((way) =>
    Array.from({ length: 14 }, (_, k): Point => {
      const away = way * (least * (way > 0 ? scale : 0.2) + FIGURE * (1.1 + k * 0.6));
      return [x + Math.cos(bisector) * away, y + Math.sin(bisector) * away];
    }),
  );
  const words = `${i + 1}: ${showNumber(Math.abs(angle))}°${angle < 0 ? " down" : ""}`;
  ink.textNear(places, words, { size: NOTE * 1.1, bold: true });
}
