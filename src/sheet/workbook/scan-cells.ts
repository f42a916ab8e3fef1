import type { Attributes, CellStore, CellText } from "./cell-store.ts";
import { isTrue } from "./cell-store.ts";
import type { SheetLayout } from "./sheet.ts";

/**
 * Reads the rows and cells between sheetData's tags when they are written as programs write them: row, c, f, v and is
 * without prefixes, comments or anything unknown. Several times as fast as the parser, which reads everything else.
 * Answers where "</sheetData" stands; -1 at the first sign it does not know, and then the parser reads the sheet anew.
 */
export function scanCells(xml: string, from: number, store: CellStore, layout: SheetLayout): number {
  return new CellScanner(xml, store, layout).rows(from);
}

const [TAB, NEWLINE, SPACE, QUOTE, AMPERSAND, APOSTROPHE, SLASH] = [9, 10, 32, 34, 38, 39, 47];
const [LESS, EQUALS, GREATER, BRACKET] = [60, 61, 62, 93];
const NONE: Attributes = {};

class CellScanner implements CellText {
  type: string | undefined;
  cellMetadata: string | undefined;
  valueMetadata: string | undefined;
  formula: string | undefined;
  formulaAttributes: Attributes = NONE;
  value: string | undefined;
  inline: string | undefined;
  /** Attribute r of a row or cell. */
  private reference: string | undefined;
  private hidden = false;
  private selfClosing = false;
  private text = "";

  constructor(
    private readonly xml: string,
    private readonly store: CellStore,
    private readonly layout: SheetLayout,
  ) {}

  rows(from: number): number {
    const { xml } = this;
    for (let at = from; ; ) {
      at = this.blanks(at);
      if (xml.charCodeAt(at) !== LESS) return -1;
      if (xml.charCodeAt(at + 1) === SLASH) return xml.startsWith("</sheetData", at) ? at : -1;
      if (!xml.startsWith("<row", at)) return -1;
      at = this.row(at);
      if (at < 0) return -1;
    }
  }

  private row(start: number): number {
    const { xml } = this;
    this.reference = undefined;
    this.hidden = false;
    let at = this.attributes(start + 4, "row");
    if (at < 0) return -1;
    this.store.openRow(this.reference, this.hidden, start, at);
    while (!this.selfClosing) {
      at = this.blanks(at);
      if (xml.charCodeAt(at) !== LESS) return -1;
      const next = xml.charCodeAt(at + 1);
      if (next === SLASH) {
        if (!xml.startsWith("</row>", at)) return -1;
        at += 6;
        break;
      }
      if (next !== 99 /* c */) return -1;
      at = this.cell(at);
      if (at < 0) return -1;
      this.selfClosing = false;
    }
    this.layout.rowEnd.push(at);
    return at;
  }

  private cell(start: number): number {
    const { xml } = this;
    this.reference = undefined;
    this.type = undefined;
    this.cellMetadata = undefined;
    this.valueMetadata = undefined;
    this.formula = undefined;
    this.formulaAttributes = NONE;
    this.value = undefined;
    this.inline = undefined;
    let at = this.attributes(start + 2, "c");
    if (at < 0) return -1;
    this.store.openCell(this.reference, start);
    while (!this.selfClosing) {
      at = this.blanks(at);
      if (xml.charCodeAt(at) !== LESS) return -1;
      const next = xml.charCodeAt(at + 1);
      if (next === SLASH) {
        if (!xml.startsWith("</c>", at)) return -1;
        at += 4;
        break;
      }
      if (next === 118 /* v */ && this.value === undefined) {
        at = this.element(at, "v");
        this.value = this.text;
      } else if (next === 102 /* f */ && this.formula === undefined) {
        at = this.element(at, "f");
        this.formula = this.text;
      } else if (next === 105 /* i */ && this.inline === undefined && xml.startsWith("<is><t", at)) {
        at = this.element(at + 4, "t");
        this.inline = this.text;
        if (!xml.startsWith("</is>", at)) return -1;
        at += 5;
      } else return -1;
      if (at < 0) return -1;
      this.selfClosing = false;
    }
    this.store.closeCell(this, at);
    return at;
  }

  /** An element with a name of one letter that holds text only. */
  private element(start: number, name: string): number {
    this.text = "";
    const open = this.attributes(start + 2, name);
    if (open < 0 || this.selfClosing) return open;
    const end = this.textEnd(open);
    return end >= 0 && this.xml.startsWith(`</${name}>`, end) ? end + 4 : -1;
  }

  /** Reads text up to the next tag. */
  private textEnd(from: number): number {
    const { xml } = this;
    let at = from;
    let escaped = false;
    for (let code = xml.charCodeAt(at); code !== LESS; code = xml.charCodeAt(++at)) {
      if (code === AMPERSAND) escaped = true;
      else if (code < SPACE && code !== NEWLINE && code !== TAB) return -1;
      else if (code === GREATER && xml.charCodeAt(at - 1) === BRACKET) return -1;
      // Surrogates and the two signs no XML holds are the parser's to judge; so is the end of the text, which is NaN.
      else if (!(code < 0xd800)) return -1;
    }
    const raw = xml.slice(from, at);
    const text = escaped ? unescaped(raw) : raw;
    if (text === undefined) return -1;
    this.text = text;
    return at;
  }

  /** From behind a tag's name to behind its end. */
  private attributes(from: number, element: string): number {
    const { xml } = this;
    let at = from;
    for (;;) {
      const code = xml.charCodeAt(at);
      if (code === GREATER || code === SLASH) {
        this.selfClosing = code === SLASH;
        if (this.selfClosing && xml.charCodeAt(at + 1) !== GREATER) return -1;
        return at + (this.selfClosing ? 2 : 1);
      }
      if (!isBlank(code)) return -1;
      at = this.blanks(at);
      const start = at;
      if (xml.charCodeAt(at) === GREATER || xml.charCodeAt(at) === SLASH) continue;
      while (isName(xml.charCodeAt(at))) at++;
      const quote = xml.charCodeAt(at + 1);
      if (at === start || xml.charCodeAt(at) !== EQUALS || (quote !== QUOTE && quote !== APOSTROPHE)) return -1;
      const valueStart = at + 2;
      let end = valueStart;
      for (let c = xml.charCodeAt(end); c !== quote; c = xml.charCodeAt(++end))
        if (c === LESS || c === AMPERSAND || !(c >= SPACE && c < 0xd800)) return -1;
      if (!this.attribute(element, start, at, valueStart, end)) return -1;
      at = end + 1;
    }
  }

  /** Keeps what is needed; false for a name that declares a namespace or comes twice. */
  private attribute(element: string, start: number, nameEnd: number, valueStart: number, end: number): boolean {
    const { xml } = this;
    const length = nameEnd - start;
    if (length > 4 && xml.startsWith("xmlns", start)) return false;
    if (element === "f") {
      const name = xml.slice(start, nameEnd);
      if (name in this.formulaAttributes) return false;
      this.formulaAttributes = { ...this.formulaAttributes, [name]: xml.slice(valueStart, end) };
      return true;
    }
    const first = xml.charCodeAt(start);
    if (length === 1 && first === 114 /* r */) {
      if (this.reference !== undefined) return false;
      this.reference = xml.slice(valueStart, end);
    } else if (length === 1 && first === 116 /* t */) {
      if (this.type !== undefined && element === "c") return false;
      this.type = xml.slice(valueStart, end);
    } else if (length === 2 && xml.startsWith("cm", start)) this.cellMetadata = xml.slice(valueStart, end);
    else if (length === 2 && xml.startsWith("vm", start)) this.valueMetadata = xml.slice(valueStart, end);
    else if (length === 6 && xml.startsWith("hidden", start)) this.hidden = isTrue(xml.slice(valueStart, end));
    return true;
  }

  private blanks(from: number): number {
    let at = from;
    while (isBlank(this.xml.charCodeAt(at))) at++;
    return at;
  }
}

const isBlank = (code: number): boolean => code === SPACE || code === NEWLINE || code === TAB || code === 13;

/** Letters, digits and the signs between them in names, as far as programs use them. */
const isName = (code: number): boolean =>
  (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || (code >= 48 && code <= 58) || code === 95 || code === 45;

const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/** Text with its five named signs read; undefined when it has others (the parser knows numbers and what is wrong). */
function unescaped(raw: string): string | undefined {
  let known = true;
  const text = raw.replace(/&([a-z]{2,4};)?/g, (_all, name: string | undefined) => {
    const sign = name && NAMED[name.slice(0, -1)];
    if (sign === undefined || sign === "") known = false;
    return sign ?? "";
  });
  return known ? text : undefined;
}
