/** The bill: one part a row. A row that cannot be read keeps its place and says why; the others are answered. */
import type { BillLine, BillRow, Cutter, Operation } from "../../bill/nouns/line.ts";
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import { type CellMatrix, isBlank } from "../../units/cell.ts";
import { type Degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { Refusal, wrong } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import { showGiven } from "../../units/show.ts";
import { readDue } from "../parameters/instant.ts";
import { ONE_FLANGE } from "../parameters/list.ts";
import { isWrong, type Row, readRows } from "../parameters/read-table.ts";
import { remembered } from "../parameters/remembered.ts";
import { isEmptyRange } from "../parameters/shop-table.ts";
import type { ReadContext } from "../record/record.ts";
import { BILL_COLUMNS } from "./bill-columns.ts";
import { thicknessOf } from "./stock.ts";

export const readBill = remembered((given, name, context) => read(given, name, context));

function read(given: CellMatrix, name: string, context: ReadContext): BillRow[] {
  if (isEmptyRange(given)) throw wrong(name, "given", null);
  const { headerRow, system } = context;
  // Row 1 is the header, so that the second row is the bill's first line.
  const place = (row: number) =>
    headerRow === undefined
      ? `line ${row - 1} (row ${row} of the range)`
      : `line ${row - 1} (sheet row ${headerRow + row - 1})`;
  const rows = readRows(given, BILL_COLUMNS, place, { name, system });
  if (rows.length === 0) throw wrong(name, "a range with at least one row below its header", null);
  return rows.map((row) => {
    if (isWrong(row)) {
      const { part } = row.cells;
      return { row: row.row, part: isBlank(part) ? "" : showGiven(part).replace(/^"|"$/g, ""), refusal: row.refusal };
    }
    const line = refusalOr(() => asLine(row, place(row.row), context));
    return line instanceof Refusal ? { row: row.row, part: row.part, refusal: line } : line;
  });
}

function asLine(row: Row<typeof BILL_COLUMNS>, place: string, context: ReadContext): BillLine {
  const label = (column: string) => `${place} column "${column}"`;
  const material = context.materials.find(row.material, label("Material"));
  const nominal = thicknessOf(row.thickness, material, label("Thickness"), context);
  const thickness =
    row.actual === undefined ? nominal : thicknessOf(row.actual, material, label("Actual thickness"), context);
  const holes = row.holes ?? 0;
  const notches = row.notches ?? 0;
  if (holes > 0 && row.holeDiameter === undefined)
    throw wrong(label("Hole diameter"), "given where there are holes", null);
  if (notches > 0 && row.notchPath === undefined)
    throw wrong(label("Notch path"), "given where there are notches", null);
  const base = (flanges: readonly number[]) => mm(Math.max(...flanges));
  const width = row.width === undefined ? row.crossFlanges && base(row.crossFlanges) : mm(row.width);
  if (width === undefined)
    throw wrong(label("Width"), 'given, or "Cross flanges" for a part bent in both directions', null);
  const strip = (
    flanges: readonly number[],
    given: readonly number[] | undefined,
    column: string,
    bendLength: number,
  ) => ({
    flanges: flanges.map(mm),
    angles: anglesFor(flanges.length - 1, given, label(column)),
    bendLength: mm(bendLength),
  });
  return {
    row: row.row,
    part: row.part,
    description: row.description ?? "",
    revision: row.revision,
    instruction: row.instruction?.trim() ?? "",
    material,
    thickness,
    nominal,
    quantity: row.quantity,
    main: strip(row.flanges, row.bendAngles, "Bend angles", width),
    cross:
      row.crossFlanges === undefined
        ? undefined
        : strip(row.crossFlanges, row.crossAngles, "Cross angles", base(row.flanges)),
    width,
    radius: optional(row.radius),
    radiusTolerance: optional(row.radiusTolerance),
    tolerance: optional(row.tolerance),
    grain: row.grain === undefined ? undefined : GRAIN_OF[row.grain.toLowerCase()],
    holes,
    holeDiameter: optional(row.holeDiameter),
    holeDistance: optional(row.holeDistance),
    offCenter: optional(row.offCenter),
    notches,
    notchPath: optional(row.notchPath),
    die: row.die,
    punch: row.punch,
    brake: row.brake,
    shear: row.shear,
    pin: row.route?.toLowerCase() as Cutter | undefined,
    operations: operations(row.operations, label("Operations")),
    finish: row.finish ?? "",
    spares: row.spares ?? 0,
    area: row.area ?? "",
    due: isBlank(row.due) ? undefined : readDue(row.due, label("Due")),
    wantsCertificate: row.certificate?.toLowerCase() === "yes",
    isNew: row.newPart?.toLowerCase() === "yes",
    wantsFirstArticle: row.firstArticle?.toLowerCase() === "yes",
    accepted: row.accepted ?? "",
  };
}

/** Main bend lines run across the blank's length: rolled along the length they lie across the grain. */
const GRAIN_OF: Readonly<Record<string, Grain | undefined>> = {
  across: "across",
  along: "along",
  length: "across",
  width: "along",
};

const optional = (value: number | undefined): Millimeters | undefined => (value === undefined ? undefined : mm(value));

/** No V folds a sheet flat on itself. What is read of the plan's findings is this sentence alone. */
function refuseHem(angles: readonly number[]): void {
  const hem = angles.find((angle) => Math.abs(angle) >= MOST_BENT);
  if (hem !== undefined) throw new Refusal("#VALUE!", HEM);
}
const MOST_BENT = 179;
const HEM =
  "A closed hem (180 deg) is not a bend over a V: enter the acute bend that your dies reach, then a hem die; or send it out.";

/** One angle stands for all bends; a part of one flange has none, and an angle of 0 beside it is none either. */
function anglesFor(bends: number, given: readonly number[] | undefined, label: string): Degrees[] {
  if (bends === 0 && (given === undefined || given.every((angle) => angle === 0))) return [];
  refuseHem(given ?? []);
  if (bends === 0) throw wrong(label, "blank beside one flange", given?.join("; ") ?? null, ONE_FLANGE);
  if (given?.length === 1) return Array.from({ length: bends }, () => given[0] as Degrees);
  if (given?.length !== bends)
    throw wrong(label, `one angle for all bends, or one fewer than the flanges (${bends})`, given?.join("; ") ?? null);
  return given as Degrees[];
}

const OPERATION = /^(.*?)(?:\s+(\d+(?:[.,]\d+)?))?$/;

/** "drill; tap 3; weld 1.5" */
function operations(text: string | undefined, label: string): Operation[] {
  if (text === undefined) return [];
  return text.split(";").flatMap((item) => {
    const [, station = "", amount] = OPERATION.exec(item.trim().slice(0, LONGEST_NAME)) ?? [];
    if (station === "") return [];
    const units = amount === undefined ? undefined : Number(amount.replace(",", "."));
    if (units !== undefined && units > MOST_UNITS) throw wrong(label, `amounts of at most ${MOST_UNITS}`, item.trim());
    return [{ station, amount: units }];
  });
}
const LONGEST_NAME = 80;
const MOST_UNITS = 100_000;
