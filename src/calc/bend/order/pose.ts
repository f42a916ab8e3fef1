import { firstOf, itemAt } from "../../../units/certain.ts";
import { type Degrees, type Millimeters, mm } from "../../../units/quantity.ts";
import { wrong } from "../../../units/refusal.ts";
import { chain, posed, roundPiece } from "./chain.ts";
import { depthIn } from "./depth.ts";
import { gapTo } from "./distance.ts";
import { gaugeContact } from "./gauge.ts";
import { type BentPart, checkPart } from "./part.ts";
import { type Piece, place, STRIDE } from "./piece.ts";
import { checkPress, type Press } from "./press.ts";
import { bentPose, flatPose, seat } from "./seat.ts";
import { type Outline, type Point, solid, type ToolName } from "./solid.ts";
import type { End, Hit } from "./stops.ts";

/** Sheet and tools at one moment of a hit, as polygons in the frame of the press: x to the back gauge, y up, mm. */
interface HitPose {
  readonly part: Outline;
  readonly tools: Readonly<Record<ToolName, Outline>>;
  /** Signed gap of the sheet to each tool; working contact reads about 0, a collision negative. */
  readonly gaps: Readonly<Record<ToolName, Millimeters>>;
}

/** At the gauge before the stroke, at the end of the stroke, or sprung back with the punch still down. */
export type Moment = "flat" | "loaded" | "free";

interface MadeHit {
  readonly part: BentPart;
  readonly press: Press;
  /** Numbers of the bends made before. */
  readonly finished: readonly number[];
  readonly hit: Hit;
  /** Overbend of this bend under load. */
  readonly springback: Degrees;
}

/**
 * Where everything is at one moment of a hit.
 * @param sagitta how far the polygon may cut across a true arc.
 * @throws Refusal on an impossible part, tools or bend numbers.
 */
export function poseAtHit(
  { part, press, finished, hit, springback }: MadeHit,
  moment: Moment,
  sagitta: Millimeters = mm(0.01),
): HitPose {
  checkPart(part);
  checkPress(press);
  const bends = [...finished, hit.bend];
  if (new Set(bends).size !== bends.length || bends.some((bend) => !part.bends[bend - 1]))
    throw wrong("bends", `different numbers from 1 to ${part.bends.length}`, bends.join(", "));
  const t = part.thickness;
  const s = seat(part, hit.bend, springback, press);
  const made = finished.reduce((bits, bend) => bits | (1 << (bend - 1)), 0);
  const a = moment === "flat" ? 0 : s[moment];
  const other: End = hit.gaugedEnd === "first" ? "last" : "first";
  const side = (towards: End): Piece[] => {
    const pieces = chain(part, hit.bend, towards, made).pieces;
    return posed([roundPiece(firstOf(pieces).leg, t / 2, s.zoneLength, a, s.radius(a)), ...pieces], bentPose(s, t, a));
  };
  const back = side(hit.gaugedEnd);
  const front = side(other).map(mirror);
  const flat = posed(chain(part, hit.bend, hit.gaugedEnd, made).pieces, flatPose(s, t));
  const stop = gaugeContact(flat, press.gaugeFrom, press.gaugeTo)?.x ?? press.furthestStop;
  const tip = s.tip(a);
  const tools = {
    punch: moved(press.punch, 0, tip),
    ram: moved(press.ram, 0, tip),
    die: press.die,
    bed: press.bed,
    finger: moved(press.finger, stop, 0),
  };
  const gap = (tool: ToolName) => gapOf([...back, ...front], tool, tools[tool]);
  return {
    part: outlineOf(front, back, sagitta),
    tools,
    gaps: { punch: gap("punch"), ram: gap("ram"), die: gap("die"), bed: gap("bed"), finger: gap("finger") },
  };
}

const mirror = (p: Piece): Piece => ({ ...p, ax: -p.ax, bx: -p.bx, cx: -p.cx, mx: -p.mx });

const moved = (outline: Outline, x: number, y: number): Outline =>
  outline.map(([px, py]): Point => [mm(px + x), mm(py + y)]);

function gapOf(pieces: readonly Piece[], tool: ToolName, outline: Outline): Millimeters {
  const s = solid(tool, outline);
  const g = new Float64Array(STRIDE);
  let least = Infinity;
  for (const piece of pieces) {
    place(piece, g, 0, 0, 0, 1, 0);
    const gap = gapTo(s, piece, g, 0, 0, 0, least);
    least = Math.min(least, gap < 0 ? -depthIn(s, piece) : gap);
  }
  return mm(least);
}

/** Both faces of the sheet, front edge to back edge above and back again below. */
function outlineOf(front: readonly Piece[], back: readonly Piece[], sagitta: number): Outline {
  const run = (pieces: readonly Piece[]) => pieces.filter((p) => !p.end);
  const edge = (pieces: readonly Piece[]) =>
    itemAt(
      pieces.filter((p) => p.end),
      1,
    );
  const ends = [edge(front), edge(back)] as const;
  const along = [
    ...run(front)
      .toReversed()
      .map((p) => ({ p, forward: false })),
    ...run(back).map((p) => ({ p, forward: true })),
  ];
  const face = (sign: 1 | -1): Point[] =>
    along.flatMap(({ p, forward }) => {
      const line = p.arc ? arcPoints(p, sagitta) : [[p.ax, p.ay, 0, 0] as const, [p.bx, p.by, 0, 0] as const];
      const walked = forward ? line : line.toReversed();
      const [dx, dy] = forward ? [p.bx - p.ax, p.by - p.ay] : [p.ax - p.bx, p.ay - p.by];
      const length = Math.hypot(dx, dy);
      if (length < 1e-12) return [];
      const [nx, ny] = [-dy / length, dx / length];
      return walked.map(([x, y, ux, uy]): Point => {
        if (!p.arc) return [mm(x + sign * nx * p.half), mm(y + sign * ny * p.half)];
        // The center of an arc lies on one side of the chord; outward from it is up or down accordingly.
        const outward = (p.cx - x) * nx + (p.cy - y) * ny > 0 ? -1 : 1;
        return [mm(x + sign * outward * ux * p.half), mm(y + sign * outward * uy * p.half)];
      });
    });
  // The end piece runs from its chain's upper to its lower face.
  const corner = (p: Piece, upper: boolean): Point => (upper ? [mm(p.ax), mm(p.ay)] : [mm(p.bx), mm(p.by)]);
  return [
    corner(ends[0], true),
    ...face(1),
    corner(ends[1], true),
    corner(ends[1], false),
    ...face(-1).toReversed(),
    corner(ends[0], false),
  ];
}

/** Points along the arc with their direction from the center, ends included. */
function arcPoints(p: Piece, sagitta: number): (readonly [number, number, number, number])[] {
  const outer = p.radius + p.half;
  const half = Math.acos(Math.max(-1, Math.min(1, p.cosine)));
  const most = 2 * Math.acos(Math.max(0, 1 - sagitta / outer));
  const count = Math.max(1, Math.ceil((2 * half) / most));
  const from = Math.atan2(p.ay - p.cy, p.ax - p.cx);
  const way = Math.sign((p.ax - p.cx) * p.my - (p.ay - p.cy) * p.mx) || 1;
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = from + (way * 2 * half * i) / count;
    return [p.cx + p.radius * Math.cos(angle), p.cy + p.radius * Math.sin(angle), Math.cos(angle), Math.sin(angle)];
  });
}
