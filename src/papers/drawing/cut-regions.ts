/** The sheet of a pattern cut on paper: where every piece lies and every stroke runs. Y upwards from the datum edge. */

import type { CutListRow, PieceOut, PlannedPattern } from "../../bill/pictures.ts";
import { entryOf, itemAt, missing } from "../../units/certain.ts";
import type { Point } from "./svg.ts";

export interface Region {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

export type Ends = readonly [Point, Point];

/** The strokes that one row of the list makes in one piece. */
export interface CutLine {
  readonly row: CutListRow;
  /** The first piece of its row. */
  readonly isFirst: boolean;
  readonly ends: readonly Ends[];
}

/** Alike pieces side by side. */
export interface LaidPieces {
  readonly out: PieceOut;
  readonly count: number;
  readonly each: readonly Region[];
  readonly region: Region;
}

/** What drops lies at the datum side, what stays on the table beyond it. */
export function followCuts(pattern: PlannedPattern, rows: readonly CutListRow[]) {
  const whole: Region = { x: 0, y: 0, w: pattern.w, h: pattern.h };
  const regions = new Map<string, Region>([[pattern.id, whole]]);
  const outs: PieceOut[] = [];
  const lines: CutLine[] = [];
  for (const row of rows) {
    row.cuts.forEach((cut, k) => {
      const region = regions.get(cut.piece);
      if (!region) return;
      regions.delete(cut.piece);
      let rest = region;
      const ends = cut.falls.map((fall): Ends => {
        const [off, left] = split(rest, cut.axis, fall[cut.axis]);
        regions.set(fall.id, off);
        outs.push(fall);
        rest = left;
        const end: Point = cut.axis === "w" ? [left.x, left.y + left.h] : [left.x + left.w, left.y];
        return [[left.x, left.y], end];
      });
      regions.set(cut.stays.id, rest);
      outs.push(cut.stays);
      lines.push({ row, isFirst: k === 0, ends });
    });
  }
  // A blank that is the whole sheet needs no cut.
  const { id, w, h } = pattern;
  const uncut: PieceOut = { id, kind: "blank", w, h, blank: pattern.yields[0]?.blank ?? "" };
  if (outs.length === 0) outs.push(uncut);
  const laid = outs.flatMap((out) => (regions.has(out.id) ? [{ out, region: entryOf(regions, out.id) }] : []));
  return { pieces: sideBySide(laid), lines };
}

/** Rows of alike pieces, then rows of such rows, until none lies along another: what they are is then written once. */
function sideBySide(laid: readonly { readonly out: PieceOut; readonly region: Region }[]): LaidPieces[] {
  let found: LaidPieces[] = laid.map(({ out, region }) => ({ out, count: 1, each: [region], region }));
  for (let before = 0; before !== found.length; ) {
    before = found.length;
    const kept: LaidPieces[] = [];
    for (const one of found) {
      const at = kept.findIndex((other) => isAlike(other.out, one.out) && joined(other, one) !== undefined);
      if (at < 0) kept.push(one);
      else kept[at] = joined(itemAt(kept, at), one) ?? missing();
    }
    found = kept;
  }
  return found;
}

const isAlike = (a: PieceOut, b: PieceOut): boolean => a.kind === "blank" && a.blank === b.blank && a.w === b.w;

function joined({ out, count, each, region: a }: LaidPieces, other: LaidPieces): LaidPieces | undefined {
  const { region: b } = other;
  const same = (one: number, other: number) => Math.abs(one - other) < LAST_BITS;
  const beside = same(a.y, b.y) && same(a.h, b.h) && same(a.x + a.w, b.x);
  const above = same(a.x, b.x) && same(a.w, b.w) && same(a.y + a.h, b.y);
  if (!beside && !above) return undefined;
  const region = beside ? { ...a, w: a.w + b.w } : { ...a, h: a.h + b.h };
  return { out, count: count + other.count, each: [...each, ...other.each], region };
}

const LAST_BITS = 1e-6; // millimeters: sums of sizes that are equal on paper

function split({ x, y, w, h }: Region, axis: "w" | "h", extent: number): [Region, Region] {
  return axis === "w"
    ? [
        { x, y, w: extent, h },
        { x: x + extent, y, w: w - extent, h },
      ]
    : [
        { x, y, w, h: extent },
        { x, y: y + extent, w, h: h - extent },
      ];
}
