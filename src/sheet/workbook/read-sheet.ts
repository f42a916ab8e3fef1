import { type Area, parseArea } from "../formula/address.ts";
import { parseXml, type Tag } from "../package/xml.ts";
import { type Attributes, CellStore, type CellText, isTrue, type SheetContext } from "./cell-store.ts";
import { MAIN } from "./names.ts";
import { scanCells } from "./scan-cells.ts";
import { Sheet } from "./sheet.ts";

/** Reads one worksheet part: values, formulas, hidden rows, and where every cell stands. */
export function readSheet(index: number, name: string, part: string, xml: string, context: SheetContext): Sheet {
  const sheet = new Sheet(index, name, part);
  if (quickly(sheet, xml, context)) return sheet;
  const again = new Sheet(index, name, part);
  new SheetReader(again, xml, new CellStore(again, context)).read();
  return again;
}

/** The cells by the scanner, what stands around them by the parser; false when this file needs the parser throughout. */
function quickly(sheet: Sheet, xml: string, context: SheetContext): boolean {
  const open = /<sheetData(?:\s[^<>]*)?>/.exec(xml);
  if (!open || open[0].endsWith("/>")) return false;
  const start = open.index + open[0].length;
  const end = scanCells(xml, start, new CellStore(sheet, context), sheet.layout);
  if (end < 0) return false;
  const around = xml.slice(0, start) + xml.slice(end);
  new SheetReader(sheet, around, new CellStore(sheet, context)).read();
  // The tag that was found is the sheet's own only if the parser saw it in the same place.
  const found = sheet.layout.dataOpenEnd === start && sheet.layout.dataEnd === start;
  sheet.layout.dataEnd = end;
  return found;
}

class SheetReader {
  private cell: { attributes: Attributes } | undefined;
  private formula: Attributes | undefined;
  private formulaText = "";
  private valueText: string | undefined;
  private inline: string | undefined;
  private into: "f" | "v" | "t" | undefined;
  private phonetic = 0;
  private filter: Area | undefined;

  constructor(
    private readonly sheet: Sheet,
    private readonly xml: string,
    private readonly store: CellStore,
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
    const { attributes } = tag;
    switch (tag.local) {
      case "sheetData":
        this.sheet.layout.dataOpenEnd = tag.end;
        if (tag.selfClosing) this.sheet.layout.dataEnd = tag.end;
        break;
      case "autoFilter":
        this.filter = parseArea(attributes["ref"] ?? "");
        break;
      case "filterColumn":
        if (this.filter) this.sheet.filtered.push(this.filter);
        this.filter = undefined;
        break;
      case "row":
        this.store.openRow(attributes["r"], isTrue(attributes["hidden"]), this.startOf(tag), tag.end);
        break;
      case "c":
        this.openCell(tag);
        break;
      case "f":
        if (!this.cell) return;
        this.formula = attributes;
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

  private startOf = (tag: Tag): number => this.xml.lastIndexOf("<", tag.end - 1);

  private openCell(tag: Tag): void {
    this.store.openCell(tag.attributes["r"], this.startOf(tag));
    this.cell = tag;
    this.formula = undefined;
    this.formulaText = "";
    this.valueText = undefined;
    this.inline = undefined;
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
      this.store.closeCell(this.cellText(this.cell.attributes), end);
      this.cell = undefined;
    } else if (local === "row") this.sheet.layout.rowEnd.push(end);
    else if (local === "sheetData" && this.sheet.layout.dataEnd < 0) {
      this.sheet.layout.dataEnd = this.xml.lastIndexOf("<", end - 1);
    }
  }

  private cellText({ t, cm, vm }: Attributes): CellText {
    return {
      type: t,
      cellMetadata: cm,
      valueMetadata: vm,
      formula: this.formula ? this.formulaText : undefined,
      formulaAttributes: this.formula ?? {},
      value: this.valueText,
      inline: this.inline,
    };
  }
}
