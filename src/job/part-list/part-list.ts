/**
 * A part list as people have it, read as a bill: titles above the heading, headings of other shops, mixed units, thousands
 * and decimals either way. Nothing is guessed: every column shows what it is read as, and every cell that could be read
 * in two ways, or not at all, is named by its row and column and keeps its line from being planned.
 */

import type { BillRow } from "../../bill/nouns/line.ts";
import type { ReadContext } from "../../cells/record/record.ts";
import { readBill } from "../../cells/tables/bill.ts";
import { BILL_COLUMNS } from "../../cells/tables/bill-columns.ts";
import { type CellMatrix, type CellValue, isBlank } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { message, Refusal, wrong } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { showGiven } from "../../units/show.ts";
import { type MappedColumn, mapColumns, statedColumns } from "./column-map.ts";
import { Doubt, type Fault, type FaultKind } from "./doubt.ts";
import { checkNeeded, type Field, fieldsOf, givenOf, isEmpty, isFigure, itemsOf, notAPart } from "./fields.ts";
import { findHeading, type Heading, headingAt } from "./heading.ts";
import { type BillKey, titleOf } from "./heading-words.ts";
import { lineFaults, UNSAID } from "./line-faults.ts";
import { isPlate, metricLines } from "./metric-lines.ts";
import { type DecimalSign, type Notation, notationOf, plainFractions } from "./notation.ts";
import { isLength, readPartCell, sizeOf } from "./read-cell.ts";
import type { DateOrder } from "./read-date.ts";
import { type LengthCell, unitDoubt } from "./unit-doubt.ts";

/** What the person says of a list; everything else is found in it. */
export interface PartListOptions {
  /** "Matl=Material; Thk=Thickness (mm); Rev=" */
  readonly columns?: string | undefined;
  /** "Material=A36; Quantity=1": for every line, where the list has no such column. */
  readonly every?: string | undefined;
  /** "HRS=A1011 CS; SS=304" */
  readonly materials?: string | undefined;
  readonly decimal?: DecimalSign | undefined;
  /** Which stands first in dates that can be two days, 6/5/2026. */
  readonly dates?: DateOrder | undefined;
  /** What plain numbers under a heading without unit are in. */
  readonly units?: "in" | "mm" | undefined;
  /** The heading's row, from 1. */
  readonly heading?: number | undefined;
  /** Areas of the job; any other is a fault. None: any will do. */
  readonly areas?: readonly string[] | undefined;
}

export interface PartList {
  /** Its header the bill's own words, every figure in the shop's unit or with its own. Row i is row `headingRow` + i of the file. */
  readonly cells: CellMatrix;
  /** The file's row of `cells[0]`, from 1. */
  readonly headingRow: number;
  readonly columns: readonly MappedColumn[];
  readonly everyLine: readonly (readonly [title: string, value: string])[];
  readonly notation: Notation;
  readonly plainUnit: "in" | "mm";
  /** Rows that are no part: a heading repeated, a sum, a caption. */
  readonly leftOut: readonly { readonly row: number; readonly words: string }[];
  readonly lines: number;
  readonly faults: readonly Fault[];
}

/** Throws Refusal where no line can be read. `rows`: of the file, row 1 first. */
export function readPartList(rows: CellMatrix, options: PartListOptions, context: ReadContext): PartList {
  const heading = headingOf(rows, options);
  const body = rows.slice(heading.end).map((row) => row.map(plainFractions));
  const problems: Refusal[] = [];
  const columns = mapColumns(heading, statedColumns(options.columns ?? ""), body, problems);
  const everyLine = statedColumns(options.every ?? "");
  const own = new Map(statedColumns(options.materials ?? "").map(([theirs, ours]) => [theirs.toLowerCase(), ours]));
  const ours = (given: CellValue): CellValue =>
    own.get(
      String(given ?? "")
        .trim()
        .toLowerCase(),
    ) ?? given;
  const fields = fieldsOf(columns, everyLine);
  const needed = refusalOr(() => checkNeeded(fields, columns));
  if (needed instanceof Refusal) problems.push(needed);
  if (problems.length > 0) throw new Refusal("#VALUE!", problems.map((problem) => problem.message).join("\n"));

  const texts = (field: Field) =>
    body.flatMap((row) => field.from.map((index) => row[index])).filter((cell) => !isBlank(cell));
  const figures = fields.filter(isFigure);
  const notation = notationOf(
    figures
      .filter(({ key }) => BILL_COLUMNS[key].kind !== "number")
      .flatMap((field) =>
        texts(field)
          .filter((cell) => typeof cell === "string")
          // An angle is no fraction, which would speak for a decimal point.
          .flatMap((cell) => itemsOf(cell as string).flatMap((item) => (isLength(field.key) ? item : item.split("/")))),
      ),
    options.decimal,
  );
  const plainUnit = options.units ?? context.system;
  const lengths = figures
    .filter(({ key }) => isLength(key))
    .flatMap((field) =>
      texts(field).flatMap((cell) =>
        itemsOf(String(cell)).map(
          (text): LengthCell => ({
            text,
            unit: field.unit,
            isThickness: sizeOf(field.key) === "thickness",
            isSide: sizeOf(field.key) === "side",
          }),
        ),
      ),
    );
  const doubt = options.units ? undefined : unitDoubt(lengths, context.system);
  const metric = options.units || context.system !== "in" ? [] : metricLines(body, fields);

  const faults: Fault[] = [];
  const leftOut: { row: number; words: string }[] = [];
  let lines = 0;
  const read = body.map((row, i): CellValue[] => {
    const number = heading.end + i + 1;
    const blank = fields.map(() => null);
    if (row.every(isEmpty)) return blank;
    const no = notAPart(row, fields, columns);
    if (no !== undefined) {
      leftOut.push({ row: number, words: no });
      return blank;
    }
    lines++;
    const ofMaterial = fields.find(({ key }) => key === "material");
    const isSheet =
      context.materials.get(String(ofMaterial ? ours(givenOf(row, ofMaterial)) : ""))?.thicknessOver === "sheet";
    return fields.map((field): CellValue => {
      if (field.constant !== undefined && field.key === "bendAngles" && isPlate(row, fields)) return null;
      const given = givenOf(row, field);
      const replaced = field.key === "material" ? ours(given) : given;
      try {
        const cell = readPartCell(replaced, {
          key: field.key,
          unit: field.unit,
          plainUnit,
          unitDoubt: doubt,
          metricDoubt: metric[i],
          isSheet,
          mayList: field.mayList,
          notation,
          dates: options.dates,
          shop: context.system,
          materials: context.materials,
        });
        checkArea(field.key, cell, options.areas);
        return cell;
      } catch (problem) {
        if (!(problem instanceof Doubt)) throw problem;
        const { kind, words } = problem;
        faults.push({ row: number, column: field.letter, title: field.title, given: String(given ?? ""), kind, words });
        return kind === "unknown material" && !context.materials.get(String(given)) ? given : doubtful(given);
      }
    });
  });
  if (lines === 0) throw wrong("parts", "a list with at least one row below its header", null);
  const list: PartList = {
    cells: [fields.map(({ key }) => titleOf(key)), ...read],
    headingRow: heading.end,
    columns,
    everyLine,
    notation,
    plainUnit,
    leftOut,
    lines,
    faults,
  };
  const ofLines = lineFaults(list, fields, context);
  const bends = fields.findIndex(({ key }) => key === "bendAngles");
  // Too few angles would be read as that of every bend, where the mark does not say that they are in doubt.
  for (const { row, column, given } of ofLines)
    if (column !== "" && column === fields[bends]?.letter) itemAt(read, row - heading.end - 1)[bends] = doubtful(given);
  return { ...list, faults: [...faults, ...ofLines].sort((a, b) => a.row - b.row) };
}

/** The lines as a plan takes them: one with a fault is not read, and says all of its faults at once. */
export function partRows(list: PartList, context: ReadContext): BillRow[] {
  const wrongAt = new Map<number, Fault[]>();
  for (const fault of list.faults) wrongAt.set(fault.row, [...(wrongAt.get(fault.row) ?? []), fault]);
  return readBill(list.cells, "parts", { ...context, headerRow: list.headingRow }).map((row) => {
    const faults = wrongAt.get(list.headingRow + row.row - 1);
    if (!faults) return row;
    const place = `line ${row.row - 1} (sheet row ${list.headingRow + row.row - 1})`;
    return { row: row.row, part: row.part, refusal: refusalOf(place, faults) };
  });
}

/** Throws Refusal where none is found and the person points at none. */
export function headingOf(rows: CellMatrix, { heading, columns }: PartListOptions): Heading {
  if (rows.every((row) => row.every(isEmpty))) throw wrong("parts", "given", null);
  if (heading === 0)
    return {
      top: 0,
      end: 0,
      columns: Array.from({ length: Math.max(...rows.map((row) => row.length)) }, (_, index) => ({
        index,
        title: "",
        meaning: undefined,
      })),
    };
  const found = heading === undefined ? findHeading(rows) : headingAt(rows, heading - 1);
  if (found) return found;
  const first = rows.findIndex((row) => !row.every(isEmpty));
  // A person who maps columns by hand may have a heading that tells nothing by itself.
  if (columns !== undefined) return headingAt(rows, first);
  throw wrong(
    "parts",
    'a list with a heading that tells its columns, such as "Part", "Material", "Thickness", "Quantity", "Width", "Length"',
    `row ${first + 1}: ${itemAt(rows, first)
      .filter((cell) => !isEmpty(cell))
      .slice(0, 8)
      .join(", ")}`,
    'say the heading\'s row and its columns: --heading 3 --columns "THEIRS=Material; ...", or --heading 0 and letters where there is none',
  );
}

/** One fault with what to write; several faults by name only, to keep the sentence short. */
function refusalOf(place: string, faults: readonly Fault[]): Refusal {
  const named = (faults.length === 1 ? "column " : "columns ") + faults.map(({ title }) => `"${title}"`).join(", ");
  const given = faults.map((fault) => showGiven(fault.given)).join(", ");
  const [{ kind, words }] = faults as [Fault];
  const [rule, hint] =
    faults.length > 1
      ? ["right", faults.map((fault) => fault.kind).join(", ")]
      : words.startsWith(MUST_BE)
        ? ruleOf(words)
        : [RULES[kind], words];
  const label = faults.every(({ title }) => title === "") ? place : `${place} ${named}`;
  return new Refusal("#VALUE!", message(label, rule, given, hint));
}
const MUST_BE = "must be ";
const ruleOf = (words: string): [string, string] => {
  const [rule = "", ...hint] = words.slice(MUST_BE.length).split("; ");
  return [rule, hint.join("; ")];
};
const RULES: Readonly<Record<FaultKind, string>> = {
  "unit in doubt": "in a clear unit",
  "figure in doubt": "one figure",
  unreadable: "readable",
  "unknown material": "a material in the table",
  "unknown area": "an area of the job",
  missing: "given",
  "not allowed": "allowed",
  "does not fit together": "a part",
};

function checkArea(key: BillKey, cell: CellValue, areas: readonly string[] = []): void {
  if (key !== "area" || isBlank(cell) || areas.length === 0) return;
  if (areas.some((area) => area.toLowerCase() === String(cell).toLowerCase())) return;
  throw new Doubt("unknown area", `is not one of the job's areas: ${areas.join("; ")}`);
}

/** A doubtful cell as a workbook holds it: seen, and read by no function. */
const doubtful = (given: CellValue): CellValue =>
  isEmpty(given) ? UNSAID : `${String(given).replace(/\s+/g, " ").trim()} ?`;
