/**
 * Patterns with * and ? (a ~ takes the next one literally), without case. A pattern is cut at its stars; every piece is
 * looked for once, from where the last one ended, so that many stars cost no more than a few.
 */
interface Wildcard {
  /** Does the whole text fit? */
  readonly fits: (text: string) => boolean;
  /** Where the pattern begins to fit, at or after `from`; -1 when nowhere. */
  readonly search: (text: string, from: number) => number;
}

/** Signs of one piece; undefined stands for any one sign. */
type Piece = readonly (string | undefined)[];

export function wildcard(pattern: string): Wildcard {
  let last: (string | undefined)[] = [];
  const pieces = [last];
  for (let i = 0; i < pattern.length; i++) {
    const char = pattern.charAt(i);
    const next = pattern[i + 1];
    if (char === "~" && (next === "*" || next === "?" || next === "~")) {
      last.push(next);
      i++;
    } else if (char === "*") {
      last = [];
      pieces.push(last);
    } else last.push(char === "?" ? undefined : small(char));
  }
  const [head = [], ...rest]: Piece[] = pieces;
  const tail = rest.pop();
  return {
    fits: (text) => {
      if (!standsAt(text, head, 0)) return false;
      if (!tail) return text.length === head.length;
      const end = after(text, rest, head.length);
      const start = text.length - tail.length;
      return end >= 0 && start >= end && standsAt(text, tail, start);
    },
    search: (text, from) => {
      const at = find(text, head, from);
      if (at < 0 || !tail) return at;
      // Whatever fits behind a later beginning fits behind the first one too.
      return after(text, [...rest, tail], at + head.length) < 0 ? -1 : at;
    },
  };
}

const small = (char: string): string => {
  const lower = char.toLowerCase();
  return lower.length === 1 ? lower : char;
};

function standsAt(text: string, piece: Piece, at: number): boolean {
  if (at < 0 || at + piece.length > text.length) return false;
  return piece.every((sign, i) => sign === undefined || sign === text[at + i] || sign === small(text.charAt(at + i)));
}

function find(text: string, piece: Piece, from: number): number {
  for (let at = from; at + piece.length <= text.length; at++) if (standsAt(text, piece, at)) return at;
  return -1;
}

/** Where the last of the pieces ends when each is taken as early as can be; -1 when one is missing. */
function after(text: string, pieces: readonly Piece[], from: number): number {
  let at = from;
  for (const piece of pieces) {
    at = find(text, piece, at);
    if (at < 0) return -1;
    at += piece.length;
  }
  return at;
}
