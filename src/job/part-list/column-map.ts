/** Which column of a part list is read as what: by its heading, or as the person says. Nothing is read that is not shown. */
import { columnLetters } from "../../sheet/formula/address.ts";
import { type CellMatrix, isBlank } from "../../units/cell.ts";
import { missing } from "../../units/certain.ts";
import { nearestIs } from "../../units/nearest.ts";
import { Refusal, wrong } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import type { Heading, HeadingColumn } from "./heading.ts";
import {
  BEND_LENGTH,
  BILL_KEYS,
  foldTitle,
  isOneOf,
  LEG_WORDS,
  legOf,
  type Meaning,
  ONE_LEG,
  type PartKey,
  statedMeaning,
  titleOf,
  unitOfTitle,
  WHOLE,
  wholeOf,
  withUnit,
} from "./heading-words.ts";

export interface MappedColumn extends HeadingColumn {
  /** "C", as a spreadsheet calls it. */
  readonly letter: string;
  /** undefined: not read. */
  readonly read: Meaning | undefined;
  /** Why a column is not read although its heading says what it is, or what is asked about one that is read. */
  readonly why?: string;
}

/** What the person says of a list, as typed: "Matl=Material; Thk=Thickness (mm); Rev=". */
export function statedColumns(text: string): [theirs: string, ours: string][] {
  return text
    .split(";")
    .filter((each) => each.trim() !== "")
    .map((each) => {
      const at = each.lastIndexOf("=");
      if (at < 1) throw wrong("columns", 'pairs such as "Matl=Material; Thk=Thickness (mm)"', each.trim());
      return [each.slice(0, at).trim(), each.slice(at + 1).trim()];
    });
}

/**
 * @param body the rows below the heading; none where the map alone is looked at.
 * @param problems every reason to refuse the list: a person mends them in one round.
 */
export function mapColumns(
  found: Heading,
  stated: readonly (readonly [string, string])[],
  body: CellMatrix = [],
  problems: Refusal[] = [],
): readonly MappedColumn[] {
  const heading = withLegs(found);
  const own = new Map<number, Meaning | undefined>();
  const collect = (action: () => void) => {
    const problem = refusalOr(action);
    if (problem instanceof Refusal) problems.push(problem);
  };
  for (const [theirs, ours] of stated)
    collect(() => {
      const column = columnOf(heading, theirs);
      own.set(column.index, ours === "" ? undefined : said(ours, column));
    });
  collect(() => joinStated(heading, own));
  const taken = new Set([...own.values()].flatMap((meaning) => (meaning ? [meaning.key] : [])));
  const columns = heading.columns.map((column): MappedColumn => {
    const letter = columnLetters(column.index);
    if (own.has(column.index)) return { ...column, letter, read: own.get(column.index) };
    const { meaning } = column;
    const isTaken = meaning && taken.has(wholeOf(meaning.key));
    if (!isTaken) return { ...column, letter, read: meaning };
    return { ...column, letter, read: undefined, why: `another is read as ${titleOf(meaning.key)}` };
  });
  collect(() => refuseUnsaidBends(columns, own));
  collect(() => refuseUntitled(columns, own, body));
  if (!taken.has("quantity")) collect(() => refuseSecondQuantity(columns, own, body));
  const mapped = columns.map((column): MappedColumn => {
    if (own.has(column.index) || !column.read) return column;
    const { key, rank } = column.read;
    const rivals = columns.filter(({ index, read }) => index !== column.index && isRival(key, read?.key));
    const better = rivals.find(({ read }) => read && (read.key !== key || read.rank < rank));
    if (isOneOf(key)) return column;
    if (better) return { ...column, read: undefined, why: `"${better.title}" is read as ${titleOf(key)}` };
    const same = rivals.find(({ read }) => read?.rank === rank);
    if (!same) return column;
    // Said of the first of them alone.
    if (same.index > column.index)
      problems.push(
        wrong(
          `column for ${titleOf(key)}`,
          "one of the list",
          `${column.letter} "${column.title}" and ${same.letter} "${same.title}"`,
          `say which: --columns "${column.letter}=${titleOf(key)}"${
            key === "bendAngles" ? `, or both beside each other: "${column.letter}=Angle; ${same.letter}=Angle"` : ""
          }`,
        ),
      );
    return column;
  });
  return lengthAsWidth(mapped, own);
}

/** Beside the flanges, where nothing else could be the width, a "Length" is along the bend: taken so, and asked about. */
function lengthAsWidth(columns: readonly MappedColumn[], own: ReadonlyMap<number, unknown>): readonly MappedColumn[] {
  if (columns.some(({ read }) => read?.key === "width" || read?.key === "crossFlanges")) return columns;
  const [length, ...others] = columns.filter(
    ({ index, title, read, meaning }) =>
      !own.has(index) &&
      !read &&
      meaning?.key === "flanges" &&
      BEND_LENGTH.includes(foldTitle(title.replace(/[([,].*/, ""))),
  );
  if (!length || others.length > 0) return columns;
  const why = `taken as along the bend: if it is the flat's length, say another (--columns "${length.letter}=; ...=Width")`;
  return columns.map((column) =>
    column === length ? { ...column, read: { ...(length.meaning ?? missing()), key: "width" }, why } : column,
  );
}

/** "Flange" once may be a list of them; twice it is one flange each. */
function withLegs(heading: Heading): Heading {
  const isLeg = ({ title }: HeadingColumn) => LEG_WORDS.includes(foldTitle(title));
  if (heading.columns.filter(isLeg).length < 2) return heading;
  return { ...heading, columns: heading.columns.map((each) => (isLeg(each) ? { ...each, meaning: ONE_LEG } : each)) };
}

/** A heading over several columns stands in the first of them; the figures beside it would silently be dropped. */
function refuseUntitled(columns: readonly MappedColumn[], own: ReadonlyMap<number, unknown>, body: CellMatrix): void {
  const untitled = columns.filter(({ index, title }) => title === "" && !own.has(index));
  for (const { index, letter } of untitled) {
    const before = columns.findLast((column) => column.index < index && (column.title !== "" || column.read));
    const key = before?.read && wholeOf(before.read.key);
    if (!before || (key !== "flanges" && key !== "bendAngles") || body.every((row) => isBlank(row[index] ?? null)))
      continue;
    throw wrong(
      `column ${letter}`,
      `mapped: it has no heading, and figures beside ${before.letter} "${before.title}"`,
      null,
      `to join them --columns "${before.letter}=${titleOf(key)}; ${letter}=${titleOf(key)}", to leave it out --columns "${letter}="`,
    );
  }
}

/** A second delivery silently dropped would quote half the order; a column that repeats the first says nothing new. */
function refuseSecondQuantity(
  columns: readonly MappedColumn[],
  own: ReadonlyMap<number, unknown>,
  body: CellMatrix,
): void {
  const rank = ({ read }: MappedColumn) => (read ?? missing()).rank;
  const [first] = columns.filter(({ read }) => read?.key === "quantity").sort((a, b) => rank(a) - rank(b));
  if (!first) return;
  const says = (row: CellMatrix[number], { index }: MappedColumn) => String(row[index] ?? "").trim();
  const second = columns.find(
    (column) =>
      !own.has(column.index) &&
      (column.read ? column.read.key === "quantity" && rank(column) > rank(first) : isAmount(column.title)) &&
      body.some((row) => COUNT.test(says(row, column)) && says(row, column) !== says(row, first)),
  );
  if (second)
    throw wrong(
      `column for ${titleOf("quantity")}`,
      "one of the list",
      `${first.letter} "${first.title}" and ${second.letter} "${second.title}"`,
      `say which: --columns "${first.letter}=${titleOf("quantity")}"; a second delivery is a line of its own`,
    );
}
const COUNT = /^\d+(?:[.,]\d+)*\b(?![-/:])/;
const isAmount = (title: string): boolean =>
  /\b(?:qty|quantity|quantities|qnty|deliver(?:y|ies)|shipments?|pcs|pieces)\b/i.test(title) &&
  !/\bdates?\b/i.test(title);

/** "Bends" may be angles or how many there are: left out, a bent part would be taken for a plate. */
function refuseUnsaidBends(columns: readonly MappedColumn[], own: ReadonlyMap<number, unknown>): void {
  if (columns.some(({ read }) => read && wholeOf(read.key) === "bendAngles")) return;
  const unsaid = columns.find(
    ({ index, read, title }) => !read && !own.has(index) && /^(?:no)?(?:bends?|folds?)$/.test(foldTitle(title)),
  );
  if (unsaid)
    throw wrong(
      `column "${unsaid.title}"`,
      "mapped: angles, or how many",
      null,
      `for angles --columns "${unsaid.title}=Bend angles", to leave it out --columns "${unsaid.title}="`,
    );
}

/** The legs of a bracket are its flanges: a "Length" beside them is something else. */
const isRival = (key: PartKey, other: PartKey | undefined): boolean =>
  other === key || (isOneOf(other) && WHOLE[other] === key);

/**
 * Columns said to be flanges beside each other, or one such beside "Flange B", are one flange each, and angles alike:
 * taking only one would silently drop the others. Anything else has one column in a list.
 */
function joinStated(heading: Heading, own: Map<number, Meaning | undefined>): void {
  const columns = heading.columns.flatMap((column) => {
    const read = own.get(column.index);
    return read ? [{ ...column, read }] : [];
  });
  for (const column of columns) {
    const { read, index, title } = column;
    const same = columns.find((other) => other !== column && wholeOf(other.read.key) === wholeOf(read.key));
    const one = (["legs", "turns"] as const).find((each) => WHOLE[each] === read.key);
    const besides =
      one !== undefined &&
      legOf(title) !== "" &&
      heading.columns.some(({ index, meaning }) => !own.has(index) && meaning?.key === one);
    if (one !== undefined && (same || besides)) own.set(index, { ...read, key: one });
    else if (same && !isOneOf(read.key))
      throw wrong(
        "columns",
        `one column for ${titleOf(read.key)}`,
        `"${title}" and "${same.title}"`,
        `leave one of them out: --columns "${columnLetters(same.index)}="`,
      );
  }
}

/** The heading's own unit stays unless another is said. */
function said(ours: string, { title, meaning: own }: HeadingColumn): Meaning {
  const meaning = statedMeaning(ours);
  if (meaning) {
    const unit = meaning.unit ?? own?.unit ?? unitOfTitle(title);
    return (unit && withUnit(meaning, unit)) || meaning;
  }
  const names = [...BILL_KEYS.map(titleOf), "Leg"];
  throw wrong("columns", `a column of a bill such as ${names.slice(0, 8).join(", ")}`, ours, nearestIs(ours, names));
}

function columnOf({ columns }: Heading, theirs: string): HeadingColumn {
  const byTitle = (titleAs: (title: string) => string) =>
    columns.find(({ title }) => title !== "" && foldTitle(titleAs(title)) === foldTitle(theirs));
  const found =
    byTitle((title) => title) ??
    byTitle((title) => title.replace(/[([].*$/, "")) ??
    columns.find(({ index }) => columnLetters(index) === theirs.trim().toUpperCase());
  if (found) return found;
  const titles = columns.map(({ title }) => title).filter((title) => title !== "");
  throw wrong("columns", "a heading of the list or the letter of a column", theirs, nearestIs(theirs, titles));
}
