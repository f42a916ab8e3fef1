import type { CellMatrix } from "../../units/cell.ts";
import { contentId } from "../../units/content.ts";
import { remember } from "../../units/remember.ts";
import type { ReadContext } from "../record/record.ts";

type Read<T> = (given: CellMatrix, name: string, context: ReadContext) => T;

const MOST = 8; // tables of a kind that stay known: more than one workbook asks about at once

/**
 * Reads the same range once, however many functions ask: ten functions about one bill hand over the same thousand rows.
 * What is read depends on the cells, the argument's name, the units and the materials alone, so that remembering it
 * changes nothing but time.
 */
export function remembered<T>(read: Read<T>): Read<T> {
  let asked: Parameters<Read<T>>;
  const known = remember(MOST, (_: string): T => read(...asked));
  return (given, name, context) => {
    // JSON cannot write NaN or Infinity: such a range is read every time, and refused.
    if (!given.every((row) => row.every((cell) => typeof cell !== "number" || Number.isFinite(cell))))
      return read(given, name, context);
    asked = [given, name, context];
    const { system, materials, headerRow } = context;
    return known(`${name} ${system} ${headerRow} ${contentId(materials)} ${JSON.stringify(given)}`);
  };
}
