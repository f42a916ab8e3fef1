/**
 * Reads a CSV file as Excel writes it in any locale: comma, semicolon or tab, quoted fields, a byte-order mark, UTF-8,
 * UTF-16 or the Windows code page, a first line "sep=;". Every field is text: one that begins with = + - or @ is data.
 */

import { itemAt } from "../../units/certain.ts";
import { wrong } from "../../units/refusal.ts";
import { ListSize } from "./list-limits.ts";

export const SEPARATORS = [",", ";", "\t"] as const;

/** The text, and its separator where a first line names it: that line is row 1 of the file for nobody, Excel hides it too. */
export function csvText(bytes: Uint8Array): { readonly text: string; readonly separator: string | undefined } {
  const text = decode(bytes);
  const stated = /^sep=(.)\r?\n/i.exec(text);
  return stated ? { text: text.slice(stated[0].length), separator: itemAt(stated, 1) } : { text, separator: undefined };
}

function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  // Without a mark: the first letters of a heading are plain ones, so that every other byte is 0.
  if (bytes[1] === 0 && bytes[3] === 0 && bytes[0] !== 0) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0 && bytes[2] === 0 && bytes[1] !== 0) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes); // what Excel's plain "CSV" is on most Windows machines
  }
}

/** Rows one by one, so that who reads may stop. A quote that never ends would swallow every line behind it: refused. */
export function* csvRows(text: string, separator: string): Generator<string[]> {
  const size = new ListSize();
  let line = 1;
  let row: string[] = [];
  let field = "";
  const endField = (): void => {
    size.field(field);
    row.push(field);
    field = "";
  };
  for (let at = 0; at < text.length; ) {
    const character = text.charAt(at);
    if (character === '"' && field === "") {
      const quoted = quotedField(text, at + 1, line);
      [field, at] = [quoted.field, quoted.end];
    } else if (character === separator) {
      endField();
      at++;
    } else if (character === "\n" || character === "\r") {
      endField();
      size.line();
      yield row;
      line++;
      row = [];
      at += character === "\r" && text[at + 1] === "\n" ? 2 : 1;
    } else {
      const from = at++;
      while (at < text.length && text[at] !== separator && text[at] !== "\n" && text[at] !== "\r") at++;
      field += text.slice(from, at);
    }
  }
  if (field === "" && row.length === 0) return;
  endField();
  yield row;
}

/** What stands from behind a quote to the one that ends it (a doubled one stands for itself), and where that is passed. */
function quotedField(text: string, from: number, line: number): { readonly field: string; readonly end: number } {
  let field = "";
  for (let at = from; ; ) {
    const end = text.indexOf('"', at);
    if (end < 0)
      throw wrong(`row ${line} of the file`, "a record whose quotes are closed", text.slice(from, from + 60));
    field += text.slice(at, end);
    if (text[end + 1] !== '"') return { field, end: end + 1 };
    field += '"';
    at = end + 2;
  }
}
