/** How the sheet is laid for a hit: the same words and small picture on the set-up page, in the table and at every picture. */

import type { BentStrip, StripHit } from "../bill/lines/bent-strip.ts";
import { itemAt } from "../units/certain.ts";
import { element, path } from "./drawing/svg.ts";

export interface Move {
  readonly words: string;
  /** Seen from above, the back gauge to the right. */
  readonly mark: string;
}

/** The sheet from above, the gauge to its right. */
const SHEET =
  element("rect", { x: 2, y: 2, width: 10, height: 8, fill: "none", "stroke-width": 0.5 }) +
  element("rect", { x: 13, y: 3.5, width: 1.5, height: 5, fill: "currentColor", stroke: "none" });
const AXIS = { "stroke-width": 0.3, "stroke-dasharray": "1.6 0.6 0.4 0.6" };
const ARROW = { "stroke-width": 0.6 };

const mark = (...strokes: string[]): string =>
  element(
    "svg",
    { class: "move", viewBox: "0 0 15 12", "aria-hidden": "true", stroke: "currentColor", "stroke-linecap": "round" },
    SHEET,
    ...strokes,
  );
const LIES = mark(path("M4 6H10M8.3 4.7L10 6L8.3 7.3", ARROW));
const TURN = mark(path("M9.4 5.2A2.6 2.6 0 1 0 8.3 8.2M9.9 3.4L9.4 5.2L7.7 4.6", ARROW));
const FLIP_SAME = mark(
  path("M0.5 6H12.5", AXIS),
  path("M5.5 8.6C8.8 8.6 8.8 3.4 5.5 3.4M7.1 2.4L5.5 3.4L6.9 4.7", ARROW),
);
const FLIP_OTHER = mark(
  path("M7 0.5V11.5", AXIS),
  path("M4.2 7.6C4.2 4.2 9.8 4.2 9.8 7.6M8.7 6.3L9.8 7.6L11 6.3", ARROW),
);

/** @param direction 1 in the second direction of a part that is bent in two. */
export function moveOf(
  { bend, turned, flipped }: StripHit,
  { part }: Pick<BentStrip, "part">,
  { isFirst, direction }: { readonly isFirst: boolean; readonly direction: number },
): Move {
  if (isFirst) {
    const side = itemAt(part.bends, bend - 1).angle > 0 ? "drawn side up" : "drawn side down";
    return direction === 0 ? { words: side, mark: LIES } : { words: `quarter turn, ${side}`, mark: TURN };
  }
  if (flipped)
    return turned
      ? { words: "flip over, end for end", mark: FLIP_OTHER }
      : { words: "flip over, same end", mark: FLIP_SAME };
  return turned ? { words: "turn end for end", mark: TURN } : { words: "as it lies", mark: LIES };
}

/** What they mean, once a set of tools. */
export const MOVES: readonly (Move & { readonly means: string })[] = [
  { words: "as it lies", mark: LIES, means: "slide it to the next setting" },
  {
    words: "turn end for end",
    mark: TURN,
    means: "half a turn on the table: same side up, the other end to the gauge",
  },
  { words: "flip over, same end", mark: FLIP_SAME, means: "other side up, the same end to the gauge" },
  { words: "flip over, end for end", mark: FLIP_OTHER, means: "other side up, the other end to the gauge" },
];
