/** The columns of the bill that a list fills, and which cells of a row they hold. */

import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";
import { type CellValue, isBlank } from "../../units/cell.ts";
import { firstOf } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import type { MappedColumn } from "./column-map.ts";
import {
  type BillKey,
  foldTitle,
  isOneOf,
  LEG_WORDS,
  legOf,
  meaningOf,
  PLATE_LENGTH,
  titleOf,
  WHOLE,
} from "./heading-words.ts";

/** One column of the bill and where its cells stand in the list. */
export interface Field {
  readonly key: BillKey;
  readonly title: string;
  readonly letter: string;
  readonly unit: string | undefined;
  /** Columns of the list; several where the legs of a bracket stand beside each other. */
  readonly from: readonly number[];
  readonly constant?: string;
  readonly mayList: boolean;
}
/** Only so many unread columns are named: the list itself shows the rest. */
const UNREAD_SAID = 3;
const FIGURES = ["number", "length", "lengths", "thickness", "angles"];
export const isFigure = ({ key }: Field): boolean => FIGURES.includes(BILL_COLUMNS[key].kind);
const NEEDED: readonly BillKey[] = ["part", "material", "thickness", "quantity", "flanges"];

export function fieldsOf(columns: readonly MappedColumn[], every: readonly (readonly [string, string])[]): Field[] {
  const single = columns.flatMap((column): Field[] => {
    const { read, index, letter, title } = column;
    if (!read || isOneOf(read.key)) return [];
    const mayList = !PLATE_LENGTH.includes(foldTitle(title.replace(/[([].*/, "")));
    return [{ key: read.key, title, letter, unit: read.unit, from: [index], mayList }];
  });
  for (const key of ["legs", "turns"] as const) {
    const joined = columns.filter(({ read }) => read?.key === key);
    if (joined.every(({ title }) => legOf(title) !== ""))
      joined.sort((a, b) => legOf(a.title).localeCompare(legOf(b.title)));
    const [first] = joined;
    if (!first) continue;
    const other = joined.find(({ read }) => read?.unit !== first.read?.unit);
    if (other) throw wrong("legs", "columns in one unit", `"${first.title}" and "${other.title}"`);
    single.push({
      key: WHOLE[key],
      title: joined.map(({ title }) => title).join(", "),
      letter: joined.map(({ letter }) => letter).join(", "),
      unit: first.read?.unit,
      from: joined.map(({ index }) => index),
      mayList: true,
    });
  }
  for (const [title, value] of every) {
    const meaning = meaningOf(title);
    if (!meaning || isOneOf(meaning.key))
      throw wrong("every", 'pairs such as "Material=A36; Quantity=1"', `${title}=${value}`);
    if (single.some(({ key }) => key === meaning.key))
      throw wrong("every", "a column that the list does not have", title, "map the list's own with --columns");
    single.push({ key: meaning.key, title, letter: "", unit: meaning.unit, from: [], constant: value, mayList: true });
  }
  return single;
}

export function checkNeeded(fields: readonly Field[], columns: readonly MappedColumn[]): void {
  const has = (key: BillKey) => fields.some((field) => field.key === key);
  const missing = [
    ...NEEDED.filter((key) => !has(key)),
    ...(has("width") || has("crossFlanges") ? [] : (["width"] as const)),
  ];
  if (missing.length === 0) return;
  const names = missing.map((key) => `"${titleOf(key)}"`).join(", ");
  const unread = columns.filter(({ read, title }) => !read && title !== "");
  const leg = missing.includes("flanges")
    ? unread.find(({ title }) => LEG_WORDS.includes(foldTitle(title)))
    : undefined;
  const only = missing.length === 1 ? fields.find(({ key, mayList }) => key === "flanges" && !mayList) : undefined;
  if (only)
    throw wrong(
      `column "${only.title}"`,
      "mapped where no column is the width: the length of a bend, or one side of a flat plate",
      null,
      `a bend's: --columns "${only.letter}=Width; ...=Leg; ...=Leg" with the columns of its legs; a plate's: --every "Width=..."`,
    );
  const pairs = missing.map((key) => `${(key === "flanges" && leg?.letter) || "..."}=${titleOf(key)}`).join("; ");
  const notRead = unread
    .slice(0, UNREAD_SAID)
    .map(({ letter, title }) => `${letter} ${showGiven(title)}`)
    .join(", ");
  throw wrong(
    "parts",
    `a range whose heading has a column ${names}`,
    columns
      .map(({ title }) => title)
      .filter((title) => title !== "")
      .join(", ") || null,
    `${notRead === "" ? "" : `not read: ${notRead}; `}say which it is, by heading or letter: --columns "${pairs}", or of every line: --every "${missing.map((key) => `${titleOf(key)}=...`).join("; ")}"`,
  );
}

export const isEmpty = (cell: CellValue | undefined): boolean =>
  isBlank(cell) || (typeof cell === "string" && cell.trim() === "");

export const givenOf = (row: readonly CellValue[], { from, constant }: Field): CellValue => {
  if (constant !== undefined) return constant;
  if (from.length === 1) return row[firstOf(from)] ?? null;
  const legs = from.map((index) => row[index] ?? null);
  while (legs.length > 0 && isEmpty(legs.at(-1))) legs.pop();
  // A gap between two legs stays one, and is asked about.
  return legs.length === 0 ? null : legs.map((cell) => (isEmpty(cell) ? "" : cell)).join("; ");
};

export const itemsOf = (text: string): string[] => text.split(/[;\n+x×*]/i).map((item) => item.trim());

const SUM = /^(?:sub|grand)?[\s-]*(?:totals?|sums?)\b/i;

/** Why a row is not a part, in words; undefined where it is one. */
export function notAPart(
  row: readonly CellValue[],
  fields: readonly Field[],
  columns: readonly MappedColumn[],
): string | undefined {
  const filled = row.flatMap((cell, index) =>
    isEmpty(cell) ? [] : [{ index, text: String(cell).replace(/\s+/g, " ").trim() }],
  );
  const heads = filled.filter(({ index, text }) => {
    const column = columns.find((each) => each.index === index);
    return (
      column !== undefined &&
      foldTitle(column.title).includes(foldTitle(text)) &&
      meaningOf(text)?.key === column.read?.key
    );
  });
  if (heads.length >= 3 && heads.length * 2 > filled.length) return "the heading again";
  const read = fields.filter(({ from }) => from.some((index) => filled.some((cell) => cell.index === index)));
  const words = filled
    .map(({ text }) => text)
    .join(", ")
    .slice(0, 60);
  const has = (key: BillKey) => read.some((field) => field.key === key);
  const isSum = SUM.test(firstOf(filled).text);
  const isBare = !has("material") && !has("thickness") && !has("flanges");
  if ((isSum && filled.length <= 3) || (isBare && (isSum || read.length < 2))) return words;
  return undefined;
}
