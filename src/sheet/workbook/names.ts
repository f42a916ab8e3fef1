/** Namespace of SpreadsheetML, transitional (ECMA-376 part 4), and its strict twin in files (ISO/IEC 29500-1). */
export const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const STRICT_MAIN = "http://purl.oclc.org/ooxml/spreadsheetml/main";
export const RELATIONSHIP_ID = "r:id";
