/** A sheet's layout as the planner hands it on: parts of parts, down to single pieces. */
import type { Direction } from "./problem.ts";

export interface PieceNode {
  readonly item: number;
  /** Given a quarter turn. */
  readonly turned: boolean;
}

export interface PartsNode {
  /** How the parts lie: along x (they are parted by cuts along y) or along y. */
  readonly direction: Direction;
  readonly parts: readonly CutNode[];
}

export type CutNode = PieceNode | PartsNode;

export const isPiece = (node: CutNode): node is PieceNode => "item" in node;

/** Calls `take` for every piece. */
export function eachPiece(node: CutNode, take: (piece: PieceNode) => void): void {
  if (isPiece(node)) take(node);
  else for (const part of node.parts) eachPiece(part, take);
}
