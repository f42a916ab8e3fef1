/** The one form of every refusal: what it is about, the rule, what was given; then, where it helps, what to do. */
export const GRAMMAR = /^(?<subject>\S.*?) must be (?<rule>\S.*?); got (?<got>\S.*)$/s;
