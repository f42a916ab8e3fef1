/** Numbers of the cuts through the whole sheet, with what is set, beside its edge: inside they would hide pieces and each other. */
import { showPlain } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { type Label, LETTER_WIDTH, numberBox } from "./cut-labels.ts";
import type { CutLine } from "./cut-regions.ts";
import { line, type Point } from "./svg.ts";

/** Rows above the sheet, one over another where cuts stand close; the letters that a row and the column at the right take. */
const ROWS = 3;
const ROW = 1.4;
const COLUMN = 7;

export interface Edges {
  readonly labels: readonly Label[];
  /** Room taken above the sheet and to its right, in letters. */
  readonly above: number;
  readonly right: number;
}

/** Whether a cut goes from edge to edge of the sheet. */
export const isThrough = ({ row }: CutLine): boolean => row.stage === "strip" || row.stage === "trim";

/** Of a sheet with these sides, y upwards in `lines` and downwards on paper. */
export function edgeLabels(
  lines: readonly CutLine[],
  {
    w,
    h,
    letter,
    system,
  }: { readonly w: number; readonly h: number; readonly letter: number; readonly system: UnitSystem },
): Edges {
  const found = lines.filter(isThrough).map(({ row, ends }) => {
    const [[x, y], [x2]] = ends[Math.floor(ends.length / 2)]!;
    return { words: `${row.seq}: ${showPlain(row.measure, system)}`, isUpright: x === x2, at: x === x2 ? x : h - y };
  });
  const upright = found.filter(({ isUpright }) => isUpright).sort((a, b) => a.at - b.at);
  const level = found.filter(({ isUpright }) => !isUpright).sort((a, b) => a.at - b.at);
  const ends = new Array<number>(ROWS).fill(Number.NEGATIVE_INFINITY);
  let above = 0;
  const tops = upright.map(({ words, at }) => {
    const half = (words.length * LETTER_WIDTH * letter) / 2 + letter / 4;
    // The lowest row that is free here, else the one that is free soonest.
    const free = ends.findIndex((end) => end <= at - half);
    const row = free >= 0 ? free : ends.indexOf(Math.min(...ends));
    const x = Math.max(at, ends[row]! + half);
    ends[row] = x + half;
    above = Math.max(above, row + 1);
    const y = -(row + 0.6) * ROW * letter;
    return led([at, 0], [x, y + letter / 2], numberBox(words, [x, y], letter), letter);
  });
  let below = Number.NEGATIVE_INFINITY;
  const rights = level.map(({ words, at }) => {
    const y = Math.max(at, below + ROW * letter);
    below = y;
    const x = w + (COLUMN * letter) / 2 + letter / 2;
    const half = (words.length * LETTER_WIDTH * letter) / 2;
    return led([w, at], [x - half, y], numberBox(words, [x, y], letter), letter);
  });
  return { labels: [...tops, ...rights], above: above * ROW, right: level.length > 0 ? COLUMN + 1 : 0 };
}

const led = (from: Point, to: Point, { markup, box }: Label, letter: number): Label => ({
  markup: line(from, to, { "stroke-width": letter / 24 }) + markup,
  box,
});
