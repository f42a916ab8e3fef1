/** The few pieces of XML text that every part needs. */
import { columnLetters } from "../../sheet/formula/address.ts";
import { missing } from "../../units/certain.ts";

export const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
export const escapeXml = (text: string): string => text.replace(/[&<>"]/g, (found) => ENTITIES[found] ?? missing());

/** 1 -> "A", 27 -> "AA". */
export const columnName = (column: number): string => columnLetters(column - 1);

export const cellName = (row: number, column: number): string => `${columnName(column)}${row}`;

export const areaName = (top: number, left: number, bottom: number, right: number): string =>
  top === bottom && left === right ? cellName(top, left) : `${cellName(top, left)}:${cellName(bottom, right)}`;

/** A sheet's name in front of a reference. */
export const quoted = (sheet: string): string => (/^\w+$/.test(sheet) ? sheet : `'${sheet.replaceAll("'", "''")}'`);
