import { type AstExpression, parse, type Token, tokenize } from "@borgar/fx/xlsx";

/** A formula that cannot be read; the cell keeps its value and the report says why. */
export class SyntaxRefusal {
  constructor(readonly message: string) {}
}

export interface Parsed {
  /** The tree; the value of every number and string literal is its index into `literals`. */
  readonly tree: AstExpression;
  readonly literals: (number | string)[];
  readonly cells: number;
  /** The whole formula stands in parentheses, which Excel takes as a last operation of its own. */
  readonly wrapped: boolean;
}

const PARAMETER = /^\[[A-Za-z_][\w.]*\]$/;

const unquote = (text: string): string => text.slice(1, -1).replaceAll('""', '"');

/**
 * Prepares the token stream for the parser: takes off the `[n]!` before a custom function and the prefixes of newer
 * functions and LET names, folds the forms of a dead reference into #REF!, joins signs to numbers in array constants,
 * and writes an optional parameter of LAMBDA, [y], the way files do: _xlop.y.
 */
function prepare(tokens: readonly Token[]): Omit<Parsed, "tree"> & { tokens: Token[] } {
  const out: Token[] = [];
  const literals: (number | string)[] = [];
  let cells = 0;
  let braces = 0;
  /** Where each open parenthesis stands, and whether LAMBDA opened it. */
  const open: { at: number; lambda: boolean }[] = [];
  let closes: { from: number; to: number } | undefined;
  for (let i = 0, token = tokens[0]; token; token = tokens[++i]) {
    const next = tokens[i + 1];
    if (token.type === "context" || token.type === "context_quote") {
      const after = tokens[i + 2];
      if (next?.value === "!" && after?.type === "error") {
        i += 1;
        continue;
      }
      if (next?.value === "!" && after?.type === "func") {
        if (!/^_xldudf_/i.test(after.value)) after.value = `${token.value}!${after.value}`;
        i += 1;
        continue;
      }
    }
    if (token.type === "operator") {
      if (token.value === "{") braces++;
      if (token.value === "}") braces--;
      if (token.value === "(") {
        const before = tokens[i - 1];
        open.push({ at: i, lambda: before?.type === "func" && /^(?:_xlfn\.)?lambda$/i.test(before.value) });
      }
      if (token.value === ")") closes = { from: open.pop()?.at ?? -1, to: i };
      if (braces > 0 && (token.value === "-" || token.value === "+") && next?.type === "number") {
        out.push({ type: "number", value: token.value + next.value });
        i += 1;
        continue;
      }
    }
    if (braces === 0 && token.type === "number") {
      literals.push(Number(token.value));
      out.push({ type: "number", value: String(literals.length - 1) });
      continue;
    }
    if (braces === 0 && token.type === "string" && !token.unterminated) {
      literals.push(unquote(token.value));
      out.push({ type: "number", value: String(literals.length - 1) });
      continue;
    }
    if (token.type === "func") token.value = token.value.replace(/^_xlfn\./i, "").replace(/^_xlws\./i, "");
    if (token.type === "range_named") token.value = token.value.replace(/^_xl(?:pm|eta)\./i, "");
    if (token.type === "structured" && open.at(-1)?.lambda && next?.value === "," && PARAMETER.test(token.value)) {
      out.push({ type: "range_named", value: `_xlop.${token.value.slice(1, -1)}` });
      continue;
    }
    if (token.type === "range") cells += /[.:]/.test(token.value.replace(/^.*!/, "")) ? 2 : 1;
    const last = out[out.length - 1];
    if (token.type === "range" && last?.type === "error") continue; // #REF!A1
    out.push(token);
  }
  const first = tokens.findIndex(({ type }) => type !== "fx_prefix" && type !== "whitespace");
  const last = tokens.findLastIndex(({ type }) => type !== "whitespace");
  const wrapped = tokens[first]?.value === "(" && closes?.from === first && closes.to === last;
  return { tokens: out, literals, cells, wrapped };
}

export function parseFormula(text: string): Parsed {
  try {
    const prepared = prepare(
      tokenize(text.startsWith("=") ? text : `=${text}`, { withLocation: false, negativeNumbers: false }),
    );
    const { tokens, ...rest } = prepared;
    return { tree: parse(tokens), ...rest };
  } catch (error) {
    if (error instanceof RangeError) throw new SyntaxRefusal("nested too deeply");
    throw new SyntaxRefusal(error instanceof Error ? error.message : String(error));
  }
}
