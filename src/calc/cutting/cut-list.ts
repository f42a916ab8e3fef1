/** The cut list as a person at the shear follows it: equal cuts on alike pieces, one after another, are one row. Millimeters. */
import { firstOf, itemAt } from "../../units/certain.ts";
import { patternIdOf } from "./pattern-id.ts";
import type { Cut, PieceKind, PieceOut, Plan } from "./types.ts";

/** Alike pieces that a row of the list leaves, over all that it cuts. */
export interface Yield {
  readonly kind: PieceKind;
  readonly blank: string | undefined;
  readonly w: number;
  readonly h: number;
  readonly count: number;
  /** As the plan names them, one name for all copies of a pattern. */
  readonly pieces: readonly string[];
}

export interface CutListRow {
  readonly seq: number;
  readonly pattern: string;
  /** Gauge setting the row belongs to; 0 where the back gauge measures nothing: an edge trim, a front stop, a mark. */
  readonly setting: number;
  readonly stage: Cut["stage"];
  readonly axis: Cut["axis"];
  readonly by: Cut["by"];
  readonly measure: number;
  /** Whether what is measured drops or lies on the table in front. */
  readonly measured: "drops" | "stays";
  readonly length: number;
  /** Alike pieces that go in, how large each is, and whether they are taken up for it or lie on the table still. */
  readonly count: number;
  readonly w: number;
  readonly h: number;
  readonly isWhole: boolean;
  readonly isTakenUp: boolean;
  readonly strokes: number;
  /** What comes off stroke by stroke, and what is left. */
  readonly falls: readonly Yield[];
  readonly stays: readonly Yield[];
  /** The same as they lie: a part against the front stop stays on the table, and the rest of the piece drops. */
  readonly drops: readonly Yield[];
  readonly onTable: readonly Yield[];
  readonly turn: boolean;
  readonly cuts: readonly Cut[];
}

export function cutList({ cuts }: Pick<Plan, "cuts">): CutListRow[] {
  const groups: Cut[][] = [];
  cuts.forEach((cut, k) => {
    const last = groups.at(-1);
    if (last && k > 0 && isSameWork(cut, itemAt(cuts, k - 1))) last.push(cut);
    else groups.push([cut]);
  });
  let before: Cut | undefined;
  return groups.map((group, k) => {
    const row = rowOf(group, k + 1, before);
    before = group.at(-1);
    return row;
  });
}

/** Another piece of the same pattern and size, cut to the same measure with the same yield. */
const isSameWork = (a: Cut, b: Cut): boolean =>
  SAME.every((key) => a[key] === b[key]) &&
  a.piece !== b.stays.id &&
  patternIdOf(a.piece) === patternIdOf(b.piece) &&
  kindKey(a.stays) === kindKey(b.stays) &&
  kindsOf(a.falls) === kindsOf(b.falls);

const SAME = ["stage", "axis", "by", "measure", "length", "turn", "copies"] as const;

const kindsOf = (falls: readonly PieceOut[]): string => falls.map(kindKey).sort().join();

/** Sizes to the thousandth of a millimeter. */
const kindKey = ({ kind, blank, w, h }: PieceOut): string =>
  `${kind} ${blank ?? ""} ${Math.round(w * 1000)} ${Math.round(h * 1000)}`;

function rowOf(cuts: readonly Cut[], seq: number, before: Cut | undefined): CutListRow {
  const first = firstOf(cuts);
  const { piece, setting, stage, axis, by, measure, length, turn, falls, stays } = first;
  const off = yieldsOf(cuts.flatMap((cut) => cut.falls.map((fall) => [fall, cut.copies] as const)));
  const left = yieldsOf(cuts.map((cut) => [cut.stays, cut.copies] as const));
  const isInFront = by === "front stop" && stage !== "trim" && falls.some(isPart);
  const along = falls.reduce((sum, fall) => sum + fall[axis], stays[axis] as number);
  return {
    seq,
    pattern: patternIdOf(piece),
    setting,
    stage,
    axis,
    by,
    measure,
    measured: stage === "trim" || (falls.some(isPart) && !isInFront) ? "drops" : "stays",
    length,
    count: cuts.reduce((sum, cut) => sum + cut.copies, 0),
    w: axis === "w" ? along : length,
    h: axis === "w" ? length : along,
    isWhole: piece === patternIdOf(piece),
    isTakenUp: cuts.length > 1 || !before || !liesThere(first, before),
    strokes: cuts.reduce((sum, cut) => sum + cut.strokes, 0),
    falls: off,
    stays: left,
    drops: isInFront ? left : off,
    onTable: isInFront ? off : left,
    turn,
    cuts,
  };
}

/** On the table since the cut before, unless that let it fall behind a front stop. */
const liesThere = ({ piece, visit, copies }: Cut, before: Cut): boolean =>
  before.stays.id === piece &&
  (before.visit === visit || copies === 1) &&
  !(before.by === "front stop" && before.stays.kind === "part" && before.falls.some(isPart));

/** Waste is never what is measured, but for an edge trim. */
const isPart = ({ kind }: PieceOut): boolean => kind === "blank" || kind === "part";

function yieldsOf(outs: readonly (readonly [PieceOut, number])[]): Yield[] {
  const found = new Map<string, Yield & { count: number; pieces: string[] }>();
  for (const [out, copies] of outs) {
    const key = kindKey(out);
    const { kind, blank, w, h, id } = out;
    const known = found.get(key);
    if (known) {
      known.count += copies;
      known.pieces.push(id);
    } else found.set(key, { kind, blank, w, h, count: copies, pieces: [id] });
  }
  return [...found.values()];
}
