import { CellError, type CellValue, ERROR_CODES, type ErrorCode } from "../../units/cell.ts";
import { errorOf } from "../evaluate/value.ts";
import { columnNumber, parseArea } from "../formula/address.ts";
import { refuse } from "../package/file-refusal.ts";
import { LIMITS } from "../package/limits.ts";
import { decodeEscapes } from "./escapes.ts";
import { type DataTableInputs, FormulaCell, type FormulaKind } from "./formula-cell.ts";
import { isoSerial } from "./iso-serial.ts";
import type { Sheet } from "./sheet.ts";

export interface SheetContext {
  readonly strings: readonly string[];
  /** 0-based indexes into cell metadata that mean "dynamic array". */
  readonly dynamicMetadata: ReadonlySet<number>;
  /** Errors newer than the format, by the cell's vm attribute. */
  readonly richErrors: ReadonlyMap<number, ErrorCode>;
}

export type Attributes = Readonly<Record<string, string | undefined>>;

/** What a c element says, wherever it was read: the texts of its children, undefined where there is no such child. */
export interface CellText {
  /** Attributes t, cm and vm. */
  readonly type: string | undefined;
  readonly cellMetadata: string | undefined;
  readonly valueMetadata: string | undefined;
  readonly formula: string | undefined;
  readonly formulaAttributes: Attributes;
  readonly value: string | undefined;
  readonly inline: string | undefined;
}

export const isTrue = (flag: string | undefined): boolean => flag === "1" || flag === "true";

/** Turns what the cells of a sheet's XML say into the sheet's values and formulas, and keeps where each one stands. */
export class CellStore {
  row = -1;
  /** Place of the cell that was opened last. */
  cellRow = -1;
  column = -1;
  private readonly masters = new Map<string, FormulaCell>();

  constructor(
    private readonly sheet: Sheet,
    private readonly context: SheetContext,
  ) {}

  openRow(given: string | undefined, hidden: boolean, start: number, openEnd: number): void {
    this.row = given === undefined ? this.row + 1 : Number(given) - 1;
    if (!(this.row >= 0 && this.row <= 1_048_575))
      refuse("damaged", "row number", "within the sheet", JSON.stringify(given));
    this.column = -1;
    const { layout, hiddenRows } = this.sheet;
    layout.rowNumber.push(this.row);
    layout.rowStart.push(start);
    layout.rowOpenEnd.push(openEnd);
    if (hidden) hiddenRows.add(this.row);
  }

  openCell(name: string | undefined, start: number): void {
    if (name === undefined) {
      this.column++;
      this.cellRow = this.row;
    } else {
      const [, letters = "", digits] =
        /^([A-Za-z]{1,3})([1-9]\d{0,6})$/.exec(name) ??
        refuse("damaged", "cell name", "a column and a row, such as B7", JSON.stringify(name));
      this.column = columnNumber(letters);
      this.cellRow = Number(digits) - 1;
    }
    this.opened(start, name);
  }

  private opened(start: number, name: string | undefined): void {
    if (this.column > 16_383 || this.cellRow > 1_048_575 || this.cellRow < 0)
      refuse("damaged", "cell", "within the sheet", name ?? `column ${this.column + 1}`);
    const { layout } = this.sheet;
    layout.cellRow.push(this.cellRow);
    layout.cellColumn.push(this.column);
    layout.cellStart.push(start);
  }

  closeCell(text: CellText, end: number): void {
    const { sheet, cellRow, column } = this;
    sheet.layout.cellEnd.push(end);
    const plain = this.value(text);
    const newer = plain instanceof CellError ? this.context.richErrors.get(Number(text.valueMetadata)) : undefined;
    const value = newer ? errorOf(newer) : plain;
    if (value !== undefined) sheet.set(cellRow, column, value);
    if (text.formula === undefined) return;
    const formula = this.makeFormula(text, text.formula, value);
    if (!formula) return;
    sheet.formulas.push(formula);
    sheet.own(cellRow, column, formula);
    if (cellRow > sheet.lastRow) sheet.lastRow = cellRow;
    if (column > sheet.lastColumn) sheet.lastColumn = column;
  }

  private value({ type, value, inline }: CellText): CellValue | undefined {
    if (inline !== undefined) return decodeEscapes(inline);
    if (value === undefined) return undefined;
    switch (type) {
      case "s":
        return this.context.strings[Number(value)] ?? "";
      case "str":
      case "inlineStr":
        return decodeEscapes(value);
      case "b":
        return value.trim() === "1" || value.trim() === "true";
      case "e":
        return (ERROR_CODES as readonly string[]).includes(value)
          ? errorOf(value as ErrorCode)
          : new CellError("#VALUE!", value);
      case "d":
        return isoSerial(value);
      default: {
        const number = Number(value);
        if (number === 0 && value.trim() === "") return undefined;
        return Number.isFinite(number) ? number : value;
      }
    }
  }

  private makeFormula(cell: CellText, text: string, stored: CellValue | undefined): FormulaCell | undefined {
    const { t: type = "normal", si = "", ref } = cell.formulaAttributes;
    const make = (
      own: string,
      kind: FormulaKind,
      area: FormulaCell["ref"],
      master?: FormulaCell,
      inputs?: DataTableInputs,
    ) => new FormulaCell(this.sheet.index, this.cellRow, this.column, own, kind, area, master, stored, inputs);
    if (type === "normal") return text.trim() === "" ? undefined : make(text, "normal", undefined);
    if (type === "shared") {
      const master = this.masters.get(si);
      if (text === "" && master) return make(master.text, "normal", undefined, master);
      const made = make(text, "normal", undefined);
      this.masters.set(si, made);
      return made;
    }
    const area = ref === undefined ? undefined : parseArea(ref);
    if (area && (type === "array" || type === "dataTable")) {
      const cells = (area.bottom - area.top + 1) * (area.right - area.left + 1);
      if (cells > LIMITS.arrayCells)
        refuse("too-large", "array formula", `over at most ${LIMITS.arrayCells} cells`, String(ref));
    }
    if (type === "dataTable") return make("", "data-table", area, undefined, dataTableInputs(cell.formulaAttributes));
    if (text.trim() === "") return undefined;
    if (type !== "array") return make(text, "normal", undefined);
    const metadata = Number(cell.cellMetadata ?? 0) - 1;
    return make(text, this.context.dynamicMetadata.has(metadata) ? "dynamic" : "array", area);
  }
}

function dataTableInputs({ r1 = "", r2, dt2D, dtr, del1, del2 }: Attributes): DataTableInputs {
  return {
    first: r1,
    second: isTrue(dt2D) ? (r2 ?? "") : undefined,
    firstDeleted: isTrue(del1),
    secondDeleted: isTrue(del2),
    byRow: isTrue(dtr),
  };
}
