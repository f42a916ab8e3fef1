/** One test of a character, by its code. */
export type Test = (code: number) => boolean;

const isDigit: Test = (c) => c >= 48 && c <= 57;
export const isWord: Test = (c) => isDigit(c) || (c >= 65 && c <= 90) || (c >= 97 && c <= 122) || c === 95;
const isSpace: Test = (c) => c === 32 || (c >= 9 && c <= 13);
export const not =
  (test: Test): Test =>
  (c) =>
    !test(c);
/** Classes by the letter behind the backslash. */
export const CLASSES: Readonly<Record<string, Test>> = {
  d: isDigit,
  D: not(isDigit),
  w: isWord,
  W: not(isWord),
  s: isSpace,
  S: not(isSpace),
};
/** Classes inside brackets, [:digit:] and its kin (POSIX). */
export const NAMED: Readonly<Record<string, Test>> = {
  alpha: (c) => (c >= 65 && c <= 90) || (c >= 97 && c <= 122),
  digit: isDigit,
  alnum: (c) => isWord(c) && c !== 95,
  upper: (c) => c >= 65 && c <= 90,
  lower: (c) => c >= 97 && c <= 122,
  space: isSpace,
  punct: (c) => (c >= 33 && c <= 47) || (c >= 58 && c <= 64) || (c >= 91 && c <= 96) || (c >= 123 && c <= 126),
  xdigit: (c) => isDigit(c) || (c >= 65 && c <= 70) || (c >= 97 && c <= 102),
};
/** Control characters by the letter that stands for them. */
export const CONTROLS: Readonly<Record<string, number>> = { t: 9, n: 10, v: 11, f: 12, r: 13, e: 27, 0: 0 };
