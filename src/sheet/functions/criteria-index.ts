import type { CellValue } from "../../units/cell.ts";
import type { Frame } from "../evaluate/frame.ts";
import { textNumber } from "../evaluate/text-number.ts";
import { hasWildcard } from "./criteria.ts";

/** A block of cells read by offset from its corner. */
export interface Block {
  readonly rows: number;
  readonly columns: number;
  /** Rows from here on are empty. */
  readonly used: number;
  /** Names the cells, so that an index of them can be reused within a run; undefined for arrays. */
  readonly key: string | undefined;
  at(row: number, column: number): CellValue;
}

interface Seen {
  asked: number;
  index: Map<string | number, number[]> | undefined;
}

/** Blocks with fewer used rows are searched through. */
const WORTH_INDEXING = 64;

/**
 * What a criterion asks for when it is plain equality with a number or a word, else undefined. The same equality as
 * `criterion`: a number also meets text that reads as that number, words meet without case.
 */
function plainKey(wanted: CellValue): string | number | undefined {
  if (typeof wanted === "number") return wanted;
  if (typeof wanted !== "string" || wanted === "" || /^[=<>#]/.test(wanted) || hasWildcard(wanted)) return undefined;
  if (/^(?:true|false)$/i.test(wanted)) return undefined;
  return textNumber(wanted) ?? wanted.toLowerCase();
}

/**
 * Positions (row * columns + column) whose cells meet a plain criterion, in order; undefined when the block has to be
 * searched. The second question about a block builds its index: a SUMIF in every row costs a step a row, not a scan.
 */
export function positionsMeeting(frame: Frame, block: Block, wanted: CellValue): readonly number[] | undefined {
  if (block.key === undefined || block.used < WORTH_INDEXING) return undefined;
  const key = plainKey(wanted);
  if (key === undefined) return undefined;
  const { memo } = frame.grid;
  const name = `criteria ${block.key}`;
  let seen = memo.get(name) as Seen | undefined;
  if (seen === undefined) {
    seen = { asked: 0, index: undefined };
    memo.set(name, seen);
  }
  if (++seen.asked < 2) return undefined;
  seen.index ??= buildIndex(block);
  return seen.index.get(key) ?? [];
}

function buildIndex(block: Block): Map<string | number, number[]> {
  const index = new Map<string | number, number[]>();
  const add = (key: string | number, position: number): void => {
    const list = index.get(key);
    if (list) list.push(position);
    else index.set(key, [position]);
  };
  for (let row = 0; row < block.used; row++) {
    for (let column = 0; column < block.columns; column++) {
      const value = block.at(row, column);
      const position = row * block.columns + column;
      if (typeof value === "number") add(value, position);
      else if (typeof value === "string" && value !== "") add(textNumber(value) ?? value.toLowerCase(), position);
    }
  }
  return index;
}
