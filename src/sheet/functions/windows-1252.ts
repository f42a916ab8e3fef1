/**
 * Bytes 128 to 159 of the Windows code page 1252, which CHAR and CODE speak (WHATWG encoding standard, index
 * windows-1252); a byte without a sign of its own stands for the control character of the same number. Written out
 * because some builds of Node decode that label as Latin-1.
 */
const FROM_128 =
  "\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f" +
  "\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178";

export const windowsCharacter = (byte: number): string => FROM_128[byte - 128] ?? String.fromCharCode(byte);

/** The byte of a text's first sign; "?" for signs the code page lacks. */
export function windowsByte(text: string): number {
  const found = FROM_128.indexOf(text[0] ?? "?");
  if (found >= 0) return 128 + found;
  const point = text.charCodeAt(0);
  return point < 128 || (point >= 160 && point < 256) ? point : "?".charCodeAt(0);
}
