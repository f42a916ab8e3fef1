/** What a watch makes of a motion, on a block and a strip that can be followed with the finger. */
import { describe, expect, test } from "vitest";
import { straightPiece } from "../../../../src/calc/bend/order/piece.ts";
import { Room } from "../../../../src/calc/bend/order/room.ts";
import { solid } from "../../../../src/calc/bend/order/solid.ts";
import { type Motion, type Rules, Watch } from "../../../../src/calc/bend/order/watch.ts";

const block = solid("die", [
  [20, -5],
  [30, -5],
  [30, 5],
  [20, 5],
]);
const here = [{ solids: [block], x: 0, y: 0 }];
const FREE = ["free", "free", "free", "free"] as const;
const rules = (die: Rules["die"]): Rules => ({ punch: FREE, ram: FREE, die, bed: FREE, finger: FREE });
const strip = straightPiece(7, 1, 0.5, [
  [0, 0],
  [1, 0],
]);

describe("a sheet that moves without turning", () => {
  /** Still for the first half, then on by this much: a shift that is all in one half. */
  const late = (by: number): Motion => {
    const x = (at: number) => Math.max(0, at - 0.5) * 2 * by;
    return {
      pose: (at) => ({ x: x(at), y: 0, angle: 0 }),
      stands: () => here,
      shift: (a, b) => Math.abs(x(a) - x(b)),
      arm: strip.arm,
    };
  };
  const sweep = (by: number, from = 0, to = 1) => {
    const watch = new Watch(0, new Room());
    const free = watch.sweep([strip], from, to, late(by), rules(FREE), "bend");
    return { free, tool: watch.collision?.().tool };
  };

  // Its front face is at 1.5, the block at 20: 18.5 mm lie between.
  test.each([
    [0, 1],
    [1, 0],
  ])("from %d to %d meets what stands in either half of its way", (from, to) => {
    expect(sweep(18, from, to)).toEqual({ free: true, tool: undefined });
    expect(sweep(19, from, to)).toEqual({ free: false, tool: "die" });
  });
});

describe("the flange that is named", () => {
  const look = (zone: 1 | 2) => {
    const deep = straightPiece(1, zone, 0.5, [
      [22, 0],
      [28, 0],
    ]);
    const shallow = straightPiece(3, 3, 0.5, [
      [18, 3],
      [22, 3],
    ]);
    const watch = new Watch(0, new Room());
    watch.look([deep, shallow], { x: 0, y: 0, angle: 0 }, here, rules(["free", "skip", "free", "free"]), "bend");
    return watch.collision!();
  };
  test("is the deepest, but never one whose contact with that tool is not looked at", () => {
    expect(look(2)).toMatchObject({ leg: 1, phase: "bend", tool: "die" });
    expect(look(2).by).toBeCloseTo(5.5, 9); // middle line 5 from the faces above and below, and half a thickness
    expect(look(1).leg).toBe(3);
    expect(look(1).by).toBeCloseTo(2.5, 9); // its end 2 behind the front face
  });
});
