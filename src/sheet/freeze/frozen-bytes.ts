/**
 * A copy of a calculated workbook that holds values only, with one more sheet that says what it is. Everything a formula
 * leaves behind goes too: array marks, the chain of calculation, columns that fill themselves. Look and layout stay.
 */
import { zipSync } from "fflate";
import { readPart } from "../package/zip-part.ts";
import { xmlText } from "../workbook/escapes.ts";
import { readWorkbook } from "../workbook/read-workbook.ts";
import type { Sheet } from "../workbook/sheet.ts";
import type { Workbook } from "../workbook/workbook.ts";
import { addSheet, type Put } from "./add-sheet.ts";

export interface Frozen {
  readonly bytes: Uint8Array;
  /** Cells that held a formula. */
  readonly cells: number;
}

interface FreezeOptions {
  /** The sheet that is added comes before all others and is the one that shows. */
  readonly first?: boolean;
  /** Values that would be untrue of a copy, and what stands in their place. */
  readonly instead?: ReadonlyMap<string, string>;
}

/** `lines` stand on the sheet that is added. Throws FileRefusal on bytes that are no workbook. */
export function frozenBytes(
  calculated: Uint8Array,
  lines: readonly string[],
  { first = false, instead = new Map() }: FreezeOptions = {},
): Frozen {
  const workbook = readWorkbook(calculated);
  const { package: opened } = workbook;
  const parts = new Map(opened.entries.map((entry) => [entry.name, readPart(opened.bytes, entry)]));
  const put = (name: string, text: string) =>
    parts.set(opened.entry(name)?.name ?? name, new TextEncoder().encode(text));
  const main = opened.relationships("").find(({ type }) => type === "officeDocument")?.target ?? "xl/workbook.xml";
  for (const sheet of workbook.sheets) {
    const xml = workbook.sheetText.get(sheet.part);
    if (xml === undefined) continue;
    const values = replaced(valuesOnly(xml, sheet), instead);
    put(sheet.part, first ? values.replace(SELECTED, "") : values);
    for (const { type, target } of opened.relationships(sheet.part))
      if (type === "table") put(target, withoutFilling(opened.text(target) ?? ""));
  }
  dropChain(workbook, main, parts, put);
  addSheet({ opened, main, parts, put, name: freeName(workbook), lines: lines.map(xmlText), first });
  const bytes = zipSync(Object.fromEntries(parts), { level: 6 });
  return { bytes, cells: workbook.sheets.reduce((sum, { formulas }) => sum + formulas.length, 0) };
}

/** Of the sheet that was chosen when the workbook was saved: two of them would be edited together. */
const SELECTED = /\stabSelected\s*=\s*["'](?:1|true)["']/;

/** What a formula answered in words stands in its cell. */
const replaced = (xml: string, instead: ReadonlyMap<string, string>): string =>
  [...instead].reduce((text, [old, now]) => text.replaceAll(`>${xmlText(old)}<`, `>${xmlText(now)}<`), xml);

/** Each cell's formula taken out of its XML, its value left as it is. */
function valuesOnly(xml: string, { layout }: Sheet): string {
  const pieces: string[] = [];
  let at = 0;
  for (let i = 0; i < layout.cellStart.length; i++) {
    const [start, end] = [layout.cellStart.at(i), layout.cellEnd.at(i)];
    const cell = xml.slice(start, end);
    if (!/<(?:[\w.-]+:)?f[\s/>]/.test(cell)) continue;
    pieces.push(xml.slice(at, start), withoutFormula(cell));
    at = end;
  }
  return pieces.join("") + xml.slice(at);
}

const withoutFormula = (cell: string): string =>
  cell
    .replace(/<((?:[\w.-]+:)?f)(?:\s[^>]*)?(?:\/>|>[\s\S]*?<\/\1\s*>)/, "")
    // cm marks a dynamic array, vm a rich value: both belong to the formula.
    .replace(/^<[^>]*>/, (open) => open.replace(/\s(?:cm|vm)\s*=\s*(?:"[^"]*"|'[^']*')/g, ""));

const withoutFilling = (table: string): string =>
  table.replace(
    /<((?:[\w.-]+:)?(?:calculatedColumnFormula|totalsRowFormula))(?:\s[^>]*)?(?:\/>|>[\s\S]*?<\/\1\s*>)/g,
    "",
  );

/** The chain names formula cells; Excel repairs a file whose chain names cells without one. */
function dropChain({ package: opened }: Workbook, main: string, parts: Map<string, Uint8Array>, put: Put): void {
  const chain = opened.relationships(main).find(({ type }) => type === "calcChain");
  const entry = chain && opened.entry(chain.target);
  if (!chain || !entry) return;
  parts.delete(entry.name);
  const relations = relationsOf(main);
  const keep = (text: string, attribute: string, value: string) =>
    text.replace(/<(?:[\w.-]+:)?(?:Relationship|Override)\s[^>]*?\/>/g, (tag) =>
      new RegExp(`\\s${attribute}\\s*=\\s*["']${value.replace(/[.*+?^$()[\]{}|\\]/g, "\\$&")}["']`).test(tag)
        ? ""
        : tag,
    );
  put(relations, keep(opened.text(relations) ?? "", "Id", chain.id));
  put("[Content_Types].xml", keep(opened.text("[Content_Types].xml") ?? "", "PartName", `/${entry.name}`));
}

const relationsOf = (part: string): string => {
  const slash = part.lastIndexOf("/");
  return `${part.slice(0, slash + 1)}_rels/${part.slice(slash + 1)}.rels`;
};

function freeName({ sheets }: Workbook): string {
  const taken = sheets.map(({ name }) => name.toLowerCase());
  for (let number = 1; ; number++) {
    const name = number === 1 ? "Frozen" : `Frozen ${number}`;
    if (!taken.includes(name.toLowerCase())) return name;
  }
}
