/** What is left of a sheet that is worth putting back on the rack, and what the plan counts for it. */
import { itemAt } from "../../units/certain.ts";
import { type CutNode, isPiece } from "./cut-tree.ts";
import type { CutPattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";
import { sizeOf } from "./shear-check.ts";

/** Cost of one sheet of the pattern less what its usable left-overs are worth. */
export function netCost(problem: Problem, pattern: CutPattern): number {
  const { w, h, cost, remnantWorth } = itemAt(problem.sheets, pattern.sheet);
  if (remnantWorth === 0) return cost;
  return cost * (1 - (remnantWorth * usableArea(problem, pattern.root, [w, h])) / (w * h));
}

/** Area of the left-overs, none of them with a side below the least, in square grid units. */
export function usableArea(problem: Problem, node: CutNode, room: readonly [number, number]): number {
  if (isPiece(node)) {
    const own = sizeOf(problem, node);
    const axis = own[0] !== room[0] ? 0 : 1;
    return parted(problem, [own[axis]], axis, room) + (axis === 0 ? usableArea(problem, node, [own[0], room[1]]) : 0);
  }
  const axis = node.direction;
  const extents = node.parts.map((part) => sizeOf(problem, part)[axis]);
  return node.parts.reduce(
    (sum, part, k) =>
      sum + usableArea(problem, part, axis === 0 ? [itemAt(extents, k), room[1]] : [room[0], itemAt(extents, k)]),
    parted(problem, extents, axis, room),
  );
}

/** Usable area of the waste beside parallel parts. */
function parted(problem: Problem, extents: readonly number[], axis: 0 | 1, room: readonly [number, number]): number {
  const { leastRemnant } = problem;
  const waste = room[axis] - extents.reduce((sum, extent) => sum + extent, 0);
  if (waste === 0 || leastRemnant === 0) return 0;
  const across = room[axis === 0 ? 1 : 0];
  return Math.min(waste, across) >= leastRemnant ? waste * across : 0;
}
