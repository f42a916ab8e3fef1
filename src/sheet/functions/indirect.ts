import type { Frame } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import { isReference, LAST_COLUMN, LAST_ROW, REF, type Value } from "../evaluate/value.ts";
import { columnLetters } from "../formula/address.ts";
import { parseFormula, SyntaxRefusal } from "../formula/parse.ts";

/** The reference a text names: A1 or R1C1 style, with sheet, or a defined name or table. */
export function indirect(frame: Frame, text: string, a1: boolean): Value {
  const trimmed = text.trim();
  if (trimmed === "") return REF;
  if (/^'?\[|\[[^\]]*\.xls/i.test(trimmed)) return keep("external-link", trimmed);
  const style = a1 ? trimmed : fromR1C1(trimmed, frame);
  if (style === undefined) return REF;
  try {
    const parsed = parseFormula(style);
    const { type } = parsed.tree;
    const isColon = type === "BinaryExpression" && parsed.tree.operator === ":";
    if (type !== "ReferenceIdentifier" && !isColon) return REF;
    const value = frame.grid.compile(parsed, frame).code(frame);
    // A text that names nothing is no reference; an error of a name that exists is that name's.
    return isReference(value) ? value : REF;
  } catch (error) {
    if (error instanceof SyntaxRefusal) return REF;
    throw error;
  }
}

/** "R2C3", "R[-1]C", "R1C1:R2C2" as A1 text. */
function fromR1C1(text: string, frame: Frame): string | undefined {
  const bang = text.lastIndexOf("!");
  const sheet = bang >= 0 ? text.slice(0, bang + 1) : "";
  const cells = text
    .slice(bang + 1)
    .split(":")
    .map((part) => cellFromR1C1(part, frame));
  return cells.some((cell) => cell === undefined) ? undefined : sheet + cells.join(":");
}

function cellFromR1C1(part: string, frame: Frame): string | undefined {
  const match = /^R(\d+|\[-?\d+\])?C(\d+|\[-?\d+\])?$/i.exec(part);
  if (!match) return undefined;
  const at = (given: string | undefined, own: number): number =>
    given === undefined ? own : given.startsWith("[") ? own + Number(given.slice(1, -1)) : Number(given) - 1;
  const row = at(match[1], frame.row);
  const column = at(match[2], frame.column);
  if (row < 0 || row > LAST_ROW || column < 0 || column > LAST_COLUMN) return undefined;
  return `$${columnLetters(column)}$${row + 1}`;
}
