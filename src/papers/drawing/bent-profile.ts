/** The finished part seen from its end: true thickness, true arcs, flanges, angles and radii written beside them. */
import { type BentPart, checkPart } from "../../bill/pictures.ts";
import { show, showNumber } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { dimension } from "./dimension.ts";
import { at, boxOf, drawing, LETTERS, type Point, path, text } from "./svg.ts";

interface Corner {
  /** Where the outside mold lines meet. */
  readonly mold: Point;
  readonly direction: number;
}

/** Turns left for a bend upward (y grows downward on a screen, so upward is a negative turn). */
const step = ([x, y]: Point, direction: number, length: number): Point => [
  x + length * Math.cos(direction),
  y + length * Math.sin(direction),
];

/**
 * The mid line as one path of straight parts and arcs, drawn as wide as the sheet is thick: exact outside and inside
 * faces without computing either. Flanges run along the mold line of the outside; the mid line lies t/2 inside.
 */
interface MidLine {
  readonly d: string;
  readonly points: readonly Point[];
  readonly corners: readonly Corner[];
  readonly ends: readonly [Point, Point];
}

function midLine({ flanges, bends, thickness }: BentPart): MidLine {
  const taken = bends.map(
    ({ angle, insideRadius }) => Math.tan((Math.abs(angle) * Math.PI) / 360) * (insideRadius + thickness),
  );
  let direction = 0;
  let position: Point = [0, 0];
  const start = position;
  let d = `M ${at(0)} ${at(0)}`;
  const points: Point[] = [position];
  const corners: Corner[] = [];
  flanges.forEach((flange, i) => {
    const straight = flange - (taken[i - 1] ?? 0) - (taken[i] ?? 0);
    const bend = bends[i];
    if (bend) {
      const mid = bend.insideRadius + thickness / 2;
      const turn = (-bend.angle * Math.PI) / 180;
      const side = Math.sign(bend.angle);
      // The mold-line corner: on along the leg, and half a thickness to the outside of the bend.
      const ahead = step(position, direction, straight + taken[i]!);
      corners.push({ mold: step(ahead, direction + (side * Math.PI) / 2, thickness / 2), direction });
      position = step(position, direction, straight);
      points.push(position);
      d += ` L ${at(position[0])} ${at(position[1])}`;
      const centre = step(position, direction - (side * Math.PI) / 2, mid);
      for (let k = 1; k <= 8; k++) points.push(step(centre, direction + (side * Math.PI) / 2 + (turn * k) / 8, mid));
      direction += turn;
      position = step(centre, direction + (side * Math.PI) / 2, mid);
      d += ` A ${at(mid)} ${at(mid)} 0 0 ${turn > 0 ? 1 : 0} ${at(position[0])} ${at(position[1])}`;
    } else {
      position = step(position, direction, straight);
      points.push(position);
      d += ` L ${at(position[0])} ${at(position[1])}`;
    }
  });
  return { d, points, corners, ends: [start, position] };
}

/** Refuses (Refusal) a part that no sheet can be. Lengths in mm; figures are written in the reader's units. */
export function drawBentProfile(part: BentPart, system: UnitSystem, name = "part"): string {
  checkPart(part);
  const { d, points, corners } = midLine(part);
  const box = boxOf([...points, ...corners.map(({ mold }) => mold)]);
  const size = Math.max(box.right - box.left, box.bottom - box.top, part.thickness * 4);
  const letter = size / 18;
  const sameRadius = part.bends.every(({ insideRadius }) => insideRadius === part.bends[0]!.insideRadius);
  const length = (value: number) => show(value, "length", system, 4);
  const legs = part.flanges.map((flange, i) => legEnds(part, corners, i, flange));
  return drawing(
    {
      title: `${name}: bent profile`,
      description: `Sheet ${length(part.thickness)} thick, ${part.bends.length} bends. Outside flanges ${part.flanges.map(length).join(", ")}; bend angles ${part.bends.map(({ angle }) => `${showNumber(angle)} degrees`).join(", ")}.`,
      box,
      margin: letter * 5,
      letter,
    },
    path(d, { "stroke-width": part.thickness, "stroke-linecap": "butt", opacity: 0.3 }),
    path(d, { "stroke-width": letter / 16, "stroke-dasharray": `${at(letter / 3)} ${at(letter / 6)}` }),
    ...legs.map(({ from, to, away }, i) => dimension(from, to, away * letter * 1.3, length(part.flanges[i]!), letter)),
    ...corners.map((corner, i) =>
      bendLabel(part, corner, i, letter, sameRadius ? undefined : `R ${length(part.bends[i]!.insideRadius)}`),
    ),
    sameRadius
      ? text(
          [(box.left + box.right) / 2, box.bottom + letter * 4.2],
          `inside radius ${length(part.bends[0]!.insideRadius)}, sheet ${length(part.thickness)}`,
          { ...LETTERS, "font-size": letter * 0.8 },
        )
      : "",
  );
}

function legEnds(
  part: BentPart,
  corners: readonly Corner[],
  i: number,
  flange: number,
): { from: Point; to: Point; away: number } {
  const before = corners[i - 1];
  const after = corners[i];
  const bend = part.bends[i] ?? part.bends[i - 1]!;
  const side = Math.sign(bend.angle);
  if (before && after && Math.sign(part.bends[i - 1]!.angle) === Math.sign(part.bends[i]!.angle))
    return { from: before.mold, to: after.mold, away: -side };
  if (after) return { from: step(after.mold, after.direction + Math.PI, flange), to: after.mold, away: -side };
  const turned = before!.direction - (part.bends[i - 1]!.angle * Math.PI) / 180;
  return { from: before!.mold, to: step(before!.mold, turned, flange), away: -Math.sign(part.bends[i - 1]!.angle) };
}

/** Number and angle inside the bend, the radius too where bends differ. */
function bendLabel(
  part: BentPart,
  { mold, direction }: Corner,
  i: number,
  letter: number,
  radius: string | undefined,
): string {
  const { angle, insideRadius } = part.bends[i]!;
  const side = Math.sign(angle);
  // On the bisector, far enough to clear the arc.
  const bisector = direction - (angle * Math.PI) / 360 - (side * Math.PI) / 2;
  const place = step(mold, bisector, insideRadius * 0.6 + part.thickness * 1.5 + letter * 1.6);
  const words = `${i + 1}: ${showNumber(Math.abs(angle))}°${angle < 0 ? " down" : ""}`;
  return [
    text(place, words, { ...LETTERS, "dominant-baseline": "middle" }),
    radius ? text([place[0], place[1] + letter], radius, { ...LETTERS, "dominant-baseline": "middle" }) : "",
  ].join("");
}
