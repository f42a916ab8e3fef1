/**
 * About how long a list of patterns takes at the shear, before its cuts are put in order: a stroke for every cut, and a
 * setting for every gauge of each kind of part. It only tells plans apart that count the same.
 */
import { itemAt } from "../../units/certain.ts";
import { type Size, withSize } from "./cut-tasks.ts";
import { type CutNode, isPiece } from "./cut-tree.ts";
import { DEFAULT_PACE, SETTING_COUNTS } from "./floor-time.ts";
import { frontPart } from "./gauge-rule.ts";
import type { Use } from "./pattern.ts";
import { ALONG_X, ALONG_Y, type Problem } from "./problem.ts";
import { sizeOf } from "./shear-check.ts";
import type { FloorPace } from "./types.ts";

/** Seconds. */
export function workOf(
  problem: Problem,
  uses: readonly Use[],
  { stroke, setting }: Pick<FloorPace, "stroke" | "setting"> = DEFAULT_PACE,
): number {
  let strokes = 0;
  const gauges = new Set<number>();
  const parallel = (extents: readonly number[], room: number): void => {
    const waste = room - extents.reduce((sum, extent) => sum + extent, 0);
    const front = frontPart(extents, extents.length, waste, problem.rule);
    strokes += extents.length - (waste > 0 ? 0 : 1);
    extents.forEach((extent, k) => {
      if (k !== front || waste > 0) gauges.add(extent);
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
    parallel(extents, itemAt(room, direction));
    parts.forEach((child, k) => {
      part(child, withSize(room, direction, itemAt(extents, k)));
    });
  };
  let seconds = 0;
  for (const { pattern, repeats } of uses) {
    const { w, h } = itemAt(problem.sheets, pattern.sheet);
    strokes = 0;
    part(pattern.root, [w, h]);
    seconds += strokes * repeats * stroke;
    // Identical sheets are cut together; another pattern has settings of its own.
    seconds += gauges.size * setting * SETTING_COUNTS;
    gauges.clear();
  }
  return seconds;
}
