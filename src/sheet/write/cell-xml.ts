import { CellError, type CellValue } from "../../units/cell.ts";
import { areaName, cellName } from "../formula/address.ts";
import { xmlText } from "../workbook/escapes.ts";
import type { ChangedCell } from "./changed-cells.ts";

const number = (value: number): string => String(value).replace("e", "E");

/** Errors the file format knows; Excel writes newer ones as #VALUE! beside a rich value, which is not ours to make. */
const CLASSIC: ReadonlySet<string> = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"]);

/** A value as its type attribute and the text of its v element. */
export function typed(value: CellValue): { readonly type: string | undefined; readonly text: string } {
  if (typeof value === "number") return { type: undefined, text: number(value) };
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  if (value instanceof CellError) return { type: "e", text: CLASSIC.has(value.code) ? value.code : "#VALUE!" };
  return { type: "str", text: xmlText(value ?? "") };
}

export function valueElement(value: CellValue | undefined, prefix: string): string {
  if (value === undefined || value === null) return "";
  const { text } = typed(value);
  const space = /^\s|\s$/.test(text) ? ' xml:space="preserve"' : "";
  return `<${prefix}v${space}>${text}</${prefix}v>`;
}

/** A cell that was not in the file: where an array now spills. */
export function newCell(changed: ChangedCell, prefix: string): string {
  if (changed.value === undefined || changed.value === null) return "";
  const { type } = typed(changed.value);
  const attribute = type === undefined ? "" : ` t="${type}"`;
  return `<${prefix}c r="${cellName(changed.row, changed.column)}"${attribute}>${valueElement(changed.value, prefix)}</${prefix}c>`;
}

/**
 * The cell's XML with another value: its name, style and other attributes, its formula's text and anything unknown stay
 * as they are; the type, the value and, for a resized spill, the formula's ref change.
 */
export function replacedCell(xml: string, changed: ChangedCell): string {
  const openEnd = tagEnd(xml);
  const open = xml.slice(0, openEnd).replace(/\s*\/?>$/, "");
  const prefix = /^<([\w.-]+:)?c\b/.exec(open)?.[1] ?? "";
  const selfClosing = xml.slice(0, openEnd).endsWith("/>");
  const inner = selfClosing ? "" : xml.slice(openEnd, xml.lastIndexOf("</"));
  const { value } = changed;
  const type = value === undefined || value === null ? undefined : typed(value).type;
  // vm points at rich data that belongs to the old value.
  const bare = open.replace(/\s(?:t|vm)\s*=\s*(?:"[^"]*"|'[^']*')/g, "");
  const tag = type === undefined ? bare : `${bare} t="${type}"`;
  const element = (name: string): RegExp => elementPattern(prefix, name);
  const formula = element("f").exec(inner)?.[0] ?? "";
  const rest = inner.replace(element("f"), "").replace(element("v"), "").replace(element("is"), "");
  const content = resized(formula, changed) + valueElement(value, prefix) + rest;
  return content === "" ? `${tag}/>` : `${tag}>${content}</${prefix}c>`;
}

const patterns = new Map<string, RegExp>();

/** An element of the cell with everything in it. */
function elementPattern(prefix: string, name: string): RegExp {
  const key = prefix + name;
  let pattern = patterns.get(key);
  if (!pattern) {
    pattern = new RegExp(`<${key}(?:\\s[^>]*)?(?:/>|>[\\s\\S]*?</${key}\\s*>)`);
    patterns.set(key, pattern);
  }
  return pattern;
}

const resized = (formula: string, changed: ChangedCell): string =>
  changed.ref ? formula.replace(/\sref\s*=\s*(?:"[^"]*"|'[^']*')/, ` ref="${areaName(changed.ref)}"`) : formula;

/** End of the opening tag; an attribute value may hold ">". */
function tagEnd(xml: string): number {
  let quote = "";
  for (let i = 0; i < xml.length; i++) {
    const char = xml.charAt(i);
    if (quote) {
      if (char === quote) quote = "";
    } else if (char === '"' || char === "'") quote = char;
    else if (char === ">") return i + 1;
  }
  return xml.length;
}
