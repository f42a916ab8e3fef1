import { MAIN, XML } from "./xml.ts";

const DYNAMIC_ARRAY = "http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray";

/**
 * The one record that cm="1" of a cell points at: a dynamic array formula (MS-XLSX, XLDAPR). The flags say what happens
 * to it when the cell is copied, merged or cleared.
 */
export const metadataXml = (): string =>
  `${XML}<metadata xmlns="${MAIN}" xmlns:xda="${DYNAMIC_ARRAY}">` +
  '<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" ' +
  'pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" ' +
  'cellMeta="1"/></metadataTypes>' +
  '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}">' +
  '<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>' +
  '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>';
