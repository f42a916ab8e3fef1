import type { Table } from "../evaluate/table.ts";
import { refuse } from "../package/file-refusal.ts";
import { Package } from "../package/package.ts";
import { parseXml } from "../package/xml.ts";
import { isTrue } from "./cell-store.ts";
import { MAIN, RELATIONSHIP_ID } from "./names.ts";
import { readDynamicMetadata } from "./read-metadata.ts";
import { readRichErrors } from "./read-rich-errors.ts";
import { readSheet } from "./read-sheet.ts";
import { readSharedStrings } from "./read-strings.ts";
import { readTable } from "./read-table.ts";
import { Sheet } from "./sheet.ts";
import type { DefinedName, Iteration, Workbook } from "./workbook.ts";

interface WorkbookPart {
  readonly sheets: { readonly name: string; readonly id: string }[];
  readonly names: DefinedName[];
  date1904: boolean;
  iteration: Iteration | undefined;
}

/** Reads a package into a workbook. Throws FileRefusal with a name for everything it will not read. */
export function readWorkbook(bytes: Uint8Array): Workbook {
  const opened = Package.open(bytes);
  const main = opened.relationships("").find((r) => r.type === "officeDocument")?.target ?? "xl/workbook.xml";
  const text = opened.text(main);
  if (text === undefined) refuse("not-a-workbook", "package", "one with a workbook part", "none");
  const part = readWorkbookPart(text);
  const relations = opened.relationships(main);
  const byType = (type: string) => relations.find((r) => r.type === type && !r.external)?.target;
  const textOf = (name: string | undefined) => (name === undefined ? undefined : opened.text(name));
  const metadata = textOf(byType("sheetMetadata"));
  const context = {
    strings: readSharedStrings(textOf(byType("sharedStrings"))),
    dynamicMetadata: readDynamicMetadata(metadata),
    richErrors: readRichErrors(metadata, textOf(byType("rdRichValue")), textOf(byType("rdRichValueStructure"))),
  };
  const sheetText = new Map<string, string>();
  const tables: Table[] = [];
  const sheets = part.sheets.map(({ name, id }, index) => {
    const relation = relations.find((r) => r.id === id);
    const xml = relation?.type === "worksheet" ? opened.text(relation.target) : undefined;
    if (!relation || xml === undefined) return new Sheet(index, name, "");
    const sheet = readSheet(index, name, relation.target, xml, context);
    sheetText.set(sheet.part, xml);
    for (const { type, target } of opened.relationships(sheet.part)) {
      if (type !== "table") continue;
      const table = readTable(opened.text(target) ?? "<table/>", index);
      if (!table) continue;
      tables.push(table);
      if (table.filtered) sheet.filtered.push(table);
    }
    return sheet;
  });
  const { names, date1904, iteration } = part;
  return { package: opened, sheets, names, tables, date1904, iteration, sheetText };
}

function readWorkbookPart(text: string): WorkbookPart {
  const part: WorkbookPart = { sheets: [], names: [], date1904: false, iteration: undefined };
  let name: Omit<DefinedName, "text"> | undefined;
  let body = "";
  let rootSeen = false;
  parseXml(text, {
    open: ({ local, uri, attributes }) => {
      if (!rootSeen) {
        rootSeen = true;
        if (uri !== MAIN || local !== "workbook") refuse("not-a-workbook", "main part", "a workbook", local);
      }
      if (uri !== MAIN) return;
      if (local === "sheet")
        part.sheets.push({ name: attributes["name"] ?? "", id: attributes[RELATIONSHIP_ID] ?? idOf(attributes) });
      else if (local === "workbookPr") part.date1904 = isTrue(attributes["date1904"]);
      else if (local === "calcPr") part.iteration = iterationOf(attributes);
      else if (local === "definedName") {
        const scope = attributes["localSheetId"];
        const macro = [attributes["function"], attributes["vbProcedure"], attributes["xlm"]].some(
          (flag) => flag === "1",
        );
        name = { name: attributes["name"] ?? "", scope: scope === undefined ? undefined : Number(scope), macro };
        body = "";
      }
    },
    text: (piece) => {
      if (name) body += piece;
    },
    close: (local, _end, uri) => {
      if (local !== "definedName" || uri !== MAIN || !name) return;
      part.names.push({ ...name, text: body.trim() });
      name = undefined;
    },
  });
  return part;
}

type Attributes = Readonly<Record<string, string | undefined>>;

/** calcPr with the defaults of the standard (ECMA-376 part 1, 18.2.2); Excel offers at most 32767 rounds. */
function iterationOf({ iterate, iterateCount = "100", iterateDelta = "0.001" }: Attributes): Iteration | undefined {
  const [count, delta] = [Number(iterateCount), Number(iterateDelta)];
  return isTrue(iterate) && count >= 1 && delta >= 0 ? { count: Math.min(count, 32_767), delta } : undefined;
}

/** The relationship id under whatever prefix the file binds to its namespace. */
const idOf = (attributes: Attributes): string =>
  Object.entries(attributes).find(([key]) => key.endsWith(":id"))?.[1] ?? "";
