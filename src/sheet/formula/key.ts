import { parseCell } from "./address.ts";

/**
 * Two formulas with the same key are the same program: cell references count by their distance from the cell, numbers
 * and strings are taken out as literals. A column of 10,000 filled-down formulas is thus parsed once, even when a
 * constant differs in every row.
 */
interface FormulaKey {
  readonly key: string;
  readonly literals: (number | string)[];
  /** Cells named in the text ("A1:B2" names two): the parser checks that it saw the same. */
  readonly cells: number;
  /** Deepest nesting of parentheses and braces. */
  readonly depth: number;
}

const RUN = /[A-Za-z0-9_.\\?$\u0080-\uffff]+/y;
const NUMBER = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const ERROR = /#(?:[A-Z_/0-9]+[!?]|N\/A|GETTING_DATA)/iy;
const STRING = /"(?:[^"]|"")*"/y;
const QUOTED = /'(?:[^']|'')*'/y;

function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

/** End of a bracketed part: column names of structured references may hold anything, ' escapes. */
function bracketEnd(text: string, at: number): number {
  let depth = 0;
  for (let i = at; i < text.length; i++) {
    const char = text[i];
    if (char === "'") i++;
    else if (char === "[") depth++;
    else if (char === "]" && --depth === 0) return i + 1;
  }
  return text.length;
}

export function formulaKey(text: string, row: number, column: number): FormulaKey {
  const literals: (number | string)[] = [];
  let key = "";
  let cells = 0;
  let depth = 0;
  let deepest = 0;
  let braces = 0;
  let at = 0;
  while (at < text.length) {
    const code = text.charCodeAt(at);
    let piece: string | undefined;
    if (code === 40 || code === 123) {
      if (code === 123) braces++;
      if (++depth > deepest) deepest = depth;
    } else if (code === 41 || code === 125) {
      if (code === 125) braces--;
      depth--;
    } else if (code === 34) {
      piece = matchAt(STRING, text, at);
      if (piece !== undefined && braces === 0) {
        literals.push(piece.slice(1, -1).replaceAll('""', '"'));
        key += '"';
        at += piece.length;
        continue;
      }
    } else if (code === 39) piece = matchAt(QUOTED, text, at);
    else if (code === 91) piece = text.slice(at, bracketEnd(text, at));
    else if (code === 35) piece = matchAt(ERROR, text, at);
    else if (isRunCode(code)) {
      piece = matchAt(RUN, text, at) ?? "";
      const next = text.charCodeAt(at + piece.length);
      const digit = (code >= 48 && code <= 57) || code === 46;
      if (digit) {
        const number = matchAt(NUMBER, text, at);
        const end = at + (number?.length ?? 0);
        const beside = text.charCodeAt(at - 1);
        if (number !== undefined && braces === 0 && beside !== 58 && !/[:!A-Za-z0-9_.$]/.test(text[end] ?? "")) {
          literals.push(Number(number));
          key += "0";
          at = end;
          continue;
        }
      } else if (next !== 40 && next !== 33) {
        const cell = parseCell(piece);
        if (cell) {
          cells++;
          const lockedColumn = code === 36;
          const lockedRow = piece.lastIndexOf("$") > 0;
          key += `${lockedRow ? "$" : "~"}${lockedRow ? cell.row : cell.row - row}${lockedColumn ? "$" : "~"}${lockedColumn ? cell.column : cell.column - column}`;
          at += piece.length;
          continue;
        }
      }
    }
    if (piece === undefined) {
      key += text[at];
      at++;
    } else {
      key += piece;
      at += piece.length;
    }
  }
  return { key, literals, cells, depth: deepest };
}

function isRunCode(code: number): boolean {
  return (
    (code >= 65 && code <= 90) ||
    (code >= 97 && code <= 122) ||
    (code >= 48 && code <= 57) ||
    code === 95 ||
    code === 46 ||
    code === 92 ||
    code === 36 ||
    code >= 128
  );
}
