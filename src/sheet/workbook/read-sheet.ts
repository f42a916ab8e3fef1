import { CellError, type CellValue, ERROR_CODES, type ErrorCode } from "../../units/cell.ts";
import { errorOf } from "../evaluate/value.ts";
import { type Area, columnNumber, parseArea } from "../formula/address.ts";
import { refuse } from "../package/file-refusal.ts";
import { LIMITS } from "../package/limits.ts";
import { parseXml, type Tag } from "../package/xml.ts";
import { decodeEscapes } from "./escapes.ts";
import { type DataTableInputs, FormulaCell, type FormulaKind } from "./formula-cell.ts";
import { isoSerial } from "./iso-serial.ts";
import { MAIN } from "./names.ts";
import type { Sheet } from "./sheet.ts";

export interface SheetContext {
  readonly strings: readonly string[];
  /** 0-based indexes into cell metadata that mean "dynamic array". */
  readonly dynamicMetadata: ReadonlySet<number>;
  /** Errors newer than the format, by the cell's vm attribute. */
  readonly richErrors: ReadonlyMap<number, ErrorCode>;
}

/** Reads one worksheet part into the sheet: values, formulas, hidden rows, and where every cell stands. */
export function readSheet(sheet: Sheet, text: string, context: SheetContext): void {
  new SheetReader(sheet, text, context).read();
}

class SheetReader {
  private row = -1;
  private column = -1;
  private cell: Tag | undefined;
  private cellRow = 0;
  private formula: Tag | undefined;
  private formulaText = "";
  private valueText: string | undefined;
  private inline: string | undefined;
  private into: "f" | "v" | "t" | undefined;
  private phonetic = 0;
  private filter: Area | undefined;
  private readonly masters = new Map<string, FormulaCell>();

  constructor(
    private readonly sheet: Sheet,
    private readonly xml: string,
    private readonly context: SheetContext,
  ) {}

  read(): void {
    parseXml(this.xml, {
      open: (tag) => {
        if (tag.uri === MAIN) this.open(tag);
      },
      text: (piece) => this.text(piece),
      close: (local, end, uri) => {
        if (uri === MAIN) this.close(local, end);
      },
    });
  }

  private open(tag: Tag): void {
    switch (tag.local) {
      case "sheetData":
        this.sheet.layout.dataOpenEnd = tag.end;
        if (tag.selfClosing) this.sheet.layout.dataEnd = tag.end;
        break;
      case "autoFilter":
        this.filter = parseArea(tag.attributes["ref"] ?? "");
        break;
      case "filterColumn":
        if (this.filter) this.sheet.filtered.push(this.filter);
        this.filter = undefined;
        break;
      case "row":
        this.openRow(tag);
        break;
      case "c":
        this.openCell(tag);
        break;
      case "f":
        if (!this.cell) return;
        this.formula = tag;
        this.into = "f";
        break;
      case "v":
        if (!this.cell) return;
        this.valueText = "";
        this.into = "v";
        break;
      case "is":
        if (this.cell) this.inline = "";
        break;
      case "rPh":
        this.phonetic++;
        break;
      case "t":
        if (this.inline !== undefined && this.phonetic === 0) this.into = "t";
        break;
    }
  }

  private openRow(tag: Tag): void {
    const { layout } = this.sheet;
    const given = tag.attributes["r"];
    this.row = given === undefined ? this.row + 1 : Number(given) - 1;
    if (!(this.row >= 0 && this.row <= 1_048_575))
      refuse("damaged", "row number", "within the sheet", JSON.stringify(given));
    this.column = -1;
    layout.rowNumber.push(this.row);
    layout.rowStart.push(this.xml.lastIndexOf("<", tag.end - 1));
    layout.rowOpenEnd.push(tag.end);
    if (isTrue(tag.attributes["hidden"])) this.sheet.hiddenRows.add(this.row);
  }

  private openCell(tag: Tag): void {
    const name = tag.attributes["r"];
    if (name === undefined) {
      this.column++;
      this.cellRow = this.row;
    } else {
      const match = /^([A-Za-z]{1,3})([1-9]\d{0,6})$/.exec(name);
      if (!match) refuse("damaged", "cell name", "a column and a row, such as B7", JSON.stringify(name));
      this.column = columnNumber(match![1]!);
      this.cellRow = Number(match![2]) - 1;
    }
    if (this.column > 16_383 || this.cellRow > 1_048_575 || this.cellRow < 0)
      refuse("damaged", "cell", "within the sheet", String(name));
    this.cell = tag;
    this.formula = undefined;
    this.formulaText = "";
    this.valueText = undefined;
    this.inline = undefined;
    const { layout } = this.sheet;
    layout.cellRow.push(this.cellRow);
    layout.cellColumn.push(this.column);
    layout.cellStart.push(this.xml.lastIndexOf("<", tag.end - 1));
  }

  private text(piece: string): void {
    if (this.into === "f") this.formulaText += piece;
    else if (this.into === "v") this.valueText += piece;
    else if (this.into === "t") this.inline += piece;
  }

  private close(local: string, end: number): void {
    if (local === "f" || local === "v" || local === "t") this.into = undefined;
    else if (local === "rPh") this.phonetic--;
    else if (local === "c" && this.cell) {
      this.sheet.layout.cellEnd.push(end);
      this.finishCell(this.cell);
      this.cell = undefined;
    } else if (local === "row") this.sheet.layout.rowEnd.push(end);
    else if (local === "sheetData" && this.sheet.layout.dataEnd < 0) {
      this.sheet.layout.dataEnd = this.xml.lastIndexOf("<", end - 1);
    }
  }

  private finishCell(tag: Tag): void {
    const plain = this.value(tag.attributes["t"] ?? "n");
    const newer = plain instanceof CellError ? this.context.richErrors.get(Number(tag.attributes["vm"])) : undefined;
    const value = newer ? errorOf(newer) : plain;
    const { sheet, cellRow, column } = this;
    if (value !== undefined) sheet.set(cellRow, column, value);
    if (!this.formula) return;
    const formula = this.makeFormula(tag, this.formula, value);
    if (!formula) return;
    sheet.formulas.push(formula);
    sheet.own(cellRow, column, formula);
    if (cellRow > sheet.lastRow) sheet.lastRow = cellRow;
    if (column > sheet.lastColumn) sheet.lastColumn = column;
  }

  private value(type: string): CellValue | undefined {
    if (this.inline !== undefined) return decodeEscapes(this.inline);
    const text = this.valueText;
    if (text === undefined) return undefined;
    switch (type) {
      case "s":
        return this.context.strings[Number(text)] ?? "";
      case "str":
        return decodeEscapes(text);
      case "inlineStr":
        return decodeEscapes(text);
      case "b":
        return text.trim() === "1" || text.trim() === "true";
      case "e":
        return (ERROR_CODES as readonly string[]).includes(text)
          ? errorOf(text as ErrorCode)
          : new CellError("#VALUE!", text);
      case "d":
        return isoSerial(text);
      default: {
        if (text.trim() === "") return undefined;
        const number = Number(text);
        return Number.isFinite(number) ? number : text;
      }
    }
  }

  private makeFormula(tag: Tag, f: Tag, stored: CellValue | undefined): FormulaCell | undefined {
    const { t: type = "normal", si = "", ref } = f.attributes;
    const { index } = this.sheet;
    const area = ref === undefined ? undefined : parseArea(ref);
    if (area && (type === "array" || type === "dataTable")) {
      const cells = (area.bottom - area.top + 1) * (area.right - area.left + 1);
      if (cells > LIMITS.arrayCells)
        refuse("too-large", "array formula", `over at most ${LIMITS.arrayCells} cells`, String(ref));
    }
    if (type === "shared") {
      const master = this.masters.get(si);
      if (this.formulaText === "" && master) {
        return new FormulaCell(
          index,
          this.cellRow,
          this.column,
          master.text,
          "normal",
          undefined,
          master,
          stored,
          undefined,
        );
      }
      const made = new FormulaCell(
        index,
        this.cellRow,
        this.column,
        this.formulaText,
        "normal",
        undefined,
        undefined,
        stored,
        undefined,
      );
      this.masters.set(si, made);
      return made;
    }
    if (type === "dataTable") {
      const inputs = dataTableInputs(f.attributes);
      return new FormulaCell(index, this.cellRow, this.column, "", "data-table", area, undefined, stored, inputs);
    }
    if (this.formulaText.trim() === "") return undefined;
    const cm = Number(tag.attributes["cm"] ?? 0);
    const kind: FormulaKind =
      type !== "array" ? "normal" : this.context.dynamicMetadata.has(cm - 1) ? "dynamic" : "array";
    return new FormulaCell(
      index,
      this.cellRow,
      this.column,
      this.formulaText,
      kind,
      area,
      undefined,
      stored,
      undefined,
    );
  }
}

function dataTableInputs({ r1 = "", r2, dt2D, dtr, del1, del2 }: Tag["attributes"]): DataTableInputs {
  return {
    first: r1,
    second: isTrue(dt2D) ? (r2 ?? "") : undefined,
    firstDeleted: isTrue(del1),
    secondDeleted: isTrue(del2),
    byRow: isTrue(dtr),
  };
}

const isTrue = (flag: string | undefined): boolean => flag === "1" || flag === "true";
