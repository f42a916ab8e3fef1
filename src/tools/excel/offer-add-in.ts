/**
 * Names the add-in inside a workbook (MS-OWEXML, parts xl/webextensions), so that a colleague who opens it without the
 * add-in is offered it instead of #NAME?. On request only: no real Excel could try it here. Part names, content types and
 * schemas are checked by the Open XML SDK; the three extension ids below are memory of files saved by Excel, unverified.
 */
import { zipSync } from "fflate";
import { Package } from "../../sheet/package/package.ts";
import { readPart } from "../../sheet/package/zip-part.ts";

interface OfferedAddIn {
  readonly id: string;
  /** Four parts, as in the XML manifest. */
  readonly version: string;
  /** The id under which the manifest lists the page of the shared runtime. */
  readonly runtime: string;
}

const RELATIONSHIPS = "http://schemas.microsoft.com/office/2011/relationships";
const EXTENSIONS = "http://schemas.microsoft.com/office/webextensions";
const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const FOLDER = "xl/webextensions";
/** Deployed from the admin center, where a shop's people have it from. */
const STORE = "EXCatalog";
/** Zip has no time zone and begins in 1980: the same workbook gives the same bytes. */
const TIME = new Date(1980, 0, 1);

/** The workbook with the parts added; every other part keeps its bytes. Throws on one that names an add-in already. */
export function offerAddIn(bytes: Uint8Array, addIn: OfferedAddIn): Uint8Array {
  const opened = Package.open(bytes);
  if (opened.relationships("").some(({ type }) => type === "webextensiontaskpanes"))
    throw new Error("workbook must be one that names no add-in; got one that does");
  const parts = new Map(opened.entries.map((entry) => [entry.name, readPart(opened.bytes, entry)]));
  const put = (name: string, text: string) => parts.set(name, new TextEncoder().encode(text));
  const within = (name: string, closing: RegExp, made: (prefix: string) => string) => {
    const part = opened.entry(name)?.name ?? name;
    const text = opened.text(part) ?? "";
    const end = closing.exec(text);
    if (!end) throw new Error(`${name} must be a whole part; got one without an end`);
    put(part, text.slice(0, end.index) + made(end[1] ?? "") + text.slice(end.index));
  };
  within(
    "[Content_Types].xml",
    /<\/([\w.-]+:)?Types\s*>/,
    (prefix) =>
      `<${prefix}Override PartName="/${FOLDER}/taskpanes.xml" ContentType="application/vnd.ms-office.webextensiontaskpanes+xml"/>` +
      `<${prefix}Override PartName="/${FOLDER}/webextension1.xml" ContentType="application/vnd.ms-office.webextension+xml"/>`,
  );
  within(
    "_rels/.rels",
    /<\/([\w.-]+:)?Relationships\s*>/,
    (prefix) =>
      `<${prefix}Relationship Id="offeredAddIn" Type="${RELATIONSHIPS}/webextensiontaskpanes" Target="${FOLDER}/taskpanes.xml"/>`,
  );
  put(`${FOLDER}/taskpanes.xml`, TASKPANES);
  put(`${FOLDER}/_rels/taskpanes.xml.rels`, TASKPANES_RELATIONS);
  put(`${FOLDER}/webextension1.xml`, webExtension(addIn));
  return zipSync(Object.fromEntries(parts), { level: 6, mtime: TIME });
}

/** Not visible: the pane opens when somebody asks for it. */
const TASKPANES = `${XML}<wetp:taskpanes xmlns:wetp="${EXTENSIONS}/taskpanes/2010/11"><wetp:taskpane dockstate="right" visibility="0" width="350" row="1"><wetp:webextensionref xmlns:r="${OFFICE}" r:id="rId1"/></wetp:taskpane></wetp:taskpanes>`;

const TASKPANES_RELATIONS = `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${RELATIONSHIPS}/webextension" Target="webextension1.xml"/></Relationships>`;

const webExtension = ({ id, version, runtime }: OfferedAddIn): string =>
  `${XML}<we:webextension xmlns:we="${EXTENSIONS}/webextension/2010/11" id="{${id.toUpperCase()}}">` +
  `<we:reference id="${id}" version="${version}" store="${STORE}" storeType="${STORE}"/>` +
  `<we:alternateReferences/><we:properties/><we:bindings/><we:snapshot xmlns:r="${OFFICE}"/><we:extLst>` +
  extension("D87F86FE-615C-45B5-9D79-34F1136793EB", "<we:containsCustomFunctions/>") +
  extension("0858819E-0033-43BF-8937-05EC82904868", `<we:backgroundApp state="1" runtimeId="${runtime}"/>`) +
  "</we:extLst></we:webextension>";

const extension = (uri: string, content: string): string =>
  `<a:ext xmlns:a="${DRAWING}" uri="{${uri}}">${content}</a:ext>`;
