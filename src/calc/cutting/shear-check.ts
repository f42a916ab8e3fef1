/** Whether a layout can be cut at all within the shear's limits: the exact rule, on true sizes. */
import { missing } from "../../units/certain.ts";
import { type CutNode, isPiece } from "./cut-tree.ts";
import { frontPart, NO_FRONT, twists } from "./gauge-rule.ts";
import { DIRECTION, FIRST, type GuillotineLayout, ITEM, NEXT, TIGHT_X } from "./guillotine-layout.ts";
import { layoutOf } from "./layout-tree.ts";
import type { CutPattern } from "./pattern.ts";
import type { Problem } from "./problem.ts";

/** Size [x, y] a node takes up. */
export function sizeOf(problem: Problem, node: CutNode): readonly [number, number] {
  if (isPiece(node)) {
    const { w, h } = problem.items[node.item] ?? missing();
    return node.turned ? [h, w] : [w, h];
  }
  let along = 0;
  let across = 0;
  for (const part of node.parts) {
    const size = sizeOf(problem, part);
    along += size[node.direction];
    across = Math.max(across, size[node.direction === 0 ? 1 : 0]);
  }
  return node.direction === 0 ? [along, across] : [across, along];
}

export const canBeSheared = (problem: Problem, pattern: CutPattern): boolean =>
  layoutCanBeSheared(problem, layoutOf(problem, pattern));

export function layoutCanBeSheared(problem: Problem, layout: GuillotineLayout): boolean {
  const sheet = problem.sheets[layout.sheet] ?? missing();
  const { rule } = problem;
  const d = layout.data;
  const direction = d[DIRECTION] ?? missing();
  if (!sheet.roots.some((root) => root === direction)) return false;
  // A sheet longer than the blade is trimmed part by part after the first cuts.
  if (sheet.trimPartLimit < Infinity) {
    for (let child = d[FIRST] ?? missing(); child !== -1; child = d[child + NEXT] ?? missing()) {
      if ((d[child + TIGHT_X + direction] ?? missing()) > sheet.trimPartLimit) return false;
    }
  }
  /** The node at `at` given `along` in its own direction and `across`. */
  const canPart = (at: number, along: number, across: number): boolean => {
    const direction = d[at + DIRECTION] ?? missing();
    const extents: number[] = [];
    let waste = along;
    for (let child = d[at + FIRST] ?? missing(); child !== -1; child = d[child + NEXT] ?? missing()) {
      const extent = d[child + TIGHT_X + direction] ?? missing();
      extents.push(extent);
      waste -= extent;
    }
    if (waste < 0) return false;
    if ((waste > 0 || extents.length > 1) && across > rule.longestCut) return false;
    const front = frontPart(extents, extents.length, waste, rule);
    if (front === NO_FRONT || extents.some((extent, k) => k !== front && twists(extent, across, rule))) return false;
    for (let child = d[at + FIRST] ?? missing(); child !== -1; child = d[child + NEXT] ?? missing()) {
      const extent = d[child + TIGHT_X + direction] ?? missing();
      if ((d[child + ITEM] ?? missing()) < 0) {
        if (!canPart(child, across, extent)) return false;
      } else {
        const size = d[child + TIGHT_X + 1 - direction] ?? missing();
        if (size === across) continue;
        if (size > across || extent > rule.longestCut) return false;
        const kept = frontPart([size], 1, across - size, rule);
        if (kept === NO_FRONT || (kept !== 0 && twists(size, extent, rule))) return false;
      }
    }
    return true;
  };
  return direction === 0 ? canPart(0, layout.w, layout.h) : canPart(0, layout.h, layout.w);
}
