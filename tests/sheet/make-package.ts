import { strToU8, zipSync } from "fflate";

export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";

export interface PackageParts {
  /** Inner XML of each sheet's worksheet element, or its whole text when it begins with "<?xml" or a prefixed root. */
  readonly sheets: Readonly<Record<string, string>>;
  readonly strings?: string;
  readonly metadata?: string;
  /** Inner XML of workbook, after the sheets: defined names and the like. */
  readonly workbook?: string;
  /** Before the sheets: workbookPr. */
  readonly properties?: string;
  /** Table parts of the first sheet. */
  readonly tables?: readonly string[];
  readonly more?: Readonly<Record<string, string>>;
}

export const zipOf = (files: Readonly<Record<string, string | Uint8Array>>): Uint8Array =>
  zipSync(
    Object.fromEntries(
      Object.entries(files).map(([name, content]) => [
        name,
        [typeof content === "string" ? strToU8(content) : content, { mtime: new Date(2020, 0, 1) }],
      ]),
    ),
  );

const relations = (list: readonly (readonly [type: string, target: string])[], first = 1): string =>
  `<Relationships xmlns="${PACKAGE}">${list.map(([type, target], i) => `<Relationship Id="rId${first + i}" Type="${RELATIONS}/${type}" Target="${target}"/>`).join("")}</Relationships>`;

/** A small workbook as a package: just what the reader needs. */
export function packageOf(parts: PackageParts): Uint8Array {
  const names = Object.keys(parts.sheets);
  const related: [string, string][] = names.map((_, i) => ["worksheet", `worksheets/sheet${i + 1}.xml`]);
  if (parts.strings !== undefined) related.push(["sharedStrings", "sharedStrings.xml"]);
  if (parts.metadata !== undefined) related.push(["sheetMetadata", "metadata.xml"]);
  const files: Record<string, string> = {
    "[Content_Types].xml": '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    "_rels/.rels": relations([["officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}">${parts.properties ?? ""}<sheets>${names.map((name, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`).join("")}</sheets>${parts.workbook ?? ""}</workbook>`,
    "xl/_rels/workbook.xml.rels": relations(related),
    "docProps/app.xml": "<Properties/>",
    ...parts.more,
  };
  names.forEach((name, i) => {
    const xml = parts.sheets[name]!;
    files[`xl/worksheets/sheet${i + 1}.xml`] = xml.startsWith("<?xml")
      ? xml
      : `<worksheet xmlns="${MAIN}">${xml}</worksheet>`;
  });
  if (parts.strings !== undefined) files["xl/sharedStrings.xml"] = `<sst xmlns="${MAIN}">${parts.strings}</sst>`;
  if (parts.metadata !== undefined) files["xl/metadata.xml"] = parts.metadata;
  parts.tables?.forEach((xml, i) => {
    files[`xl/tables/table${i + 1}.xml`] = xml;
  });
  if (parts.tables) {
    files["xl/worksheets/_rels/sheet1.xml.rels"] = relations(
      parts.tables.map((_, i) => ["table", `../tables/table${i + 1}.xml`] as const),
    );
  }
  return zipOf(files);
}

/** Metadata that makes cm="1" a dynamic array, as Excel writes it. */
export const DYNAMIC_METADATA = `<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;
