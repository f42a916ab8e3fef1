/** Finds the heading of a part list among titles, addresses and blank lines: one row, two of them, and a row of units. */
import { type CellMatrix, type CellValue, isBlank } from "../../units/cell.ts";
import { foldTitle, isOneOf, type Meaning, meaningOf, unitWord, withUnit } from "./heading-words.ts";

export interface HeadingColumn {
  /** From 0, the first column of the file. */
  readonly index: number;
  /** As it stands; of two rows both words. */
  readonly title: string;
  readonly meaning: Meaning | undefined;
}
export interface Heading {
  /** Its first row, from 0. */
  readonly top: number;
  /** The first row behind it. */
  readonly end: number;
  readonly columns: readonly HeadingColumn[];
}

/** Rows: more titles than that stand above no list. */
export const LOOKED_THROUGH = 60;
const LEAST_KNOWN = 3; // columns that must be understood before a row counts as the heading

/** undefined where no row tells enough columns. Of several, the one that tells most; of equals, the first. */
export function findHeading(rows: CellMatrix): Heading | undefined {
  let best: Heading | undefined;
  let most = LEAST_KNOWN - 1;
  for (let top = 0; top < Math.min(rows.length, LOOKED_THROUGH); top++) {
    const alone = oneRow(rows, top);
    const both = twoRows(rows, top);
    const below = oneRow(rows, top + 1);
    for (const found of [alone, ...(known(both) > known(below) ? [both] : [])])
      if (known(found) > most) [best, most] = [found, known(found)];
  }
  return best && withUnits(rows, best);
}

/** The heading that a person points at, whatever it tells. */
export const headingAt = (rows: CellMatrix, row: number): Heading => withUnits(rows, oneRow(rows, row));

/** How many different columns it tells. */
export const known = ({ columns }: Heading): number =>
  new Set(columns.flatMap(({ meaning }) => (meaning ? [meaning.key] : []))).size;

const textOf = (cell: CellValue | undefined): string => (isBlank(cell) ? "" : String(cell).replace(/\s+/g, " ").trim());

const oneRow = (rows: CellMatrix, top: number): Heading => ({
  top,
  end: top + 1,
  columns: (rows[top] ?? []).map((cell, index) => {
    const title = textOf(cell);
    return { index, title, meaning: meaningOf(title) };
  }),
});

/** A word over several columns belongs to each of them: "Size" over "T", "W" and "L"; a row with figures is no heading. */
function twoRows(rows: CellMatrix, top: number): Heading {
  const [above = [], below = []] = [rows[top], rows[top + 1]];
  const width = Math.max(above.length, below.length);
  const columns: HeadingColumn[] = [];
  let over = "";
  const hasFigures = below.some((cell, i) => {
    over = textOf(above[i]) || over;
    // "Angle" over 1 and 2.
    return (
      (typeof cell === "number" || /^\W*\d/.test(textOf(cell))) && !isOneOf(meaningOf(`${over} ${textOf(cell)}`)?.key)
    );
  });
  over = "";
  for (let index = 0; index < width && !hasFigures; index++) {
    const [upper, lower] = [textOf(above[index]), textOf(below[index])];
    if (upper !== "") over = upper;
    const joined = lower === "" ? upper : `${over} ${lower}`.trim();
    const addsUnit = lower === "" || unitWord(lower) !== undefined || COUNTED.includes(foldTitle(lower));
    const meaning = [joined, lower, addsUnit ? upper : ""].map(meaningOf).find((found) => found !== undefined);
    columns.push({ index, title: joined, meaning });
  }
  return { top, end: top + 2, columns };
}

/** A row of nothing but units and letters below the heading. */
function withUnits(rows: CellMatrix, heading: Heading): Heading {
  const words = (rows[heading.end] ?? []).map(textOf);
  const units = words.map((word) => (word === "" ? undefined : unitWord(word.replace(/^[([]|[)\]]$/g, ""))));
  const isUnits = words.every(
    (word, i) => word === "" || units[i] !== undefined || COUNTED.includes(foldTitle(word)) || LETTERS.test(word),
  );
  if (!isUnits || units.every((unit) => unit === undefined)) return heading;
  return {
    ...heading,
    end: heading.end + 1,
    columns: heading.columns.map((column) => {
      const unit = units[column.index];
      if (unit === undefined || column.meaning?.unit !== undefined) return column;
      const meaning = column.meaning && withUnit(column.meaning, unit);
      return { ...column, title: `${column.title} (${unit})`, meaning };
    }),
  };
}
/** What stands in the drawing beside the sizes: "A", "A x B", "1". */
const LETTERS = /^(?:[a-h](?: ?[x+] ?[a-h])*|[1-9])$/i;
const COUNTED = ["ea", "each", "pc", "pcs", "no", "nos"];
