import { itemAt } from "../../../units/certain.ts";
import { radians } from "../../../units/quantity.ts";
import { allowance, type BentPart, straightLengths } from "./part.ts";
import { arcPiece, type Piece, placed, straightPiece, type Zone } from "./piece.ts";
import type { Pose } from "./seat.ts";
import type { End } from "./stops.ts";

/**
 * The sheet on one side of a bend that is being made: from where it leaves the round, along +x in its own frame with
 * the inside of the bend up, to its free edge. Its shape depends on which bends on this side are finished, not on their order.
 */
export interface Chain {
  readonly pieces: readonly Piece[];
  /** Straight length before the first finished bend or the free edge. */
  readonly run: number;
  /** Furthest point from the frame's origin. */
  readonly radius: number;
}

/** @param finished bit i - 1 set when bend i is finished. */
export function chain(
  part: BentPart,
  bendNumber: number,
  towards: End,
  finished: number,
  straights: readonly number[] = straightLengths(part),
): Chain {
  const outward = towards === "first" ? -1 : 1;
  const up = Math.sign(itemAt(part.bends, bendNumber - 1).angle);
  const half = part.thickness / 2;
  const pieces: Piece[] = [];
  let [x, y, heading] = [0, 0, 0];
  let zone: Zone = 1;
  let run = 0;
  const walk = (length: number): [number, number] => [x + length * Math.cos(heading), y + length * Math.sin(heading)];
  for (let bend = bendNumber; ; bend += outward) {
    // Flange numbers count from 1: the one after bend b is b + 1, the one before it is b.
    const leg = outward > 0 ? bend + 1 : bend;
    const next = part.bends[bend + outward - 1];
    const here =
      bend === bendNumber || finished & (1 << (bend - 1)) ? 0 : allowance(part, itemAt(part.bends, bend - 1)) / 2;
    const done = next && finished & (1 << (bend + outward - 1));
    const there = next && !done ? allowance(part, next) / 2 : 0;
    const length = itemAt(straights, leg - 1) + here + there;
    if (zone === 1) run += length;
    if (!next) {
      // The round cap of the thickened line reaches half a thickness further: stop short and draw the square end.
      pieces.push(straightPiece(leg, zone, half, [[x, y], walk(Math.max(0, length - half))]));
      const [ex, ey] = walk(length);
      const [nx, ny] = [-Math.sin(heading) * half, Math.cos(heading) * half];
      const [bx, by] = walk(Math.max(0, length - half));
      pieces.push(
        straightPiece(
          leg,
          zone,
          0,
          [
            [bx + nx, by + ny],
            [ex + nx, ey + ny],
          ],
          true,
        ),
        straightPiece(
          leg,
          zone,
          0,
          [
            [ex + nx, ey + ny],
            [ex - nx, ey - ny],
          ],
          true,
        ),
        straightPiece(
          leg,
          zone,
          0,
          [
            [ex - nx, ey - ny],
            [bx - nx, by - ny],
          ],
          true,
        ),
      );
      break;
    }
    const to = walk(length);
    pieces.push(straightPiece(leg, zone, half, [[x, y], to]));
    [x, y] = to;
    if (done) {
      const turn = radians(next.angle) * up;
      const radius = next.insideRadius + half;
      const side = Math.sign(turn);
      const center: [number, number] = [x - side * radius * Math.sin(heading), y + side * radius * Math.cos(heading)];
      const from = heading - (side * Math.PI) / 2;
      const beyond = outward > 0 ? leg + 1 : leg - 1;
      const round = arcPiece(beyond, zone === 1 ? 2 : 3, half, { center, radius, from, sweep: turn });
      pieces.push(round);
      [x, y, heading] = [round.bx, round.by, heading + turn];
      zone = 3;
    }
  }
  return { pieces, run, radius: Math.max(...pieces.map((p) => p.arm)) };
}

/** The half of the round that belongs to this side, in the same frame: it ends at the origin. A straight while flat. */
export const roundPiece = (leg: number, half: number, zoneLength: number, a: number, radius: number): Piece =>
  a > 1e-9
    ? arcPiece(leg, 0, half, { center: [0, radius], radius, from: -Math.PI / 2 - a, sweep: a })
    : straightPiece(leg, 0, half, [
        [-zoneLength / 2, 0],
        [0, 0],
      ]);

/** The pieces laid out in a pose. */
export const posed = (pieces: readonly Piece[], { x, y, angle }: Pose): Piece[] =>
  placed(pieces, x, y, Math.cos(angle), Math.sin(angle));
