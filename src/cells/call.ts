/**
 * Calls a cell function: brings the arguments into shape, reads them, calculates and writes the answer in the caller's
 * unit. Never throws and never returns NaN or Infinity: whatever comes in, a value or an error with a sentence comes out.
 */
import { CellError, type CellMatrix, type CellValue, isBlank, isCellError } from "../units/cell.ts";
import { message, Refusal } from "../units/refusal.ts";
import {
  fromInternal,
  type QuantityKind,
  RESULT_UNITS,
  type ResultUnit,
  SCALES,
  type UnitSystem,
  unitName,
} from "../units/system.ts";
import type { Working } from "../units/working.ts";
import { cellAt, combine, isSingle, ONE, type Shape, shapeOf } from "./broadcast.ts";
import { currentMaterials } from "./materials/read-data.ts";
import {
  type Answer,
  type AnyParameter,
  type AnyRecord,
  type Call,
  type ListParameter,
  publicName,
  type ReadContext,
  type TableParameter,
} from "./record.ts";

export type Argument = CellValue | CellMatrix | undefined;
export interface CallResult {
  readonly value: CellValue | CellMatrix;
  readonly unit: ResultUnit | null;
}

interface Slot {
  readonly key: string;
  readonly name: string;
  readonly parameter: AnyParameter;
  readonly matrix: CellMatrix;
  /** A list whose range is one part's list; it does not take part in broadcasting. */
  readonly wholeList: boolean;
}

export function callRecord(record: AnyRecord, given: readonly Argument[], work?: Working): CallResult {
  try {
    return respond(record, arrange(record, given), work);
  } catch (problem) {
    return { value: asError(problem, record), unit: null };
  }
}

/** One slot per parameter, with the argument as a matrix. */
function arrange(record: AnyRecord, given: readonly Argument[]): Slot[] {
  const parameters = Object.entries(record.parameters);
  if (given.length > parameters.length)
    throw new Refusal(
      "#VALUE!",
      message("arguments", `at most ${parameters.length} for ${record.name}`, String(given.length)),
    );
  const lists = parameters.map(([, { shape }], i) => (shape === "list" ? asMatrix(given[i]) : undefined));
  // One list argument with a part in every cell makes the others lists of parts too: {90;90} beside {"2;3";"2;4"}.
  const manyParts = lists.some((matrix) => matrix && !isOneList(matrix));
  const slots = parameters.map(([key, parameter], i): Slot => {
    const matrix = lists[i] ?? asMatrix(given[i]);
    const wholeList = lists[i] !== undefined && (isSingle(shapeOf(matrix)) || !manyParts);
    return { key, name: publicName(key), parameter, matrix, wholeList };
  });
  refuseListBesideRange(slots);
  return slots;
}

const asMatrix = (argument: Argument): CellMatrix =>
  Array.isArray(argument)
    ? argument.length > 0 && argument[0]!.length > 0
      ? argument
      : [[null]]
    : [[argument ?? null]];

/** A range is one part's list unless its cells hold lists as text, one part a cell. */
function isOneList(matrix: CellMatrix): boolean {
  if (isSingle(shapeOf(matrix))) return true;
  return !matrix.some((row) => row.some((cell) => typeof cell === "string" && cell.includes(";")));
}

function refuseListBesideRange(slots: readonly Slot[]): void {
  const list = slots.find(({ wholeList, matrix }) => wholeList && !isSingle(shapeOf(matrix)));
  if (!list) return;
  const other = slots.find((slot) => broadcasts(slot) && !isSingle(shapeOf(slot.matrix)));
  if (other)
    throw new Refusal(
      "#VALUE!",
      message(
        list.name,
        `one cell a part where another argument is a range (${other.name})`,
        "a range",
        'write each part\'s list as text in one cell: "2; 3.5; 2"',
      ),
    );
}

const isTable = ({ parameter }: Slot): boolean => parameter.shape === "table" || parameter.shape === "data";
const broadcasts = (slot: Slot): boolean => !isTable(slot) && !slot.wholeList;

function respond(record: AnyRecord, slots: readonly Slot[], work?: Working): CallResult {
  const shape = combine([ONE, ...slots.filter(broadcasts).map(({ matrix }) => shapeOf(matrix))]);
  const row = new RowReader(record, slots);
  if (isSingle(shape)) return row.answer(0, 0, work);
  if (record.result.kind === "table")
    throw new Refusal(
      "#VALUE!",
      message(
        "arguments",
        `single cells for ${record.name}, which spills its own block`,
        `a range of ${shape.rows} x ${shape.columns}`,
      ),
    );
  if (record.result.kind === "row") return respondInRows(record, row, shape);
  let unit: ResultUnit | null | undefined;
  const value = Array.from({ length: shape.rows }, (_, r) =>
    Array.from({ length: shape.columns }, (_, c) => {
      const answer = row.answer(r, c);
      if (!isCellError(answer.value) && answer.value !== "")
        unit = unit === undefined || unit === answer.unit ? answer.unit : null;
      return answer.value as CellValue;
    }),
  );
  return { value, unit: unit ?? null };
}

/** Several values a part, side by side: the parts must run down. */
function respondInRows(record: AnyRecord, row: RowReader, shape: Shape): CallResult {
  const width = record.result.kind === "row" ? record.result.columns.length : 1;
  if (shape.columns > 1)
    throw new Refusal(
      "#VALUE!",
      message("arguments", `columns for ${record.name}: one part a row`, `a range ${shape.columns} wide`),
    );
  const value = Array.from({ length: shape.rows }, (_, r) => {
    const answer = row.answer(r, 0).value;
    return Array.isArray(answer) ? answer[0]! : Array.from({ length: width }, () => answer);
  });
  return { value, unit: null };
}

/** Reads and answers one place of the result. Arguments of a single cell that need nothing else are read only once. */
class RowReader {
  readonly #tables = new Map<string, unknown>();
  readonly #units: Slot | undefined;
  readonly #data: Slot | undefined;
  readonly #required: readonly Slot[];

  constructor(
    private readonly record: AnyRecord,
    private readonly slots: readonly Slot[],
  ) {
    this.#units = slots.find(({ key }) => key === "units");
    this.#data = slots.find(({ parameter }) => parameter.shape === "data");
    this.#required = slots.filter((slot) => !isTable(slot) && !slot.parameter.optional);
  }

  answer(row: number, column: number, work?: Working): CallResult {
    try {
      if (this.#isEmpty(row, column)) return { value: "", unit: null };
      const context: ReadContext = { system: "in", materials: currentMaterials(), material: undefined };
      const late = this.#readAhead(context, row, column);
      const inputs: Record<string, unknown> = {};
      for (const slot of this.slots)
        inputs[slot.key] = late.has(slot.key)
          ? settle(late.get(slot.key))
          : this.#readInTurn(slot, row, column, context, late);
      const { system, materials } = context;
      const call: Call = work ? { system, materials, work } : { system, materials };
      return writeAnswer(this.record, this.record.calculate(inputs, call), system);
    } catch (problem) {
      return { value: asError(problem, this.record), unit: null };
    }
  }

  #isEmpty(row: number, column: number): boolean {
    return (
      this.#required.length > 0 &&
      this.#required.every((slot) =>
        slot.wholeList
          ? slot.matrix.every((cells) => cells.every(isBlank))
          : isBlank(cellAt(slot.matrix, row, column) ?? null) && cellAt(slot.matrix, row, column) !== undefined,
      )
    );
  }

  /** Units and materials rule how the others are read, but must not speak before them: a refusal waits for its turn. */
  #readAhead(context: ReadContext, row: number, column: number): Map<string, unknown> {
    const late = new Map<string, unknown>();
    const attempt = (slot: Slot | undefined, use: (value: unknown) => void) => {
      if (!slot) return;
      try {
        const value = this.#read(slot, row, column, context);
        late.set(slot.key, value);
        use(value);
      } catch (problem) {
        late.set(slot.key, new Waiting(problem));
      }
    };
    attempt(this.#units, (value) => {
      context.system = value as UnitSystem;
    });
    attempt(this.#data, (value) => {
      context.materials = value as ReadContext["materials"];
    });
    return late;
  }

  /** A material that is only in a faulty data range is not unknown: then the range has the word. */
  #readInTurn(slot: Slot, row: number, column: number, context: ReadContext, late: Map<string, unknown>): unknown {
    try {
      return this.#read(slot, row, column, context);
    } catch (problem) {
      const waiting = this.#data && late.get(this.#data.key);
      if (slot.parameter.type === "material" && waiting instanceof Waiting) throw waiting.problem;
      throw problem;
    }
  }

  #read(slot: Slot, row: number, column: number, context: ReadContext): unknown {
    const { parameter, name, key, matrix } = slot;
    if (isTable(slot)) {
      const known = `${key} ${context.system}`;
      if (!this.#tables.has(known)) {
        passErrorOn(isSingle(shapeOf(matrix)) ? matrix[0]![0]! : null);
        this.#tables.set(known, (parameter as TableParameter<unknown>).read(matrix, name, context));
      }
      return this.#tables.get(known);
    }
    if (parameter.shape === "list") {
      const cells = slot.wholeList ? matrix.flat() : [cellAt(matrix, row, column)];
      for (const cell of cells) passErrorOn(cell);
      return (parameter as ListParameter<unknown>).read(cells as CellValue[], name, context);
    }
    const cell = cellAt(matrix, row, column);
    passErrorOn(cell);
    return (parameter as { read(given: CellValue, name: string, context: ReadContext): unknown }).read(
      cell as CellValue,
      name,
      context,
    );
  }
}

class Waiting {
  constructor(readonly problem: unknown) {}
}

function settle(value: unknown): unknown {
  if (value instanceof Waiting) throw value.problem;
  return value;
}

/** An error cell passes through in its own place; a range that is too short is #N/A, as Excel has it. */
function passErrorOn(cell: CellValue | undefined): void {
  if (cell === undefined) throw new CellError("#N/A");
  if (isCellError(cell)) throw cell;
}

function asError(problem: unknown, record: AnyRecord): CellError {
  if (problem instanceof CellError) return problem;
  if (problem instanceof Refusal) return problem.toCell();
  // Our own mistake: say so in the cell instead of taking the workbook down.
  const detail = problem instanceof Error ? problem.message : String(problem);
  return new CellError(
    "#VALUE!",
    message(record.name, "free of faults of its own", detail, "please report it with the arguments"),
  );
}

function writeAnswer(record: AnyRecord, answer: Answer, system: UnitSystem): CallResult {
  const { result } = record;
  switch (result.kind) {
    case "table":
      return { value: guardMatrix(answer as CellMatrix, record), unit: null };
    case "row":
      return { value: guardMatrix([answer as CellValue[]], record), unit: null };
    case "any": {
      const { value, unit } = answer as { value: CellValue; unit: ResultUnit | null };
      return { value: guard(value, record), unit: typeof value === "number" ? unit : null };
    }
    case "text":
      return { value: answer as string, unit: null };
    case "count":
    case "money":
    case "date":
    case "h":
    case "min":
      return { value: guard(answer as number, record), unit: result.kind };
    default: {
      const name = unitName(result.kind, system);
      const unit = (RESULT_UNITS as readonly string[]).includes(name) ? (name as ResultUnit) : null;
      return { value: guard(fromInternal(answer as number, result.kind, system), record), unit };
    }
  }
}

const guardMatrix = (matrix: CellMatrix, record: AnyRecord): CellMatrix =>
  matrix.map((row) => row.map((cell) => guard(cell, record)));

/** Inputs may each be in order and yet overflow together; a cell never shows that as a number. */
function guard(value: CellValue, record: AnyRecord): CellValue {
  if (typeof value !== "number") return value;
  // Excel keeps 15 digits: the last bits that a unit conversion leaves behind (1.4999999999999998) are not an answer.
  if (Number.isFinite(value)) return Number(value.toPrecision(15));
  throw new Refusal(
    "#N/A",
    message("arguments", `of a size that ${record.name} can answer`, "figures whose result is too large to write"),
  );
}

/** The unit of a record's result as the catalogue states it: "in | mm" where it follows `units`. */
export function resultUnits(record: AnyRecord): string | null {
  const { kind } = record.result;
  if (kind === "table" || kind === "row" || kind === "any") return null;
  return kind in SCALES ? unitChoice(kind as QuantityKind) : kind;
}

/** "US ton | kN", or one name where both systems have the same. */
export function unitChoice(quantity: QuantityKind): string {
  const { in: inch, mm } = SCALES[quantity];
  return (inch.name as string) === mm.name ? inch.name : `${inch.name} | ${mm.name}`;
}
