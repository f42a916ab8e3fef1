/** Excel itself allows 64 levels of nested functions; parentheses come on top. Beyond this a formula is not read. */
export const DEEPEST_NESTING = 256;

/** Excel lets a person type 8,192 signs; a file writes long names for some functions. Beyond twice that nothing is read. */
export const LONGEST_FORMULA = 16_384;

/** Deepest nesting of parentheses and braces outside strings. */
export function formulaDepth(text: string): number {
  let depth = 0;
  let deepest = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const char = text.charCodeAt(i);
    if (char === 34) quoted = !quoted;
    else if (quoted) continue;
    else if (char === 40 || char === 123) deepest = Math.max(deepest, ++depth);
    else if (char === 41 || char === 125) depth--;
  }
  return deepest;
}
