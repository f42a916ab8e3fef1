import { typed, valueElement } from "./cell-xml.ts";
import type { ChangedCell } from "./changed-cells.ts";

/** A piece of the sheet's XML to be replaced. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/**
 * The edits that give a formula cell its new value where the cell reads as programs write it, `<c r="B7" s="1"
 * t="str"><f>...</f><v>...</v></c>`, and its type stays or was not named: the value alone is replaced, so that nothing
 * else is copied. False for every other cell, which is then written anew.
 */
export function pushValueEdits(edits: Edit[], xml: string, start: number, end: number, changed: ChangedCell): boolean {
  const { value, ref } = changed;
  if (ref || value === undefined || value === null || !xml.startsWith("</c>", end - 4)) return false;
  const openEnd = xml.indexOf(">", start) + 1;
  if (xml.charCodeAt(openEnd - 2) === SLASH) return false;
  let from = end - 4;
  if (xml.startsWith("</v>", end - 8)) from = xml.lastIndexOf("<v", end - 8);
  if (from < openEnd || !(xml.startsWith("</f>", from - 4) || xml.startsWith("/>", from - 2))) return false;
  const open = xml.slice(start, openEnd);
  const { type } = typed(value);
  const given = /^<c(?:\s(?:r|s)="[^"]*")*(?:\st="(\w+)")?>$/.exec(open);
  if (!given || (given[1] !== undefined && given[1] !== type)) return false;
  if (type !== undefined && given[1] === undefined)
    edits.push({ start: openEnd - 1, end: openEnd - 1, text: ` t="${type}"` });
  edits.push({ start: from, end: end - 4, text: valueElement(value, "") });
  return true;
}

const SLASH = 47;
