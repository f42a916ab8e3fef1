/** Numbers of the cuts through the whole sheet, with what is set, beside its edge: inside they would hide pieces and each other. */
import { itemAt } from "../../units/certain.ts";
import { showPlain } from "../../units/show.ts";
import type { UnitSystem } from "../../units/system.ts";
import { type Label, numberBox, numberWidth } from "./cut-labels.ts";
import type { CutLine } from "./cut-regions.ts";
import { spread } from "./dimension.ts";
import { line, type Point } from "./svg.ts";

/** Letters that a row above the sheet and the column at the right take. */
const ROW = 1.4;
const COLUMN = 7;

export interface Edges {
  readonly labels: readonly Label[];
  /** From the cuts to their labels: drawn first, so that no line runs over a label. */
  readonly leaders: readonly string[];
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
    const [[x, y], [x2]] = itemAt(ends, Math.floor(ends.length / 2));
    return { words: `${row.seq}: ${showPlain(row.measure, system)}`, isUpright: x === x2, at: x === x2 ? x : h - y };
  });
  const upright = found.filter(({ isUpright }) => isUpright).sort((a, b) => a.at - b.at);
  const level = found.filter(({ isUpright }) => !isUpright).sort((a, b) => a.at - b.at);
  const widths = upright.map(({ words }) => numberWidth(words, letter) + letter / 2);
  // As many rows as they need side by side, each label as near to its cut as the others of its row allow.
  const rows = Math.ceil(widths.reduce((sum, width) => sum + width, 0) / w);
  const tops = Array.from({ length: rows }, (_, row) => {
    const own = upright.flatMap((cut, i) => (i % rows === row ? [{ ...cut, width: itemAt(widths, i) }] : []));
    const places = spread(
      own.map(({ at }) => at),
      own.map(({ width }) => width),
    );
    const y = -(row + 0.8) * ROW * letter;
    return own.map(({ words, at }, i) =>
      led([at, 0], [itemAt(places, i), y + letter / 2], numberBox(words, [itemAt(places, i), y], letter), letter),
    );
  }).flat();
  const heights = spread(
    level.map(({ at }) => at),
    level.map(() => ROW * letter),
  );
  const rights = level.map(({ words, at }, i) => {
    const x = w + (COLUMN * letter) / 2 + letter / 2;
    return led(
      [w, at],
      [x - numberWidth(words, letter) / 2, itemAt(heights, i)],
      numberBox(words, [x, itemAt(heights, i)], letter),
      letter,
    );
  });
  const all = [...tops, ...rights];
  return { labels: all.map(({ label }) => label), leaders: all.map(({ leader }) => leader) };
}

const led = (from: Point, to: Point, label: Label, letter: number) => ({
  label,
  leader: line(from, to, { "stroke-width": letter / 24 }),
});
