/** Characters XML cannot hold stand as _xHHHH_ in strings (ECMA-376 part 1, 22.9.2.19 ST_Xstring). */
export const decodeEscapes = (text: string): string =>
  text.includes("_x")
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16)))
    : text;

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to escape
const UNWRITABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)/g;

const hex4 = (char: string): string => char.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");

export function xmlText(text: string): string {
  return text
    .replace(UNWRITABLE, (char) => `_x${hex4(char)}_`)
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll("\r", "_x000D_");
}
