/**
 * What the Open XML SDK does not see in a workbook we write ourselves: cells given twice or out of order, a table header
 * that differs from its cell, a formula that does not parse, a spill whose range and cells disagree, a cell that points
 * at metadata that is not there. Reads the XML on its own, not with the reader of the headless host.
 */
import { parse, tokenize } from "@borgar/fx/xlsx";
import { strFromU8, unzipSync } from "fflate";
import { type ReadCell, type ReadSheet, readSheetXml, readTableXml } from "./lint-parts.ts";

export function lintWorkbook(bytes: Uint8Array): string[] {
  const parts = Object.fromEntries(Object.entries(unzipSync(bytes)).map(([name, data]) => [name, strFromU8(data)]));
  return lintParts(parts);
}

/** Parts by name, as text. */
export function lintParts(parts: Readonly<Record<string, string>>): string[] {
  const records = [...(parts["xl/metadata.xml"] ?? "").matchAll(/<cellMetadata[^>]*count="(\d+)"/g)];
  const known = Number(records[0]?.[1] ?? 0);
  return Object.entries(parts)
    .filter(([name]) => /^xl\/worksheets\/[^/]+\.xml$/.test(name))
    .flatMap(([name, xml]) => {
      const sheet = readSheetXml(xml);
      return [
        ...orderProblems(sheet),
        ...sheet.cells.flatMap((cell) => [...formulaProblems(cell), ...metadataProblems(cell, known)]),
        ...spillProblems(sheet),
        ...tableProblems(name, sheet, parts),
      ].map((problem) => `${name}: ${problem}`);
    });
}

function orderProblems({ rows, cells }: ReadSheet): string[] {
  const found: string[] = [];
  rows.forEach((row, i) => {
    if (i > 0 && row <= rows[i - 1]!) found.push(`row ${row} stands after row ${rows[i - 1]}`);
  });
  cells.forEach((cell, i) => {
    const before = cells[i - 1];
    if (cell.row !== cell.inRow) found.push(`${cell.name} stands in row ${cell.inRow}`);
    if (before?.row === cell.row && cell.column <= before.column)
      found.push(
        cell.column === before.column ? `${cell.name} is given twice` : `${cell.name} stands after ${before.name}`,
      );
  });
  return found;
}

function formulaProblems({ name, formula }: ReadCell): string[] {
  if (formula === undefined) return [];
  try {
    parse(tokenize(formula));
    return [];
  } catch (problem) {
    return [`${name} has a formula that does not parse: ${(problem as Error).message}`];
  }
}

function metadataProblems({ name, metadata, ref }: ReadCell, known: number): string[] {
  if (ref !== undefined && metadata === undefined) return [`${name} is an array formula without cm`];
  if (metadata === undefined || (metadata >= 1 && metadata <= known)) return [];
  return [`${name} points at metadata record ${metadata} of ${known}`];
}

/** Every cell of a spill's range is there, has no formula of its own and lies in no other spill. */
function spillProblems({ cells }: ReadSheet): string[] {
  const byName = new Map(cells.map((cell) => [`${cell.row} ${cell.column}`, cell]));
  const owned = new Map<string, string>();
  return cells.flatMap((anchor) => {
    const { ref } = anchor;
    if (!ref) return [];
    if (ref.top !== anchor.row || ref.left !== anchor.column)
      return [`${anchor.name} is not the first cell of its range`];
    const found: string[] = [];
    for (let row = ref.top; row <= ref.bottom; row++)
      for (let column = ref.left; column <= ref.right; column++) {
        const key = `${row} ${column}`;
        const child = byName.get(key);
        if (owned.has(key)) found.push(`${anchor.name} and ${owned.get(key)} fill the same cell`);
        owned.set(key, anchor.name);
        if (!child?.hasValue) found.push(`${anchor.name} fills row ${row} column ${column}, which has no value`);
        else if (child !== anchor && child.formula !== undefined)
          found.push(`${anchor.name} fills ${child.name}, which has a formula of its own`);
      }
    return found;
  });
}

function tableProblems(sheetName: string, { cells }: ReadSheet, parts: Readonly<Record<string, string>>): string[] {
  const relations = parts[sheetName.replace(/([^/]+)$/, "_rels/$1.rels")] ?? "";
  const targets = [...relations.matchAll(/Target="\.\.\/(tables\/[^"]+)"/g)].map((match) => `xl/${match[1]}`);
  return targets.flatMap((target) => {
    const table = readTableXml(parts[target] ?? "");
    if (!table) return [`${target} is missing or is no table`];
    const { ref, columns, name } = table;
    if (ref.right - ref.left + 1 !== columns.length) return [`table ${name} has ${columns.length} names for its range`];
    return columns.flatMap((column, i) => {
      const cell = cells.find(({ row, column: at }) => row === ref.top && at === ref.left + i);
      return cell?.text === column ? [] : [`table ${name} calls a column "${column}", its cell says "${cell?.text}"`];
    });
  });
}
