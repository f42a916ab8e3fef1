/** The cut list as a person at the shear follows it, one row a cut. Lengths in millimetres. */
import type { Cut, PieceOut, Plan } from "./types.ts";

export interface CutListRow {
  readonly seq: number;
  /** Gauge setting the cut belongs to; 0 for an edge trim cut to a mark. */
  readonly setting: number;
  readonly stage: Cut["stage"];
  readonly piece: string;
  readonly copies: number;
  readonly gauge: number | null;
  readonly length: number;
  readonly strokes: number;
  readonly falls: string;
  readonly stays: string;
  readonly turn: boolean;
}

export const cutList = (plan: Pick<Plan, "cuts">): CutListRow[] =>
  plan.cuts.map(({ seq, setting, stage, piece, copies, gauge, length, strokes, falls, stays, turn }) => ({
    seq,
    setting,
    stage,
    piece,
    copies,
    gauge,
    length,
    strokes,
    falls: falls.map(called).join(", "),
    stays: called(stays),
    turn,
  }));

/** "blank B7 as 2.1.1", "part 2.1", "remnant 2.3", "scrap 2t1". */
const called = ({ id, kind, blank }: PieceOut): string =>
  kind === "blank" ? `blank ${blank} as ${id}` : `${kind} ${id}`;
