/** The bill: one part a row. A row that cannot be read keeps its place and says why; the others are answered. */
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import type { Material } from "../../data/materials/material.ts";
import { type CellMatrix, isBlank } from "../../units/cell.ts";
import { type Degrees, type Millimetres, mm } from "../../units/quantity.ts";
import { Refusal, wrong } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import { isWrong, type Row, readRows } from "../parameters/read-table.ts";
import { remembered } from "../parameters/remembered.ts";
import { columnsInWords, isEmptyRange } from "../parameters/shop-table.ts";
import type { ReadContext, TableParameter } from "../record/record.ts";
import { BILL_COLUMNS, type RouteName } from "./bill-columns.ts";
import { thicknessOf } from "./stock.ts";

export { BILL_COLUMNS, ROUTES, type RouteName } from "./bill-columns.ts";

/** Parallel bends in one direction: outside flanges, one more than bends; angles negative where the bend goes down. */
export interface Strip {
  readonly flanges: readonly Millimetres[];
  readonly angles: readonly Degrees[];
  /** Length of its bend lines. */
  readonly bendLength: Millimetres;
}

/** "tap 3": a station's name and, where given, how many units of its basis one piece has. */
export interface Operation {
  readonly station: string;
  readonly amount: number | undefined;
}

export interface BillLine {
  readonly row: number;
  readonly part: string;
  readonly material: Material;
  /** As measured where the bill says it, else nominal: what is bent and weighed. */
  readonly thickness: Millimetres;
  /** What is bought. */
  readonly nominal: Millimetres;
  readonly quantity: number;
  readonly main: Strip;
  /** A part bent in both directions, such as a tray: its other strip. */
  readonly cross: Strip | undefined;
  /** Of a part with parallel bends or none: the other side of its blank. */
  readonly width: Millimetres;
  readonly radius: Millimetres | undefined;
  readonly radiusTolerance: Millimetres;
  readonly tolerance: Millimetres | undefined;
  readonly grain: Grain | undefined;
  readonly holes: number;
  readonly holeDiameter: Millimetres | undefined;
  readonly holeDistance: Millimetres | undefined;
  readonly notches: number;
  readonly notchPath: Millimetres | undefined;
  readonly die: string | undefined;
  readonly punch: string | undefined;
  readonly pin: RouteName | undefined;
  readonly operations: readonly Operation[];
  readonly spares: number;
  readonly area: string;
  readonly wantsCertificate: boolean;
}

/** A row that cannot be a part, with what it calls itself. */
export interface WrongLine {
  readonly row: number;
  readonly part: string;
  readonly refusal: Refusal;
}
export type BillRow = BillLine | WrongLine;
export const isLine = (row: BillRow): row is BillLine => !("refusal" in row);

export const bill = (): TableParameter<BillRow[]> => ({
  shape: "table",
  type: "bill",
  description: `The bill, one part a row: a range with a header row (${columnsInWords(BILL_COLUMNS)}), units in brackets in the header; lists as "2; 3.5; 2"`,
  optional: false,
  default: null,
  read: readBillOnce,
});

const readBillOnce = remembered((given, name, context) => readBill(given, name, context));

export function readBill(given: CellMatrix, name: string, context: ReadContext): BillRow[] {
  if (isEmptyRange(given)) throw wrong(name, "given", null);
  const rows = readRows(given, BILL_COLUMNS, name, context.system);
  if (rows.length === 0) throw wrong(name, "a range with at least one row below its header", null);
  return rows.map((row) => {
    if (isWrong(row)) {
      const { part } = row.cells;
      return { row: row.row, part: isBlank(part) ? "" : showGiven(part).replace(/^"|"$/g, ""), refusal: row.refusal };
    }
    try {
      return asLine(row, name, context);
    } catch (problem) {
      if (problem instanceof Refusal) return { row: row.row, part: row.part, refusal: problem };
      throw problem;
    }
  });
}

function asLine(row: Row<typeof BILL_COLUMNS>, name: string, context: ReadContext): BillLine {
  const label = (column: string) => `${name} row ${row.row} column "${column}"`;
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
  if (row.width === undefined && row.crossFlanges === undefined)
    throw wrong(label("Width"), 'given, or "Cross flanges" for a part bent in both directions', null);
  const base = (flanges: readonly number[]) => mm(Math.max(...flanges));
  const width = row.width === undefined ? base(row.crossFlanges!) : mm(row.width);
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
    radiusTolerance: mm(row.radiusTolerance ?? 0),
    tolerance: optional(row.tolerance),
    grain: row.grain?.toLowerCase() as Grain | undefined,
    holes,
    holeDiameter: optional(row.holeDiameter),
    holeDistance: optional(row.holeDistance),
    notches,
    notchPath: optional(row.notchPath),
    die: row.die,
    punch: row.punch,
    pin: row.route?.toLowerCase() as RouteName | undefined,
    operations: operations(row.operations, label("Operations")),
    spares: row.spares ?? 0,
    area: row.area ?? "",
    wantsCertificate: row.certificate?.toLowerCase() === "yes",
  };
}

const optional = (value: number | undefined): Millimetres | undefined => (value === undefined ? undefined : mm(value));

/** One angle stands for all bends; a part of one flange has none. */
function anglesFor(bends: number, given: readonly number[] | undefined, label: string): Degrees[] {
  if (bends === 0 && given === undefined) return [];
  if (given?.length === 1 && bends > 0) return Array.from({ length: bends }, () => given[0] as Degrees);
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
