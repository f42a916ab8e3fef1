import { keep } from "./keep.ts";

/** Cells of one array that the engine is ready to make. Excel's own limit is its memory. */
const MOST_CELLS = 5_000_000;

/** Beyond the engine's own limit there is no wrong answer: the cell keeps Excel's value and is reported. */
export function withinLimit(rows: number, columns: number): void {
  const cells = rows * columns;
  if (cells > MOST_CELLS) keep("depth", `an array of ${cells} cells; the limit is ${MOST_CELLS}`);
}

/** Steps of a loop whose length an argument says. */
const MOST_STEPS = 10_000_000;

/** The same for what is added up step by step. */
export function withinSteps(steps: number): void {
  if (steps > MOST_STEPS) keep("depth", `a calculation of ${steps} steps; the limit is ${MOST_STEPS}`);
}
