/** Reads and answers one place of a call's result. */
import { CellError, type CellValue, isBlank, isCellError } from "../../units/cell.ts";
import { topLeft } from "../../units/certain.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { Working } from "../../units/working.ts";
import { currentMaterials } from "../parameters/read-data.ts";
import { cellAt, isSingle, shapeOf } from "../record/broadcast.ts";
import type { AnyRecord, Call, ListParameter, ReadContext, TableParameter } from "../record/record.ts";
import { asError, type CallResult, writeAnswer } from "./answer.ts";
import { isTable, type Slot } from "./arguments.ts";

/** Told of what went in, before anything is calculated. */
export type OnRead = (slots: readonly Slot[], inputs: Readonly<Record<string, unknown>>, system: UnitSystem) => void;

/** Arguments of a single cell that need nothing else are read only once. */
export class RowReader {
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

  answer(row: number, column: number, work?: Working, onRead?: OnRead): CallResult {
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
      onRead?.(this.slots, inputs, system);
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
        passErrorOn(isSingle(shapeOf(matrix)) ? topLeft(matrix) : null);
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
