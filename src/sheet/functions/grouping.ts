/**
 * GROUPBY and PIVOTBY (Microsoft's descriptions, memory). What is described too loosely to be sure of, as several columns of
 * values across a pivot, keeps Excel's value.
 */

import { CellError, type CellMatrix, type CellValue } from "../../units/cell.ts";
import { firstOf, itemAt, topLeft, widthOf } from "../../units/certain.ts";
import { withinLimit } from "../evaluate/array-limit.ts";
import { toBoolean } from "../evaluate/coerce.ts";
import type { Frame, WorksheetFunction } from "../evaluate/frame.ts";
import { keep } from "../evaluate/keep.ts";
import { dereference, toMatrix } from "../evaluate/reference.ts";
import { CALC, isMatrix, Lambda, VALUE, type Value } from "../evaluate/value.ts";
import { defineIn, fail } from "./define.ts";
import { type Group, groupsOf, inOrder, type Line, ordersOf } from "./groups.ts";

/** What a function answers for some rows of the values, beside all of them where it takes two arguments (PERCENTOF). */
type Summary = (some: readonly Line[], all: readonly Line[], column: number) => CellValue;

function summaryOf(fn: Value, frame: Frame): Summary {
  if (fn instanceof CellError) fail(fn);
  if (!(fn instanceof Lambda) || fn.least > 2) return fail(VALUE);
  const column = (lines: readonly Line[], at: number): CellMatrix => lines.map(({ values }) => [itemAt(values, at)]);
  return (some, all, at) => {
    if (some.length === 0) return "";
    const args = fn.least === 2 ? [column(some, at), column(all, at)] : [column(some, at)];
    const answer = dereference(fn.call(args), frame);
    return isMatrix(answer) ? CALC : answer;
  };
}

interface Source {
  readonly lines: readonly Line[];
  /** Names above the columns of keys, and above those of the values; undefined where there are none. */
  readonly heads: readonly CellValue[] | undefined;
  readonly shown: boolean;
}

/** Headings: 0 none, 1 there but not shown, 2 made up, 3 there and shown; unsaid, as the first two values look. */
function source(
  keys: CellMatrix,
  values: CellMatrix,
  headings: number | undefined,
  filter: CellMatrix | undefined,
): Source {
  if (keys.length !== values.length) fail(VALUE);
  const looks = typeof firstOf(values)[0] === "string" && typeof values[1]?.[0] === "number";
  const mode = headings === undefined ? (looks ? (widthOf(keys) > 1 ? 3 : 1) : 0) : Math.trunc(headings);
  if (mode < 0 || mode > 3) fail(VALUE);
  const first = mode === 1 || mode === 3 ? 1 : 0;
  const kept = keptRows(filter, keys.length, first);
  const lines = keys.flatMap((row, i) => (i >= first && kept(i) ? [{ keys: row, values: itemAt(values, i) }] : []));
  if (lines.length === 0) fail(CALC);
  const made = [
    ...firstOf(keys).map((_, i) => `Row Field ${i + 1}`),
    ...firstOf(values).map((_, i) => `Value ${i + 1}`),
  ];
  return {
    lines,
    heads: first ? [...firstOf(keys), ...firstOf(values)] : mode === 2 ? made : undefined,
    shown: mode >= 2,
  };
}

/** A filter is as long as the data, with or without the heading. */
function keptRows(filter: CellMatrix | undefined, rows: number, first: number): (row: number) => boolean {
  if (!filter) return () => true;
  const flags = filter.length === 1 ? firstOf(filter) : filter.map((row) => firstOf(row));
  if (flags.length !== rows && flags.length !== rows - first) fail(VALUE);
  return (row) => {
    const truth = toBoolean(itemAt(flags, row - (rows - flags.length)));
    return truth instanceof CellError ? fail(truth) : truth;
  };
}

/** Totals: 0 none, 1 of all, 2 of the groups too; negative ones stand first. Unsaid: of all. */
function depthOf(given: number | undefined, fields: number): number {
  const depth = Math.trunc(given ?? 1);
  return Math.abs(depth) > fields ? fail(VALUE) : depth;
}

/** The labels of a line of totals. */
const labels = (fields: number, ...first: readonly CellValue[]): CellValue[] => [
  ...first,
  ...new Array<CellValue>(fields - first.length).fill(""),
];
const grandName = (depth: number): string => (Math.abs(depth) > 1 ? "Grand Total" : "Total");

/** The lines of a tree of groups, totals of groups before or behind their members. */
function laidOut(groups: readonly Group[], path: readonly CellValue[], fields: number, depth: number): LaidOut[] {
  return groups.flatMap((group): LaidOut[] => {
    const here = [...path, group.key];
    if (!group.groups) return [{ labels: here, lines: group.lines }];
    const inner = laidOut(group.groups, here, fields, depth);
    if (Math.abs(depth) <= here.length) return inner;
    const total = { labels: labels(fields, ...here), lines: group.lines };
    return depth > 0 ? [...inner, total] : [total, ...inner];
  });
}

interface LaidOut {
  readonly labels: readonly CellValue[];
  readonly lines: readonly Line[];
}

function withGrand(rows: readonly LaidOut[], all: readonly Line[], fields: number, depth: number): LaidOut[] {
  if (depth === 0) return [...rows];
  const grand = { labels: labels(fields, grandName(depth)), lines: all };
  return depth > 0 ? [...rows, grand] : [grand, ...rows];
}

interface Order {
  readonly sort: Value;
  readonly depth: number;
  /** Rows stand by themselves instead of below their groups. */
  readonly table?: boolean;
}

/** Groups of lines by their keys, sorted, with their totals. */
function arranged(lines: readonly Line[], frame: Frame, { sort, depth, table = false }: Order, of: Summary): LaidOut[] {
  const fields = firstOf(lines).keys.length;
  const orders = ordersOf(sort === undefined ? undefined : toMatrix(sort, frame), fields, firstOf(lines).values.length);
  const groups = groupsOf(lines, 0, table);
  const sorted = inOrder(groups, orders, (group, column) => of(group.lines, lines, column));
  const rows = table
    ? sorted.map(({ lines: own }) => ({ labels: firstOf(own).keys, lines: own }))
    : laidOut(sorted, [], fields, depth);
  return withGrand(rows, lines, fields, depth);
}

const numberOf = (value: Value, frame: Frame): number | undefined => {
  if (value === undefined) return undefined;
  const given = topLeft(toMatrix(value, frame));
  return typeof given === "number" ? given : given === null ? undefined : fail(VALUE);
};

function groupBy(frame: Frame, keys: Value, values: Value, fn: Value, rest: readonly Value[]): Value {
  const [headings, total, sort, filter, relation] = rest;
  const of = summaryOf(fn, frame);
  const { lines, heads, shown } = source(
    toMatrix(keys, frame),
    toMatrix(values, frame),
    numberOf(headings, frame),
    filter === undefined ? undefined : toMatrix(filter, frame),
  );
  const table = numberOf(relation, frame) === 1;
  const depth = depthOf(numberOf(total, frame), table ? 1 : firstOf(lines).keys.length);
  const rows = arranged(lines, frame, { sort, depth, table }, of);
  const width = firstOf(lines).values.length;
  const answers = rows.map((row) => [
    ...row.labels,
    ...Array.from({ length: width }, (_, column) => of(row.lines, lines, column)),
  ]);
  return shown && heads ? [[...heads], ...answers] : answers;
}

/** What a part is a share of: 0 its column, 1 its row, 2 everything. */
const RELATIVE = [0, 1, 2];

function pivotBy(frame: Frame, rows: Value, columns: Value, values: Value, fn: Value, rest: readonly Value[]): Value {
  const [headings, rowTotal, rowSort, columnTotal, columnSort, filter, relative] = rest;
  const [down, across] = [toMatrix(rows, frame), toMatrix(columns, frame)];
  const given = toMatrix(values, frame);
  const to = Math.trunc(numberOf(relative, frame) ?? 0);
  if (widthOf(given) > 1) keep("unsupported-syntax", "PIVOTBY with several columns of values");
  if (!RELATIVE.includes(to)) keep("unsupported-syntax", "PIVOTBY relative to a parent");
  if (across.length !== down.length) fail(VALUE);
  const of = summaryOf(fn, frame);
  const both = down.map((row, i) => [...row, ...itemAt(across, i)]);
  const found = source(
    both,
    given,
    numberOf(headings, frame),
    filter === undefined ? undefined : toMatrix(filter, frame),
  );
  if (found.shown) keep("unsupported-syntax", "PIVOTBY that shows its headings");
  const fields = widthOf(down);
  const { lines } = found;
  const byRow = lines.map(({ keys, values: own }, at) => ({ keys: keys.slice(0, fields), values: own, at }));
  const byColumn = lines.map(({ keys, values: own }, at) => ({ keys: keys.slice(fields), values: own, at }));
  const side = { sort: rowSort, depth: depthOf(numberOf(rowTotal, frame), fields) };
  const top = { sort: columnSort, depth: depthOf(numberOf(columnTotal, frame), widthOf(across)) };
  const left = arranged(byRow, frame, side, of);
  const heads = arranged(byColumn, frame, top, of);
  withinLimit(left.length + widthOf(across), heads.length + fields);
  const levels = firstOf(across).map((_, level): CellValue[] => [
    ...new Array<CellValue>(fields).fill(""),
    ...heads.map(({ labels: own }) => itemAt(own, level)),
  ]);
  const members = heads.map((head) => new Set(head.lines.map(({ at }) => at)));
  const body = left.map((row): CellValue[] => [
    ...row.labels,
    ...heads.map((head, i) => {
      const cell = row.lines.filter(({ at }) => itemAt(members, i).has(at));
      return of(cell, to === 0 ? head.lines : to === 1 ? row.lines : lines, 0);
    }),
  ]);
  return [...levels, ...body];
}

export const grouping: readonly WorksheetFunction[] = [
  defineIn("GROUPBY", "array array array [array] [array] [array] [array] [array]", (frame, keys, values, fn, ...rest) =>
    groupBy(frame, keys, values, fn, rest),
  ),
  defineIn(
    "PIVOTBY",
    "array array array array [array] [array] [array] [array] [array] [array] [array]",
    (frame, rows, columns, values, fn, ...rest) => pivotBy(frame, rows, columns, values, fn, rest),
  ),
];
