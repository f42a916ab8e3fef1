/** Writes a workbook model as the bytes of an .xlsx file. The same model gives the same bytes, on every day. */

import { strToU8, zipSync } from "fflate";
import type { CellMatrix } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { metadataXml } from "./metadata-xml.ts";
import type { SheetCell, SheetModel, WorkbookModel } from "./model.ts";
import { placeCells } from "./place.ts";
import { sheetXml } from "./sheet-xml.ts";
import { stylesXml } from "./styles.ts";
import { tableXml } from "./table-xml.ts";
import { escapeXml, MAIN, quoted, RELATIONS, XML } from "./xml.ts";

const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const OFFICE = "application/vnd.openxmlformats-officedocument.spreadsheetml";
/** The zip format knows no earlier day; the file says nothing about when it was made. */
const NO_DATE = new Date(1980, 0, 1);
const CREATED = "2026-01-01T00:00:00Z";

/** What a formula of a sheet answers, or undefined where nothing is calculated yet. */
export type WorkbookAnswers = (sheet: SheetModel, cell: SheetCell) => CellMatrix | undefined;

export function writeWorkbookModel(workbook: WorkbookModel, answers: WorkbookAnswers): Uint8Array {
  const parts: Record<string, string> = {};
  const overrides: [part: string, type: string][] = [
    ["xl/workbook.xml", `${OFFICE}.sheet.main+xml`],
    ["xl/styles.xml", `${OFFICE}.styles+xml`],
    ["xl/metadata.xml", `${OFFICE}.sheetMetadata+xml`],
    ["docProps/core.xml", "application/vnd.openxmlformats-package.core-properties+xml"],
  ];
  let tables = 0;
  workbook.sheets.forEach((sheet, i) => {
    const first = tables;
    const own = sheet.tables ?? [];
    for (const table of own) {
      tables++;
      parts[`xl/tables/table${tables}.xml`] = tableXml(table, tables);
      overrides.push([`xl/tables/table${tables}.xml`, `${OFFICE}.table+xml`]);
    }
    const ids = own.map((_, n) => `rId${n + 1}`);
    const placed = placeCells(sheet, (cell) => answers(sheet, cell));
    const part = `xl/worksheets/sheet${i + 1}.xml`;
    parts[part] = sheetXml(sheet, placed, i === 0, ids);
    overrides.push([part, `${OFFICE}.worksheet+xml`]);
    if (own.length > 0)
      parts[`xl/worksheets/_rels/sheet${i + 1}.xml.rels`] = relations(
        ids.map((id, n) => [id, `${RELATIONS}/table`, `../tables/table${first + n + 1}.xml`]),
      );
  });
  const last = workbook.sheets.length;
  parts["xl/workbook.xml"] = workbookXml(workbook);
  parts["xl/_rels/workbook.xml.rels"] = relations([
    ...workbook.sheets.map(
      (_, i): Relation => [`rId${i + 1}`, `${RELATIONS}/worksheet`, `worksheets/sheet${i + 1}.xml`],
    ),
    [`rId${last + 1}`, `${RELATIONS}/styles`, "styles.xml"],
    [`rId${last + 2}`, `${RELATIONS}/sheetMetadata`, "metadata.xml"],
  ]);
  parts["xl/styles.xml"] = stylesXml();
  parts["xl/metadata.xml"] = metadataXml();
  parts["docProps/core.xml"] = coreXml(workbook.title);
  parts["_rels/.rels"] = relations([
    ["rId1", `${RELATIONS}/officeDocument`, "xl/workbook.xml"],
    ["rId2", `${PACKAGE}/relationships/metadata/core-properties`, "docProps/core.xml"],
  ]);
  return zip({ "[Content_Types].xml": contentTypes(overrides), ...sortedParts(parts) });
}

type Relation = [id: string, type: string, target: string];
const relations = (found: readonly Relation[]): string =>
  `${XML}<Relationships xmlns="${PACKAGE}/relationships">${found
    .map(([id, type, target]) => `<Relationship Id="${id}" Type="${type}" Target="${target}"/>`)
    .join("")}</Relationships>`;

const contentTypes = (overrides: readonly (readonly [string, string])[]): string =>
  `${XML}<Types xmlns="${PACKAGE}/content-types">` +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  '<Default Extension="xml" ContentType="application/xml"/>' +
  overrides.map(([part, type]) => `<Override PartName="/${part}" ContentType="${type}"/>`).join("") +
  "</Types>";

/** No calcPr: a forced calculation where the add-in is missing would turn every answer into an error. */
const workbookXml = ({ sheets }: WorkbookModel): string =>
  `${XML}<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><bookViews><workbookView activeTab="0"/></bookViews><sheets>` +
  sheets.map(({ name }, i) => `<sheet name="${escapeXml(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`).join("") +
  `</sheets>${definedNames(sheets)}</workbook>`;

function definedNames(sheets: readonly SheetModel[]): string {
  const absolute = (area: string): string => area.replace(/[A-Z]+|\d+/g, "$$$&");
  const name = (kind: string, sheet: number, ...areas: readonly string[]): string =>
    `<definedName name="_xlnm.${kind}" localSheetId="${sheet}">${escapeXml(areas.map((area) => `${quoted(itemAt(sheets, sheet).name)}!${absolute(area)}`).join(","))}</definedName>`;
  const found = [
    ...sheets.flatMap(({ print: { area } }, i) => (area ? [name("Print_Area", i, area)] : [])),
    ...sheets.flatMap(({ print: { titleRows, pagesWide = 1 } }, i) =>
      titleRows ? [name("Print_Titles", i, ...(pagesWide > 1 ? ["A:A"] : []), titleRows)] : [],
    ),
  ];
  return found.length > 0 ? `<definedNames>${found.join("")}</definedNames>` : "";
}

const coreXml = (title: string): string =>
  `${XML}<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" ` +
  'xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">' +
  `<dc:title>${escapeXml(title)}</dc:title><dc:creator>Bracket Bill</dc:creator>` +
  `<dcterms:created xsi:type="dcterms:W3CDTF">${CREATED}</dcterms:created></cp:coreProperties>`;

const sortedParts = (parts: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(parts).sort(([a], [b]) => (a < b ? -1 : 1)));

const zip = (parts: Readonly<Record<string, string>>): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])), {
    mtime: NO_DATE,
    level: 9,
  });
