/** The one form of every refusal: what it is about, the rule, what was given; then, where it helps, what to do. */
export const GRAMMAR = /^(?<subject>\S.*?) must be (?<rule>\S.*?); got (?<got>\S.*)$/s;

/** No sentence is longer: a text of 255 letters is the most that Excel takes inside a formula, and more is read by nobody. */
export const MOST_LETTERS = 255;
