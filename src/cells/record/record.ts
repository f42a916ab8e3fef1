/**
 * One record per cell function: what it asks, takes, answers, and where the answer comes from. functions.json, the
 * registration in Excel, the function guide, the sample's Functions sheet and the tests all read these records.
 */

import type { MaterialTable } from "../../bill/nouns/material-table.ts";
import type { Material } from "../../data/materials/material.ts";
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import type { QuantityKind, ResultUnit, UnitSystem } from "../../units/system.ts";
import type { Working } from "../../units/working.ts";

/** What a reader may look at while it reads one argument of one row. */
export interface ReadContext {
  system: UnitSystem;
  materials: MaterialTable;
  /** The material of this row, once it has been read: a gauge needs it. */
  material: Material | undefined;
  /** The sheet's row of a table's header, where it is known; a cell function is not told. */
  headerRow?: number;
}

/**
 * "cell": one value, broadcast over ranges. "list": one part's values, as a range or as text "2; 3.5; 2".
 * "table": a whole range. "data": the materials, as an edition's name or a range.
 */
type ParameterShape = "cell" | "list" | "table" | "data";

export interface Parameter<T> {
  readonly shape: ParameterShape;
  /** For people: "length", "material", "angle", ... */
  readonly type: string;
  /** The kind of quantity a plain number is read as, if any. */
  readonly quantity?: QuantityKind;
  readonly description: string;
  readonly optional: boolean;
  /** What a blank means, in the words of the catalogue; null where a blank simply leaves the thing out. */
  readonly default: CellValue;
  /** Reads one cell ("cell"), the cells of one list ("list") or the whole range ("table", "data"). Throws Refusal. */
  read(given: never, name: string, context: ReadContext): T;
}

export interface CellParameter<T> extends Parameter<T> {
  readonly shape: "cell";
  read(given: CellValue, name: string, context: ReadContext): T;
}
export interface ListParameter<T> extends Parameter<T> {
  readonly shape: "list";
  read(given: readonly CellValue[], name: string, context: ReadContext): T;
}
export interface TableParameter<T> extends Parameter<T> {
  readonly shape: "table" | "data";
  read(given: CellMatrix, name: string, context: ReadContext): T;
}
export type AnyParameter = CellParameter<unknown> | ListParameter<unknown> | TableParameter<unknown>;
export type Parameters = Readonly<Record<string, AnyParameter>>;
export type Inputs<P extends Parameters> = { readonly [K in keyof P]: ReturnType<P[K]["read"]> };

/** What the calculation may use beside its inputs. */
export interface Call {
  readonly system: UnitSystem;
  readonly materials: MaterialTable;
  readonly work?: Working;
}

/**
 * How the answer is written. A quantity is returned in the internal unit and converted here, once; "count" and "text"
 * are returned as they are; "row" is several values of one part, side by side; "table" is a finished block of cells.
 * "any" names its own unit.
 */
type Result =
  | { readonly kind: QuantityKind }
  | { readonly kind: "count" | "text" | "money" | "date" | "h" | "min" }
  | { readonly kind: "row"; readonly columns: readonly string[] }
  | { readonly kind: "table"; readonly columns: readonly string[] }
  | { readonly kind: "any" };

export type Answer =
  | number
  | string
  | readonly CellValue[]
  | CellMatrix
  | { value: CellValue; unit: ResultUnit | null };

interface FunctionRecord<P extends Parameters = Parameters> {
  /** Without the namespace: "BEND.TONNAGE" is SHOP.BEND.TONNAGE in a cell. */
  readonly name: string;
  /** The question it answers, in the words of the shop floor. */
  readonly question: string;
  /** In the order of the arguments; bendAngle is shown as bend_angle. */
  readonly parameters: P;
  readonly result: Result;
  /** A true example, checked by a test: the formula and what it answers. */
  readonly example: { readonly formula: string; readonly answer: CellValue };
  readonly source: string;
  /** Name, argument order and meaning never change. */
  readonly contract?: true;
  /** May take longer than a keystroke: the Excel host runs it in a worker. */
  readonly long?: true;
  calculate(inputs: Inputs<P>, call: Call): Answer;
}

/** Any record, its inputs' types forgotten. */
export type AnyRecord = Omit<FunctionRecord, "calculate"> & {
  calculate(inputs: Readonly<Record<string, unknown>>, call: Call): Answer;
};

/** Writes a record with the inputs' types inferred from its parameters. */
export const defineFunction = <P extends Parameters>(record: FunctionRecord<P>): AnyRecord =>
  record as unknown as AnyRecord;

/** bendAngle -> bend_angle: how a parameter is called in the catalogue and in messages. */
export const publicName = (key: string): string => key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
