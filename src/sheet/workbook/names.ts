/** Namespace of SpreadsheetML, transitional (ECMA-376 part 4). Strict files are refused. */
export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const STRICT_MAIN = "http://purl.oclc.org/ooxml/spreadsheetml/main";
export const RELATIONSHIP_ID = "r:id";
