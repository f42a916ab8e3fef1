/**
 * A layout against plain lists: after every change the same parts, sizes and area, and every cap held against what a cap
 * is, the size to which one part alone may grow while the sheet still holds all.
 */
import { describe, expect, test } from "vitest";
import {
  CAP_X,
  CAP_Y,
  DEPTH,
  DIRECTION,
  FIRST,
  GuillotineLayout,
  INTERNAL,
  ITEM,
  LEAVES,
  NEXT,
  PARENT,
  STRIDE,
  TIGHT_X,
  TIGHT_Y,
} from "../../../src/calc/cutting/guillotine-layout.ts";
import type { Direction } from "../../../src/calc/cutting/problem.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";

interface Leaf {
  readonly item: number;
  readonly x: number;
  readonly y: number;
}
interface Parts {
  readonly direction: Direction;
  parts: Tree[];
}
type Tree = Leaf | Parts;
const isLeaf = (tree: Tree): tree is Leaf => "item" in tree;

/** What stands below a node, its parts in no order. */
const treeOf = (layout: GuillotineLayout, at = 0): Tree => {
  const d = layout.data;
  if (d[at + ITEM]! >= 0) return { item: d[at + ITEM]!, x: d[at + TIGHT_X]!, y: d[at + TIGHT_Y]! };
  return {
    direction: d[at + DIRECTION] as Direction,
    parts: childrenOf(layout, at).map((child) => treeOf(layout, child)),
  };
};
const childrenOf = ({ data }: GuillotineLayout, at: number): number[] => {
  const children: number[] = [];
  for (let child = data[at + FIRST]!; child !== -1; child = data[child + NEXT]!) children.push(child);
  return children;
};
const nodesBelow = (layout: GuillotineLayout, at = 0): number[] => [
  at,
  ...(layout.data[at + ITEM] === INTERNAL ? childrenOf(layout, at).flatMap((child) => nodesBelow(layout, child)) : []),
];

/** [x, y] of a tree: along its direction the sum of its parts, across it the largest; one part as large as asked. */
function sizeOf(tree: Tree, grown?: Tree, by: readonly [number, number] = [0, 0]): [number, number] {
  const more = tree === grown ? by : [0, 0];
  if (isLeaf(tree)) return [tree.x + more[0]!, tree.y + more[1]!];
  const sizes = tree.parts.map((part) => sizeOf(part, grown, by));
  const along = (axis: 0 | 1) =>
    axis === tree.direction
      ? sizes.reduce((sum, size) => sum + size[axis], 0)
      : Math.max(0, ...sizes.map((size) => size[axis]));
  return [along(0) + more[0]!, along(1) + more[1]!];
}
const leavesOf = (tree: Tree): Leaf[] => (isLeaf(tree) ? [tree] : tree.parts.flatMap(leavesOf));
const sorted = (tree: Tree): unknown =>
  isLeaf(tree)
    ? tree
    : {
        ...tree,
        parts: tree.parts
          .map(sorted)
          .map((part) => JSON.stringify(part))
          .sort(),
      };

/** Everything the layout says of itself, held against the lists. */
function hold(layout: GuillotineLayout, mirror: Parts): void {
  const { data: d, w, h } = layout;
  expect(sorted(treeOf(layout))).toEqual(sorted(mirror));
  const leaves = leavesOf(mirror);
  expect(layout.area).toBe(leaves.reduce((sum, { x, y }) => sum + x * y, 0));
  const taken: number[] = [];
  layout.eachPiece((item) => taken.push(item));
  expect(taken.sort((a, b) => a - b)).toEqual(leaves.map(({ item }) => item).sort((a, b) => a - b));
  // The layout's own lists in its own order, so that a node of it has one of ours.
  const own = new Map<number, Tree>();
  const walk = (at: number, depth: number): Tree => {
    const tree: Tree =
      d[at + ITEM]! >= 0
        ? { item: d[at + ITEM]!, x: d[at + TIGHT_X]!, y: d[at + TIGHT_Y]! }
        : {
            direction: d[at + DIRECTION] as Direction,
            parts: childrenOf(layout, at).map((child) => {
              expect(d[child + PARENT]).toBe(at);
              return walk(child, depth + 1);
            }),
          };
    expect(d[at + DEPTH]).toBe(depth);
    own.set(at, tree);
    return tree;
  };
  const whole = walk(0, 0);
  for (const [at, tree] of own) {
    expect([d[at + TIGHT_X], d[at + TIGHT_Y]]).toEqual(sizeOf(tree));
    if (!isLeaf(tree)) expect(d[at + LEAVES]).toBe(leavesOf(tree).length);
    const room = [d[at + CAP_X]! - d[at + TIGHT_X]!, d[at + CAP_Y]! - d[at + TIGHT_Y]!] as const;
    if (at === 0) expect([d[CAP_X], d[CAP_Y]]).toEqual([w, h]);
    else if (room[0] >= 0 && room[1] >= 0) {
      const [x, y] = sizeOf(whole, tree, room);
      expect(x <= w && y <= h).toBe(true);
      expect(sizeOf(whole, tree, [room[0] + 1, 0])[0]).toBeGreaterThan(w);
      expect(sizeOf(whole, tree, [0, room[1] + 1])[1]).toBeGreaterThan(h);
    }
  }
  // The most that any part may grow, or that is left along the sheet.
  const most = (axis: 0 | 1) =>
    Math.max(
      axis === mirror.direction ? [w, h][axis]! - d[TIGHT_X + axis]! : 0,
      ...[...own.keys()].filter((at) => at !== 0).map((at) => d[at + CAP_X + axis]! - d[at + TIGHT_X + axis]!),
    );
  expect([layout.roomX, layout.roomY]).toEqual([most(0), most(1)]);
}

/** The same change in the lists: the part of ours that a node of the layout stands for, by its path of sizes and items. */
function find(mirror: Parts, wanted: Tree): Tree {
  const key = JSON.stringify(sorted(wanted));
  const all = (tree: Tree): Tree[] => [tree, ...(isLeaf(tree) ? [] : tree.parts.flatMap(all))];
  const found = all(mirror).find((tree) => JSON.stringify(sorted(tree)) === key);
  if (!found) throw new Error(key);
  return found;
}
const parentOf = (tree: Parts, wanted: Tree): Parts | undefined =>
  tree.parts.includes(wanted)
    ? tree
    : tree.parts.flatMap((part) => (isLeaf(part) ? [] : (parentOf(part, wanted) ?? [])))[0];
/** Empty nodes go, a node of one part is that part, and a node in one of its own direction gives it its parts. */
function tidy(node: Parts, isRoot = true): Tree[] {
  node.parts = node.parts.flatMap((part) => (isLeaf(part) ? [part] : tidy(part, false)));
  if (isRoot || node.parts.length > 1) return [node];
  const [only] = node.parts;
  return only === undefined ? [] : isLeaf(only) ? [only] : only.parts;
}

describe("a layout that is changed at random", () => {
  test.each(Array.from({ length: 12 }, (_, k) => k))("%i holds what the lists hold, at every step", (seed) => {
    const unit = randomFrom(seed);
    const whole = (most: number) => Math.floor(unit() * most);
    const layout = new GuillotineLayout();
    const direction = (seed % 2) as Direction;
    layout.start(3, 4000, 3000, direction);
    const mirror: Parts = { direction, parts: [] };
    let item = 0;
    hold(layout, mirror);
    for (let step = 0; step < 40; step++) {
      const nodes = nodesBelow(layout);
      const at = nodes[whole(nodes.length)]!;
      // Every piece is told from the others by its number.
      const piece: Leaf = { item: item++, x: 1 + whole(90), y: 1 + whole(90) };
      const ours = at === 0 ? mirror : find(mirror, treeOf(layout, at));
      if (at !== 0 && unit() < 0.4) {
        const gone = leavesOf(ours).map((leaf) => leaf.item);
        const taken: number[] = [];
        layout.remove(at, (one) => taken.push(one));
        expect(taken.sort((a, b) => a - b)).toEqual(gone.sort((a, b) => a - b));
        const parent = parentOf(mirror, ours)!;
        parent.parts = parent.parts.filter((part) => part !== ours);
        tidy(mirror);
      } else if (isLeaf(ours)) {
        const parent = parentOf(mirror, ours)!;
        const leaf = layout.pairWith(at, piece.item, piece.x, piece.y);
        expect(layout.data[leaf + ITEM]).toBe(piece.item);
        const pair: Parts = { direction: (1 - parent.direction) as Direction, parts: [ours, piece] };
        parent.parts = parent.parts.map((part) => (part === ours ? pair : part));
      } else if (unit() < 0.3) {
        const node = layout.addNode(at);
        const pair = [piece, { item: item++, x: 1 + whole(90), y: 1 + whole(90) }];
        for (const one of pair) layout.addTo(node, one.item, one.x, one.y);
        ours.parts.push({ direction: (1 - ours.direction) as Direction, parts: pair });
      } else {
        const leaf = layout.addTo(at, piece.item, piece.x, piece.y);
        expect(layout.data[leaf + ITEM]).toBe(piece.item);
        ours.parts.push(piece);
      }
      layout.settle();
      hold(layout, mirror);
    }
    // Slots are used again: never more than the parts that stood at once, of some hundred that came.
    expect(layout.data.length % STRIDE).toBe(0);
    const copy = new GuillotineLayout();
    copy.start(0, 1, 1, 0);
    copy.copyFrom(layout);
    hold(copy, mirror);
    expect([copy.sheet, copy.w, copy.h, copy.slots, copy.free]).toEqual([3, 4000, 3000, layout.slots, layout.free]);
    // Neither knows of the other's further changes.
    copy.addTo(0, 9999, 10, 10);
    copy.settle();
    hold(layout, mirror);
    layout.start(1, 50, 40, direction);
    hold(layout, { direction, parts: [] });
    hold(copy, { direction, parts: [...mirror.parts, { item: 9999, x: 10, y: 10 }] });
  });

  test("uses the slots of what was taken off again before it asks for more", () => {
    const layout = new GuillotineLayout();
    layout.start(0, 1000, 1000, 0);
    const leaves = Array.from({ length: 40 }, (_, k) => layout.addTo(0, k, 5, 5));
    const slots = layout.slots;
    for (const leaf of leaves) layout.remove(leaf, () => {});
    for (let k = 0; k < 40; k++) layout.addTo(0, 100 + k, 6, 6);
    layout.settle();
    expect(layout.slots).toBe(slots);
    hold(layout, { direction: 0, parts: Array.from({ length: 40 }, (_, k) => ({ item: 100 + k, x: 6, y: 6 })) });
  });

  test("loses a node with the last of its pieces, and keeps what the node lay beside", () => {
    const layout = new GuillotineLayout();
    layout.start(0, 1000, 1000, 0);
    layout.addTo(0, 1, 50, 60);
    const upright = layout.addNode(0);
    layout.addTo(upright, 2, 30, 40);
    layout.addTo(upright, 3, 20, 70);
    const only = layout.addNode(upright);
    const last = layout.addTo(only, 4, 10, 10);
    layout.settle();
    layout.remove(last, () => {});
    layout.settle();
    const pair: Parts = {
      direction: 1,
      parts: [
        { item: 2, x: 30, y: 40 },
        { item: 3, x: 20, y: 70 },
      ],
    };
    hold(layout, { direction: 0, parts: [{ item: 1, x: 50, y: 60 }, pair] });
  });
});
