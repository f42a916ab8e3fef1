/** Adds a sheet with lines of text to a workbook's parts: the part, its type, its relation, its name in the workbook. */
import { refuse } from "../package/file-refusal.ts";
import type { Package } from "../package/package.ts";
import { MAIN, STRICT_MAIN } from "../workbook/names.ts";

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const STRICT_RELATIONS = "http://purl.oclc.org/ooxml/officeDocument/relationships";

/** Puts a part's text into the package to be. */
export type Put = (name: string, text: string) => void;

interface AddedSheet {
  readonly opened: Package;
  /** The workbook's own part. */
  readonly main: string;
  /** What was put before is read again from these. */
  readonly parts: ReadonlyMap<string, Uint8Array>;
  readonly put: Put;
  readonly name: string;
  /** Escaped already. */
  readonly lines: readonly string[];
  /** Before all others; else behind them. */
  readonly first: boolean;
}

export function addSheet({ opened, main, parts, put, name, lines, first }: AddedSheet): void {
  const slash = main.lastIndexOf("/") + 1;
  const relations = `${main.slice(0, slash)}_rels/${main.slice(slash)}.rels`;
  const text = (part: string): string => new TextDecoder().decode(parts.get(opened.entry(part)?.name ?? part));
  const folder = main.slice(0, slash);
  let number = 1;
  while (opened.entry(`${folder}worksheets/frozen${number}.xml`)) number++;
  const part = `${folder}worksheets/frozen${number}.xml`;
  const id = freeId(text(relations));
  const book = text(main);
  const strict = book.includes(STRICT_MAIN);
  const kinds = strict ? STRICT_RELATIONS : RELATIONS;
  put(part, sheetXml(lines, strict ? STRICT_MAIN : MAIN));
  put(
    relations,
    before(
      text(relations),
      /<\/(?:[\w.-]+:)?Relationships\s*>/,
      (prefix) =>
        `<${prefix}Relationship Id="${id}" Type="${kinds}/worksheet" Target="worksheets/frozen${number}.xml"/>`,
    ),
  );
  put(
    "[Content_Types].xml",
    before(
      text("[Content_Types].xml"),
      /<\/(?:[\w.-]+:)?Types\s*>/,
      (prefix) => `<${prefix}Override PartName="/${part}" ContentType="${TYPE}"/>`,
    ),
  );
  const ids = [...book.matchAll(/\ssheetId\s*=\s*["'](\d+)["']/g)].map((match) => Number(match[1]));
  const made = (prefix: string) =>
    `<${prefix}sheet xmlns:rel="${kinds}" name="${name}" sheetId="${Math.max(0, ...ids) + 1}" rel:id="${id}"/>`;
  put(main, first ? inFront(book, made) : before(book, /<\/(?:[\w.-]+:)?sheets\s*>/, made));
}

/** Names and views count sheets by their place: each moves up by one. */
function inFront(book: string, made: (prefix: string) => string): string {
  const opening = /<([\w.-]+:)?sheets(?:\s[^>]*)?>/.exec(book);
  if (!opening) throw new Error("no sheets in a part of the workbook");
  const at = opening.index + opening[0].length;
  const moved = (text: string): string =>
    text
      .replace(/\slocalSheetId\s*=\s*["'](\d+)["']/g, (_, place: string) => ` localSheetId="${Number(place) + 1}"`)
      .replace(/\s(?:activeTab|firstSheet)\s*=\s*["']\d+["']/g, "");
  return moved(book.slice(0, at)) + made(opening[1] ?? "") + moved(book.slice(at));
}

function freeId(relations: string): string {
  let number = 1;
  while (new RegExp(`["']frozen${number}["']`).test(relations)) number++;
  return `frozen${number}`;
}

/** In front of a closing tag, with the tag's own prefix. */
function before(xml: string, closing: RegExp, made: (prefix: string) => string): string {
  const found = closing.exec(xml);
  if (!found) return refuse("damaged", "package", "one with whole lists of its parts", "one without");
  const prefix = /<\/([\w.-]+:)?/.exec(found[0])?.[1] ?? "";
  return xml.slice(0, found.index) + made(prefix) + xml.slice(found.index);
}

const sheetXml = (lines: readonly string[], namespace: string): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${namespace}"><cols><col min="1" max="1" width="100" customWidth="1"/></cols><sheetData>${lines
    .map(
      (line, i) =>
        `<row r="${i + 1}"><c r="A${i + 1}" t="inlineStr"><is><t xml:space="preserve">${line}</t></is></c></row>`,
    )
    .join("")}</sheetData></worksheet>`;
