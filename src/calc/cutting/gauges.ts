/** How many gauges a set of patterns needs: no order of the cuts moves the back gauge less often. */
import { itemAt } from "../../units/certain.ts";
import { type Size, withSize } from "./cut-tasks.ts";
import { type CutNode, isPiece } from "./cut-tree.ts";
import { frontPart } from "./gauge-rule.ts";
import type { CutPattern } from "./pattern.ts";
import { ALONG_X, ALONG_Y, type Problem } from "./problem.ts";
import { sizeOf } from "./shear-check.ts";

/** Adds to `gauges`. Waste that falls is not counted: it is rare. */
export function gaugesOf(problem: Problem, patterns: readonly CutPattern[], gauges = new Set<number>()): Set<number> {
  const parallel = (extents: readonly number[], room: number): void => {
    const waste = room - extents.reduce((sum, extent) => sum + extent, 0);
    const front = frontPart(extents, extents.length, waste, problem.rule);
    extents.forEach((extent, k) => {
      if (k !== front) gauges.add(extent);
    });
  };
  const part = (node: CutNode, room: Size): void => {
    if (isPiece(node)) {
      const own = sizeOf(problem, node);
      for (const axis of [ALONG_X, ALONG_Y]) {
        if (own[axis] !== room[axis]) parallel([itemAt(own, axis)], itemAt(room, axis));
      }
      return;
    }
    const { direction, parts } = node;
    const extents = parts.map((child) => sizeOf(problem, child)[direction]);
    parallel(extents, room[direction]);
    parts.forEach((child, k) => {
      part(child, withSize(room, direction, itemAt(extents, k)));
    });
  };
  for (const { sheet, root } of patterns) {
    const { w, h } = itemAt(problem.sheets, sheet);
    part(root, [w, h]);
  }
  return gauges;
}
