/**
 * Looks into a list, a table or a map for what must be there: the caller knows the place is inside. If it is not, that
 * is a fault of ours, and it stops here instead of entering a calculation as undefined. Not for what runs for every
 * cell of a sheet or every pose of a part: lists of all kinds go through here, so the compiler makes none of them fast
 * (a quarter more time of a bend order, measured). There `missing` is asked beside the list.
 */

export function itemAt<T>(list: ArrayLike<T>, index: number): T {
  const item = list[index];
  if (item === undefined) throw new Error(`no item ${index} in a list of ${list.length}`);
  return item;
}

/**
 * Beside what by its type may be absent, `found ?? missing()`, and beside a list in what runs for every step of a search:
 * there it costs nothing (measured), but in a loop over the cells of a table. Such files assert with "!", and biome.json
 * names them.
 */
export function missing(): never {
  throw new Error("what must be there is missing");
}

export const firstOf = <T>(list: ArrayLike<T>): T => itemAt(list, 0);
export const lastOf = <T>(list: ArrayLike<T>): T => itemAt(list, list.length - 1);

export function entryOf<K, V>(map: { get(key: K): V | undefined }, key: K): V {
  const value = map.get(key);
  if (value === undefined) throw new Error(`no entry ${String(key)}`);
  return value;
}

/** The one of a list that this holds of. */
export const foundIn = <T>(list: readonly T[], isIt: (item: T) => boolean): T => itemAt(list, list.findIndex(isIt));

/** A table as rows of equal length. */
type Rows<T> = readonly ArrayLike<T>[];

export const cellAt = <T>(rows: Rows<T>, row: number, column: number): T => itemAt(itemAt(rows, row), column);
export const topLeft = <T>(rows: Rows<T>): T => cellAt(rows, 0, 0);
/** Columns of a table; none where it has no row. */
export const widthOf = (rows: Rows<unknown>): number => rows[0]?.length ?? 0;
