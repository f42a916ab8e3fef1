/** Lines of data in groups of the same keys, and groups in order. */

import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { cellAt, firstOf, itemAt } from "../../units/certain.ts";
import { VALUE } from "../evaluate/value.ts";
import { fail } from "./define.ts";
import { keyOf, sortRows } from "./order.ts";

export interface Line {
  readonly keys: readonly CellValue[];
  readonly values: readonly CellValue[];
  /** Which line of the data it is, where that matters. */
  readonly at?: number;
}

export interface Group {
  readonly key: CellValue;
  readonly keys: readonly CellValue[];
  readonly lines: readonly Line[];
  /** By the next key; undefined for the last, and where all keys count at once. */
  readonly groups: readonly Group[] | undefined;
}

/** Groups by the key at `level`, and within them by the next; or by all keys at once. */
export function groupsOf(lines: readonly Line[], level: number, atOnce: boolean): Group[] {
  const found = new Map<string, Line[]>();
  for (const line of lines) {
    const key = keyOf(atOnce ? line.keys : [itemAt(line.keys, level)]);
    const known = found.get(key);
    if (known) known.push(line);
    else found.set(key, [line]);
  }
  return [...found.values()].map((own) => {
    const { keys } = firstOf(own);
    const last = atOnce || level === keys.length - 1;
    return { key: itemAt(keys, level), keys, lines: own, groups: last ? undefined : groupsOf(own, level + 1, false) };
  });
}

/** By a column of the keys, or of the values behind them. */
type GroupOrder = { readonly order: 1 | -1 } & (
  | { readonly key: number; readonly value: undefined }
  | { readonly key: undefined; readonly value: number }
);

/** The columns to sort by, from 1, keys before values, negative ones downwards; unsaid, the keys. */
export function ordersOf(given: CellMatrix | undefined, fields: number, values: number): GroupOrder[] {
  const numbers = (given ?? [[]]).flat().map((each) => Math.trunc(Number(each)));
  if (numbers.some((n) => n === 0 || Number.isNaN(n) || Math.abs(n) > fields + values)) fail(VALUE);
  const said = numbers.map((n): GroupOrder => {
    const at = Math.abs(n) - 1;
    const order = n > 0 ? 1 : -1;
    return at < fields ? { key: at, value: undefined, order } : { key: undefined, value: at - fields, order };
  });
  const rest = Array.from({ length: fields }, (_, key): GroupOrder => ({ key, value: undefined, order: 1 }));
  return [...said, ...rest.filter(({ key }) => !said.some((each) => each.key === key))];
}

/** Groups, and the groups in them, in that order; the value of a group is its summary. */
export function inOrder(
  groups: readonly Group[],
  orders: readonly GroupOrder[],
  summary: (group: Group, column: number) => CellValue,
  level = 0,
): Group[] {
  const nested = groups.some((group) => group.groups !== undefined);
  const here = orders.filter(({ key }) => key === undefined || key === level || (!nested && key > level));
  const rows = groups.map((group): CellValue[] =>
    here.map(({ key, value }) => (value === undefined ? itemAt(group.keys, key) : summary(group, value))),
  );
  const numbered = rows.map((_, i) => [i]);
  const sorted = sortRows(
    numbered,
    here.map(({ order }, i) => ({ of: (row: number) => cellAt(rows, row, i), order })),
  );
  return sorted.map(([i]) => {
    const group = itemAt(groups, Number(i));
    return group.groups ? { ...group, groups: inOrder(group.groups, orders, summary, level + 1) } : group;
  });
}
