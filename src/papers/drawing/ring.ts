/** Marks on a drawing what is wrong: where the mark is seen in color it has that of the status. */
import { type Ink, THICK } from "./ink.ts";
import { element, line, type Point } from "./svg.ts";

const RING = 3; // mm of paper

export function ring(ink: Ink, [cx, cy]: Point): void {
  const markup = element("circle", { class: "ring", cx, cy, r: RING, fill: "none", "stroke-width": THICK });
  ink.add(
    markup,
    [0, 1, 2, 3, 4].map(
      (i): Point => [cx + RING * Math.cos((i * Math.PI) / 2), cy + RING * Math.sin((i * Math.PI) / 2)],
    ),
  );
}

/** A stretch in which something may not be. */
export const stretch = (ink: Ink, from: Point, to: Point): void =>
  ink.add(
    line(from, to, { class: "ring", "stroke-width": 3 * THICK, "stroke-linecap": "butt" }),
    [from, to],
    3 * THICK,
  );
