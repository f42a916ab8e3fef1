import type { Table } from "../evaluate/table.ts";
import { parseArea } from "../formula/address.ts";
import { parseXml } from "../package/xml.ts";
import { decodeEscapes } from "./escapes.ts";
import { MAIN } from "./names.ts";

/** A table part: its place, header and totals rows, column names, and whether its filter has a condition set. */
export function readTable(text: string, sheet: number): (Table & { readonly filtered: boolean }) | undefined {
  let table: { ref: string; name: string; headerRows: number; totalsRows: number } | undefined;
  const columns: string[] = [];
  let filtered = false;
  parseXml(text, {
    open: ({ local, uri, attributes }) => {
      // An extension for accessibility has an element "table" of its own, with alternative text.
      if (uri !== MAIN) return;
      if (local === "table") {
        table = {
          ref: attributes["ref"] ?? "",
          name: attributes["displayName"] ?? attributes["name"] ?? "",
          headerRows: Number(attributes["headerRowCount"] ?? 1),
          totalsRows: Number(attributes["totalsRowCount"] ?? 0),
        };
      } else if (local === "filterColumn") filtered = true;
      else if (local === "tableColumn") columns.push(decodeEscapes(attributes["name"] ?? ""));
    },
  });
  const area = table && parseArea(table.ref);
  if (!table || !area) return undefined;
  return {
    ...area,
    name: table.name,
    sheet,
    headerRows: table.headerRows,
    totalsRows: table.totalsRows,
    columns,
    filtered,
  };
}
