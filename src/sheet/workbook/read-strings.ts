import { parseXml } from "../package/xml.ts";
import { decodeEscapes } from "./escapes.ts";
import { MAIN } from "./names.ts";

/** The shared string table: rich runs joined, phonetic guides left out. */
export function readSharedStrings(text: string | undefined): string[] {
  if (text === undefined) return [];
  const strings: string[] = [];
  let item = "";
  let inText = false;
  let phonetic = 0;
  parseXml(text, {
    open: (tag) => {
      if (tag.uri !== MAIN) return;
      if (tag.local === "si") item = "";
      else if (tag.local === "rPh") phonetic++;
      else if (tag.local === "t") inText = phonetic === 0;
    },
    text: (piece) => {
      if (inText) item += piece;
    },
    close: (local, _end, uri) => {
      if (uri !== MAIN) return;
      if (local === "t") inText = false;
      else if (local === "rPh") phonetic--;
      else if (local === "si") strings.push(decodeEscapes(item));
    },
  });
  return strings;
}
