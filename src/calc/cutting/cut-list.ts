/** The cut list as a person at the shear follows it, one row a cut. Lengths in millimetres. */
import type { Cut, PieceOut, Plan } from "./types.ts";

export interface CutListRow {
  readonly seq: number;
  /** Gauge setting the cut belongs to; 0 where the back gauge measures nothing: an edge trim, a front stop, a mark. */
  readonly setting: number;
  readonly stage: Cut["stage"];
  readonly piece: string;
  readonly copies: number;
  readonly gauge: number | null;
  readonly by: Cut["by"];
  readonly measure: number;
  /** Whether what is measured drops or lies on the table in front. */
  readonly measured: "drops" | "stays";
  readonly length: number;
  readonly strokes: number;
  readonly falls: string;
  readonly stays: string;
  readonly turn: boolean;
}

export const cutList = (plan: Pick<Plan, "cuts">): CutListRow[] =>
  plan.cuts.map(({ seq, setting, stage, piece, copies, gauge, by, measure, length, strokes, falls, stays, turn }) => ({
    seq,
    setting,
    stage,
    piece,
    copies,
    gauge,
    by,
    measure,
    measured: stage === "trim" || falls.some(isPart) ? "drops" : "stays",
    length,
    strokes,
    falls: falls.map(called).join(", "),
    stays: called(stays),
    turn,
  }));

/** Waste is never what is measured, but for an edge trim. */
const isPart = ({ kind }: PieceOut): boolean => kind === "blank" || kind === "part";

/** "blank B7 as 2.1.1", "part 2.1", "remnant 2.3", "scrap 2t1". */
const called = ({ id, kind, blank }: PieceOut): string =>
  kind === "blank" ? `blank ${blank} as ${id}` : `${kind} ${id}`;
