import type { MaterialTable } from "../../bill/material-table.ts";
import type { CellMatrix } from "../../units/cell.ts";
import type { ReadContext } from "../record/record.ts";

type Read<T> = (given: CellMatrix, name: string, context: ReadContext) => T;

const MOST = 8; // tables of a kind that stay known: more than one workbook asks about at once

/**
 * Reads the same range once, however many functions ask: ten functions about one bill hand over the same thousand rows.
 * What is read depends on the cells, the argument's name, the units and the materials alone, so that remembering it
 * changes nothing but time. Refusals are not remembered.
 */
export function remembered<T>(read: Read<T>): Read<T> {
  const byMaterials = new WeakMap<MaterialTable, Map<string, T>>();
  return (given, name, context) => {
    // JSON has no word for a number that is none: such a range is read every time, and refused.
    if (!given.every((row) => row.every((cell) => typeof cell !== "number" || Number.isFinite(cell))))
      return read(given, name, context);
    const key = `${name} ${context.system} ${JSON.stringify(given)}`;
    const known = byMaterials.get(context.materials) ?? new Map<string, T>();
    byMaterials.set(context.materials, known);
    const found = known.get(key);
    if (found !== undefined) return found;
    const value = read(given, name, context);
    if (known.size >= MOST) known.delete(known.keys().next().value!);
    known.set(key, value);
    return value;
  };
}
