import { firstOf, itemAt, lastOf, missing } from "../../../units/certain.ts";
import type { Millimeters } from "../../../units/quantity.ts";

export type Point = readonly [x: Millimeters, y: Millimeters];
/** Corners of a simple polygon in either sense, not closed by repeating the first. */
export type Outline = readonly Point[];

export type ToolName = "punch" | "ram" | "die" | "bed" | "finger";

/** An outline laid out for quick distance work, in millimeters. */
export interface Solid {
  readonly tool: ToolName;
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly west: number;
  readonly east: number;
  readonly south: number;
  readonly north: number;
}

type Plain = readonly (readonly [number, number])[];

export function solid(tool: ToolName, points: Plain): Solid {
  const xs = Float64Array.from(points, (p) => p[0]);
  const ys = Float64Array.from(points, (p) => p[1]);
  return {
    tool,
    xs,
    ys,
    west: Math.min(...xs),
    east: Math.max(...xs),
    south: Math.min(...ys),
    north: Math.max(...ys),
  };
}

export const mirrored = (outline: Plain): [number, number][] => outline.map(([x, y]) => [-x, y]);

/** Longer than any press brake is deep, so a shadow has no far side. */
const FAR = 1e5;

/**
 * The region a body would touch on its way when it moves in from -x: every point of the outline and everything behind
 * it. Moving the sheet in from the front past a tool is free of contact exactly when the sheet, where it ends, does not
 * meet the tool's shadow; so a sweep costs one look.
 */
export function shadowBehind(outline: Plain): [number, number][] {
  const levels = [...new Set(outline.map((p) => p[1]))].sort((a, b) => a - b);
  const front: [number, number][] = [];
  for (const [k, high] of levels.entries()) {
    const low = levels[k - 1];
    if (low === undefined) continue;
    let nearest: [number, number] | undefined;
    outline.forEach((p, i) => {
      const q = itemAt(outline, (i + 1) % outline.length);
      const [below, above] = p[1] < q[1] ? [p, q] : [q, p];
      if (below[1] > low || above[1] < high) return;
      const at = (y: number) => below[0] + ((above[0] - below[0]) * (y - below[1])) / (above[1] - below[1]);
      const edge: [number, number] = [at(low), at(high)];
      // Edges of a simple polygon do not cross between two levels, so the middle decides which one is in front.
      if (!nearest || edge[0] + edge[1] < nearest[0] + nearest[1]) nearest = edge;
    });
    if (nearest) front.push([nearest[0], low], [nearest[1], high]);
  }
  return [...front, [FAR, lastOf(levels)], [FAR, firstOf(levels)]];
}

const turnedLeft = (outline: Plain): [number, number][] => outline.map(([x, y]) => [y, -x]);
const turnedRight = (outline: Plain): [number, number][] => outline.map(([x, y]) => [-y, x]);

/** The outline and everything above it: what is in the way of a tool that comes down to, or goes up from, where it is. */
export const shadowAbove = (outline: Plain): [number, number][] => turnedRight(shadowBehind(turnedLeft(outline)));
/** The outline and everything below it: what is in the way of a sheet laid down onto it or lifted off it. */
export const shadowBelow = (outline: Plain): [number, number][] => turnedLeft(shadowBehind(turnedRight(outline)));

/**
 * What a body meets that leaves along a slant, `slope` radians from straight up towards -x: the outline and everything
 * beyond it on that way.
 */
export function shadowAlong(outline: Plain, slope: number): [number, number][] {
  if (slope === 0) return shadowAbove(outline);
  const turn = (points: Plain, by: number): [number, number][] => {
    const [cos, sin] = [Math.cos(by), Math.sin(by)];
    return points.map(([x, y]) => [cos * x - sin * y, sin * x + cos * y]);
  };
  return turn(shadowAbove(turn(outline, -slope)), slope);
}

export function contains(s: Solid, x: number, y: number): boolean {
  if (x < s.west || x > s.east || y < s.south || y > s.north) return false;
  let inside = false;
  const n = s.xs.length;
  for (let i = 0, j = n - 1; i < n; j = i++) {
    const yi = s.ys[i] ?? missing();
    const yj = s.ys[j] ?? missing();
    if (yi > y === yj > y) continue;
    const xi = s.xs[i] ?? missing();
    const xj = s.xs[j] ?? missing();
    if (x < xi + ((xj - xi) * (y - yi)) / (yj - yi)) inside = !inside;
  }
  return inside;
}

/** Two edges that are not neighbors meet. */
export function crossesItself(outline: Plain): boolean {
  const n = outline.length;
  const turn = (a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]) =>
    Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      const [a, b] = [itemAt(outline, i), itemAt(outline, i + 1)];
      const [c, d] = [itemAt(outline, j), itemAt(outline, (j + 1) % n)];
      if (turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0) return true;
    }
  return false;
}
