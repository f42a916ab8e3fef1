import type { AstExpression } from "@borgar/fx/xlsx";
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import type { Code, Frame, Grid } from "./frame.ts";
import type { Precedent } from "./precedent.ts";

/** Names bound at this point of the formula, innermost last. */
export type Names = readonly string[];

/** The compilation of one formula as its parts see it: where it stands, what was found, how to compile a subtree. */
export interface Compiling {
  readonly grid: Grid;
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly precedents: Precedent[];
  /** May read cells no precedent names. */
  dynamic: boolean;
  /** The meaning depends on where the cell stands ([@Qty] without its table's name): not for other cells. */
  local: boolean;
  /** Code that may yield a reference. */
  code(node: AstExpression, array: boolean, names: Names): Code;
  /** Code that yields a plain value: one in an ordinary formula, possibly a matrix in an array formula. */
  single(node: AstExpression, array: boolean, names: Names): (frame: Frame) => CellValue | CellMatrix;
}
