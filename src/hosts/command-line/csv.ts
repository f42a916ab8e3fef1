/**
 * Reads a CSV file as Excel writes it in any locale: comma, semicolon or tab, quoted fields, a byte-order mark, UTF-8,
 * UTF-16 or the Windows code page, a first line "sep=;". Every field is text: one that begins with = + - or @ is data.
 */

const SEPARATORS = [";", "\t", ","] as const;

/** Records of fields, blank lines kept, so that row numbers are those of the file. */
export function readCsv(bytes: Uint8Array): { readonly rows: string[][]; readonly separator: string } {
  const text = decode(bytes);
  const stated = /^sep=(.)\r?\n/i.exec(text);
  const body = stated ? text.slice(stated[0].length) : text;
  const separator = stated ? stated[1]! : separatorOf(body);
  const rows = parse(body, separator);
  // The line that named the separator is row 1 of the file for nobody: Excel hides it too.
  return { rows, separator };
}

function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes); // what Excel's plain "CSV" is on most Windows machines
  }
}

/** The one that stands most often in the header, outside quotes; lists in cells are quoted there or come later. */
function separatorOf(text: string): string {
  const header = parse(text.slice(0, text.search(/[\r\n]/) + 1 || text.length), "\u0000")[0]?.[0] ?? "";
  const bare = header.replace(/"(?:[^"]|"")*"/g, "");
  const counts = SEPARATORS.map((separator) => bare.split(separator).length - 1);
  return SEPARATORS[counts.indexOf(Math.max(...counts))]!;
}

function parse(text: string, separator: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let field = "";
  let quoted = false;
  let at = 0;
  const endField = () => {
    row.push(field);
    field = "";
  };
  const endRow = () => {
    endField();
    rows.push(row);
    row = [];
  };
  while (at < text.length) {
    const character = text[at]!;
    if (quoted) {
      if (character === '"' && text[at + 1] === '"') {
        field += '"';
        at++;
      } else if (character === '"') quoted = false;
      else field += character;
    } else if (character === '"' && field === "" && separator !== "\u0000") quoted = true;
    else if (character === separator) endField();
    else if (character === "\n") endRow();
    else if (character === "\r") {
      if (text[at + 1] !== "\n") endRow();
    } else field += character;
    at++;
  }
  if (field !== "" || row.length > 0) endRow();
  return rows;
}
