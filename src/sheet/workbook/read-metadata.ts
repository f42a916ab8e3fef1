import { parseXml } from "../package/xml.ts";
import { MAIN } from "./names.ts";

/**
 * Which cell-metadata records (0-based) mark dynamic-array formulas: cm="1" in a cell is record 0, which points at a
 * future-metadata block of type XLDAPR with fDynamic (MS-XLSX 2.2.3 and its schema).
 */
export function readDynamicMetadata(text: string | undefined): Set<number> {
  const dynamic = new Set<number>();
  if (text === undefined) return dynamic;
  const types: string[] = [];
  const dynamicBlocks = new Map<string, Set<number>>();
  let future: Set<number> | undefined;
  let block = -1;
  let inCell = false;
  let record = -1;
  parseXml(text, {
    open: ({ local, uri, attributes }) => {
      if (local === "dynamicArrayProperties") {
        if (attributes["fDynamic"] === "1") future?.add(block);
        return;
      }
      if (uri !== MAIN) return;
      if (local === "metadataType") types.push(attributes["name"] ?? "");
      else if (local === "futureMetadata") {
        future = new Set();
        block = -1;
        dynamicBlocks.set(attributes["name"] ?? "", future);
      } else if (local === "cellMetadata") inCell = true;
      else if (local === "bk") {
        if (inCell) record++;
        else block++;
      } else if (local === "rc" && inCell) {
        const type = types[Number(attributes["t"]) - 1] ?? "";
        if (dynamicBlocks.get(type)?.has(Number(attributes["v"]))) dynamic.add(record);
      }
    },
    close: (local, _end, uri) => {
      if (uri !== MAIN) return;
      if (local === "futureMetadata") future = undefined;
      if (local === "cellMetadata") inCell = false;
    },
  });
  return dynamic;
}
