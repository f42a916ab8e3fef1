/** Exact distances against points strewn densely over both shapes: slow, plain, and knowing nothing of feet and sweeps. */
import { describe, expect, test } from "vitest";
import { depthIn } from "../../../../src/calc/bend/order/depth.ts";
import { gapTo } from "../../../../src/calc/bend/order/distance.ts";
import { arcPiece, type Piece, placed, STRIDE, straightPiece } from "../../../../src/calc/bend/order/piece.ts";
import { Room } from "../../../../src/calc/bend/order/room.ts";
import { crossesItself, type Solid, solid } from "../../../../src/calc/bend/order/solid.ts";
import { randomFrom } from "../../../../src/tools/random/random.ts";

type Point = readonly [number, number];
const STEPS = 800;
const fractions = Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS);

interface Case {
  readonly piece: Piece;
  /** Points of the middle line. */
  readonly line: readonly Point[];
  readonly tool: Solid;
  readonly x: number;
  readonly y: number;
}

/** A straight or an arc of any sweep up to half a turn, and a notched block moved beside it or over it. */
function drawn(seed: number): Case {
  const draw = randomFrom(seed);
  const between = (a: number, b: number) => a + (b - a) * draw();
  const half = between(0, 2);
  const at = (): Point => [between(-10, 10), between(-10, 10)];
  let piece: Piece;
  let line: Point[];
  if (seed % 2) {
    const [a, b] = [at(), at()];
    piece = straightPiece(1, 1, half, [a, b]);
    line = fractions.map((t) => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]);
  } else {
    const [c, radius, from, sweep] = [at(), between(2, 8), between(-4, 4), between(-3, 3)];
    piece = arcPiece(1, 1, half, { center: c, radius, from, sweep });
    line = fractions.map((t) => [
      c[0] + radius * Math.cos(from + t * sweep),
      c[1] + radius * Math.sin(from + t * sweep),
    ]);
  }
  const [w, h, notch] = [between(3, 12), between(3, 12), between(0.5, 2.5)];
  const outline: Point[] = [
    [0, 0],
    [w, 0],
    [w, h],
    [notch, h],
    [notch, h / 2],
    [0, h / 2],
  ];
  const turn = between(0, 6);
  const turned = outline.map(
    ([x, y]): Point => [x * Math.cos(turn) - y * Math.sin(turn), x * Math.sin(turn) + y * Math.cos(turn)],
  );
  return { piece, line, tool: solid("die", turned), x: between(-14, 14), y: between(-14, 14) };
}

const cases = Array.from({ length: 300 }, (_, i) => drawn(i + 1));
/** The piece is the second of its layout, behind one that lies far off on one side or the other. */
const layoutOf = (p: Piece, far = -500): Room => {
  const room = new Room();
  room.lay([arcPiece(9, 1, 0, { center: [far, far], radius: 1, from: 0, sweep: 1 }), p], { x: 0, y: 0, angle: 0 });
  return room;
};

/** The outline seen from a point turns once about it where the point lies inside, and not at all where it lies outside. */
function isRound({ xs, ys }: Solid, x: number, y: number): boolean {
  let turned = 0;
  for (let i = 0; i < xs.length; i++) {
    const j = (i + 1) % xs.length;
    const [ax, ay, bx, by] = [xs[i]! - x, ys[i]! - y, xs[j]! - x, ys[j]! - y];
    turned += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  }
  return Math.abs(turned) > Math.PI;
}

/** Least distance of the strewn points outside the tool, greatest of those inside it. */
function strewn({ line, tool, x, y }: Case): { readonly apart: number; readonly deep: number } {
  const { xs, ys } = tool;
  let apart = Infinity;
  let deep = -Infinity;
  for (const [px, py] of line) {
    const [u, v] = [px + x, py + y];
    let least = Infinity;
    for (let i = 0; i < xs.length; i++) {
      const j = (i + 1) % xs.length;
      for (let k = 0; k <= 40; k++) {
        const t = k / 40;
        least = Math.min(least, Math.hypot(xs[i]! + t * (xs[j]! - xs[i]!) - u, ys[i]! + t * (ys[j]! - ys[i]!) - v));
      }
    }
    if (isRound(tool, u, v)) deep = Math.max(deep, least);
    else apart = Math.min(apart, least);
  }
  return { apart, deep };
}

describe("a piece of sheet and a tool", () => {
  const measured = cases.map((each) => ({ ...each, ...strewn(each) }));
  test("some meet and some do not", () => {
    expect(measured.filter(({ deep }) => deep > 0).length).toBeGreaterThan(15);
    expect(measured.filter(({ apart, deep }) => deep < 0 && apart > 3).length).toBeGreaterThan(15);
  });

  test.each(measured.map((each, i) => [i + 1, each] as const))("case %i: the gap, the depth, the boxes", (_, each) => {
    const { piece, tool, x, y, apart, deep } = each;
    const room = layoutOf(piece, x > 0 ? -500 : 500);
    const gap = gapTo(tool, piece, room.layout, STRIDE, x, y, Infinity);
    if (deep > 0) {
      expect(gap).toBeLessThan(-piece.half);
      const moved = placed([piece], x, y, 1, 0)[0]!;
      expect(Math.abs(depthIn(tool, moved) - (deep + piece.half))).toBeLessThan(0.1);
    } else {
      // Forty points a side, some 0.3 mm apart, overestimate a distance of a millimeter by a hundredth.
      expect(gap + piece.half).toBeLessThanOrEqual(apart + 1e-9);
      expect(gap + piece.half).toBeGreaterThan(apart - 0.2);
      // What is not below the best known is answered by it.
      expect(gapTo(tool, piece, room.layout, STRIDE, x, y, gap - 0.01)).toBe(gap - 0.01);
      expect(gapTo(tool, piece, room.layout, STRIDE, x, y, gap + 0.01)).toBe(gap);
    }
    // The boxes are about the tool, moved to where it stands from the piece.
    expect(room.clearOf(1, tool, -x, -y, gap + 1e-9)).toBe(false);
  });

  test("boxes far apart are clear on every side by just their distance", () => {
    const straight = layoutOf(
      straightPiece(1, 1, 1, [
        [-2, 0],
        [2, 3],
      ]),
    ); // boxed from -3 to 3 and from -1 to 4
    const arc = layoutOf(arcPiece(1, 1, 1, { center: [0, 0], radius: 4, from: 0, sweep: 1 })); // its whole circle: from -5 to 5
    const block = solid("bed", [
      [-1, -2],
      [3, -2],
      [3, 7],
      [-1, 7],
    ]);
    for (const [room, x, y, gap] of [
      [straight, 14, 0, 10],
      [straight, -16, 0, 10],
      [straight, 0, 16, 10],
      [straight, 0, -18, 10],
      [arc, 16, 0, 10],
      [arc, -18, 0, 10],
      [arc, 0, 17, 10],
      [arc, 0, -22, 10],
    ] as const) {
      expect(room.clearOf(1, block, x, y, gap)).toBe(true);
      expect(room.clearOf(1, block, x, y, gap + 0.001)).toBe(false);
    }
  });

  test("the second piece of a layout stands behind the first", () => {
    const room = new Room();
    const pieces = [
      straightPiece(1, 1, 0, [
        [0, 0],
        [1, 0],
      ]),
      straightPiece(2, 1, 0, [
        [0, 0],
        [5, 0],
      ]),
    ];
    room.lay(pieces, { x: 10, y: 20, angle: Math.PI / 2 });
    expect([...room.layout.slice(STRIDE, STRIDE + 4)].map((n) => Math.round(n * 1e6) / 1e6)).toEqual([10, 20, 10, 25]);
  });
});

describe("an outline that crosses itself", () => {
  const square: Point[] = [
    [1, 1],
    [4, 1],
    [4, 3],
    [1, 3],
  ];
  const order = (...at: number[]) => at.map((i) => square[i]!);
  test("is a square whose corners are taken crosswise, not one taken round, in either sense", () => {
    expect(crossesItself(square)).toBe(false);
    expect(crossesItself([...square].reverse())).toBe(false);
    expect(crossesItself(order(0, 2, 1, 3))).toBe(true);
    expect(crossesItself(order(0, 1, 3, 2))).toBe(true);
  });
  test("is a bow far from the origin too, and no comb is one", () => {
    const moved = (points: Point[], x: number, y: number) => points.map(([a, b]): Point => [a + x, b + y]);
    const comb: Point[] = [
      [0, 0],
      [9, 0],
      [9, 5],
      [6, 5],
      [6, 2],
      [3, 2],
      [3, 5],
      [0, 5],
    ];
    for (const [x, y] of [
      [0, 0],
      [-50, 30],
      [20, -40],
    ] as const) {
      expect(crossesItself(moved(comb, x, y))).toBe(false);
      expect(crossesItself(moved(order(0, 2, 1, 3), x, y))).toBe(true);
    }
  });
});
