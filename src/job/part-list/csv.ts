/**
 * Reads a CSV file as Excel writes it in any locale: comma, semicolon or tab, quoted fields, a byte-order mark, UTF-8,
 * UTF-16 or the Windows code page, a first line "sep=;". Every field is text: one that begins with = + - or @ is data.
 */

import { wrong } from "../../units/refusal.ts";

export const SEPARATORS = [",", ";", "\t"] as const;

/** The text, and its separator where a first line names it: that line is row 1 of the file for nobody, Excel hides it too. */
export function csvText(bytes: Uint8Array): { readonly text: string; readonly separator: string | undefined } {
  const text = decode(bytes);
  const stated = /^sep=(.)\r?\n/i.exec(text);
  return stated ? { text: text.slice(stated[0].length), separator: stated[1]! } : { text, separator: undefined };
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

/** A quote that never ends would swallow every line behind it: refused. */
export function parseCsv(text: string, separator: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = "";
  let quoted = false;
  let at = 0;
  const endField = () => {
    row.push(field);
    field = "";
  };
  const endRow = () => {
    endField();
    rows.push(row);
    row = [];
  };
  while (at < text.length) {
    const character = text[at]!;
    if (quoted) {
      if (character === '"' && text[at + 1] === '"') {
        field += '"';
        at++;
      } else if (character === '"') quoted = false;
      else field += character;
    } else if (character === '"' && field === "") quoted = true;
    else if (character === separator) endField();
    else if (character === "\n") endRow();
    else if (character === "\r") {
      if (text[at + 1] !== "\n") endRow();
    } else field += character;
    at++;
  }
  if (quoted) throw wrong(`row ${rows.length + 1} of the file`, "a record whose quotes are closed", field.slice(0, 60));
  if (field !== "" || row.length > 0) endRow();
  return rows;
}
