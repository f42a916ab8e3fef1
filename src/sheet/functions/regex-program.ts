import { keep } from "../evaluate/keep.ts";
import { VALUE } from "../evaluate/value.ts";
import { CLASSES, CONTROLS, isWord, NAMED, not, type Test } from "./character-classes.ts";
import { fail } from "./define.ts";

/** A step of the program that a pattern becomes (Thompson 1968; Cox, "Regular expression matching", 2009). */
export type Step =
  | { readonly kind: "char"; readonly test: Test }
  | { readonly kind: "split"; first: number; second: number }
  | { readonly kind: "jump"; to: number }
  | { readonly kind: "save"; readonly slot: number }
  | { readonly kind: "assert"; readonly holds: (text: string, at: number) => boolean }
  | { readonly kind: "done" };

export interface Program {
  readonly steps: readonly Step[];
  /** Capturing groups, the whole match not counted. */
  readonly groups: number;
}

/** A pattern that repeats itself into more steps than this is not followed. */
const MOST_STEPS = 20_000;

const boundary = (text: string, at: number): boolean =>
  (at > 0 && isWord(text.charCodeAt(at - 1))) !== (at < text.length && isWord(text.charCodeAt(at)));
const atStart = (_text: string, at: number): boolean => at === 0;
const atEnd = (text: string, at: number): boolean =>
  at === text.length || (at === text.length - 1 && text[at] === "\n");

/**
 * Compiles the syntax people use (PCRE2's, as far as it needs no backtracking): characters, classes, groups,
 * alternatives, greedy and lazy repetition, anchors. Backreferences and looking around keep Excel's value; a pattern that
 * is none is #VALUE!.
 */
export function compilePattern(pattern: string, ignoreCase: boolean): Program {
  return new PatternCompiler(pattern, ignoreCase).program();
}

class PatternCompiler {
  private readonly steps: Step[] = [];
  private at = 0;
  private groups = 0;
  private depth = 0;

  constructor(
    private readonly pattern: string,
    private ignoreCase: boolean,
  ) {}

  program(): Program {
    if (this.pattern.startsWith("(?i)")) {
      this.ignoreCase = true;
      this.at = 4;
    }
    this.add({ kind: "save", slot: 0 });
    this.alternatives();
    if (this.at < this.pattern.length) fail(VALUE);
    this.add({ kind: "save", slot: 1 });
    this.add({ kind: "done" });
    return { steps: this.steps, groups: this.groups };
  }

  private add<S extends Step>(step: S): S {
    if (this.steps.length >= MOST_STEPS) keep("unsupported-syntax", `pattern of more than ${MOST_STEPS} steps`);
    this.steps.push(step);
    return step;
  }

  private alternatives(): void {
    if (++this.depth > 200) fail(VALUE);
    const ends: { kind: "jump"; to: number }[] = [];
    for (;;) {
      const start = this.steps.length;
      this.sequence();
      if (this.pattern[this.at] !== "|") break;
      this.at++;
      this.insert(start, { kind: "split", first: start + 1, second: this.steps.length + 2 });
      ends.push(this.add({ kind: "jump", to: 0 }));
    }
    for (const end of ends) end.to = this.steps.length;
    this.depth--;
  }

  /** Puts a step before others; what they point at moves along. */
  private insert(place: number, step: Step): void {
    for (const other of this.steps.slice(place)) {
      if (other.kind === "split") {
        other.first++;
        other.second++;
      } else if (other.kind === "jump") other.to++;
    }
    this.steps.splice(place, 0, step);
    if (this.steps.length > MOST_STEPS) keep("unsupported-syntax", `pattern of more than ${MOST_STEPS} steps`);
  }

  private sequence(): void {
    while (this.at < this.pattern.length && this.pattern[this.at] !== "|" && this.pattern[this.at] !== ")") {
      const start = this.steps.length;
      const [from, groups] = [this.at, this.groups];
      this.atom();
      this.repetition(start, from, groups);
    }
  }

  private repetition(start: number, from: number, groups: number): void {
    const match = /^(?:[*+?]|\{(\d{1,4})(?:(,)(\d{0,4}))?\})/.exec(this.pattern.slice(this.at, this.at + 12));
    if (!match) return;
    this.at += match[0].length;
    const sign = match[0].charAt(0);
    const least = sign === "{" ? Number(match[1]) : sign === "+" ? 1 : 0;
    const most =
      sign === "?"
        ? 1
        : sign !== "{" || (match[2] && !match[3])
          ? Number.POSITIVE_INFINITY
          : Number(match[3] ?? match[1]);
    if (most < least) fail(VALUE);
    const lazy = this.pattern[this.at] === "?";
    if (this.pattern[this.at] === "+") keep("unsupported-syntax", "possessive repetition");
    if (lazy) this.at++;
    if (/^[*+?]/.test(this.pattern.slice(this.at))) fail(VALUE);
    const end = this.at;
    // The atom is compiled again for every copy it needs; the first copy is taken back.
    this.steps.length = start;
    const copy = (): void => {
      this.at = from;
      this.groups = groups;
      this.atom();
    };
    for (let i = 0; i < least; i++) copy();
    if (most === Number.POSITIVE_INFINITY) {
      const loop = this.add({ kind: "split", first: 0, second: 0 });
      const before = this.steps.length;
      copy();
      this.add({ kind: "jump", to: before - 1 });
      this.choose(loop, before, this.steps.length, lazy);
    } else {
      const skips: { split: { first: number; second: number }; inside: number }[] = [];
      for (let i = least; i < most; i++) {
        const split = this.add({ kind: "split", first: 0, second: 0 });
        skips.push({ split, inside: this.steps.length });
        copy();
      }
      for (const { split, inside } of skips) this.choose(split, inside, this.steps.length, lazy);
      if (most === 0) {
        copy();
        this.steps.length = start;
      }
    }
    this.at = end;
  }

  private choose(split: { first: number; second: number }, inside: number, past: number, lazy: boolean): void {
    split.first = lazy ? past : inside;
    split.second = lazy ? inside : past;
  }

  private atom(): void {
    const char = this.pattern.charAt(this.at);
    if (char === "(") this.group();
    else if (char === "[") this.add({ kind: "char", test: this.bracket() });
    else if (char === "\\") this.escape();
    else {
      this.at++;
      if (char === ".") this.add({ kind: "char", test: (c) => c !== 10 });
      else if (char === "^") this.add({ kind: "assert", holds: atStart });
      else if (char === "$") this.add({ kind: "assert", holds: atEnd });
      else if (char === "*" || char === "+" || char === "?") fail(VALUE);
      else this.literal(char.charCodeAt(0));
    }
  }

  private group(): void {
    this.at++;
    let slot: number | undefined;
    if (this.pattern[this.at] === "?") {
      const named = /^\?P?<([A-Za-z_]\w*)>/.exec(this.pattern.slice(this.at, this.at + 64));
      if (named) {
        slot = ++this.groups;
        this.at += named[0].length;
      } else if (this.pattern[this.at + 1] === ":") this.at += 2;
      else keep("unsupported-syntax", "a pattern that looks around or sets options");
    } else slot = ++this.groups;
    if (slot !== undefined) this.add({ kind: "save", slot: slot * 2 });
    this.alternatives();
    if (this.pattern[this.at] !== ")") fail(VALUE);
    this.at++;
    if (slot !== undefined) this.add({ kind: "save", slot: slot * 2 + 1 });
  }

  private escape(): void {
    const char = this.pattern[this.at + 1];
    if (char === undefined) fail(VALUE);
    if (/[1-9kgGKXRpP]/.test(char)) keep("unsupported-syntax", `\\${char} in a pattern`);
    if (char === "b" || char === "B") {
      this.at += 2;
      this.add({ kind: "assert", holds: char === "b" ? boundary : (text, at) => !boundary(text, at) });
    } else if (char === "A" || char === "z" || char === "Z") {
      this.at += 2;
      const holds = char === "A" ? atStart : char === "Z" ? atEnd : (text: string, at: number) => at === text.length;
      this.add({ kind: "assert", holds });
    } else if (CLASSES[char]) {
      this.at += 2;
      this.add({ kind: "char", test: CLASSES[char] });
    } else this.literal(this.escapedCode());
  }

  /** The character behind a backslash. */
  private escapedCode(): number {
    const rest = this.pattern.slice(this.at + 1, this.at + 10);
    const hex = /^x(?:[0-9A-Fa-f]{2}|\{[0-9A-Fa-f]{1,4}\})/.exec(rest);
    if (hex) {
      this.at += 1 + hex[0].length;
      return Number.parseInt(hex[0].replace(/[x{]/g, ""), 16);
    }
    this.at += 2;
    const char = rest[0] ?? fail(VALUE);
    if (CONTROLS[char] !== undefined) return CONTROLS[char];
    return /[A-Za-z0-9]/.test(char) ? fail(VALUE) : char.charCodeAt(0);
  }

  private literal(code: number): void {
    this.add({ kind: "char", test: this.folded((c) => c === code) });
  }

  /** Without case, a test holds for a character when it holds for either form. */
  private folded(test: Test): Test {
    if (!this.ignoreCase) return test;
    return (c) => {
      const char = String.fromCharCode(c);
      return test(c) || test(char.toLowerCase().charCodeAt(0)) || test(char.toUpperCase().charCodeAt(0));
    };
  }

  private bracket(): Test {
    const tests: Test[] = [];
    this.at++;
    const negated = this.pattern[this.at] === "^";
    if (negated) this.at++;
    for (let first = true; first || this.pattern[this.at] !== "]"; first = false) {
      if (this.at >= this.pattern.length) fail(VALUE);
      const named = /^\[:(\^?)([a-z]+):\]/.exec(this.pattern.slice(this.at, this.at + 16));
      if (named) {
        const test = NAMED[named[2] ?? ""] ?? fail(VALUE);
        tests.push(named[1] ? not(test) : test);
        this.at += named[0].length;
        continue;
      }
      const low = this.member();
      if (typeof low !== "number") tests.push(low);
      else if (
        this.pattern[this.at] === "-" &&
        this.pattern[this.at + 1] !== "]" &&
        this.at + 1 < this.pattern.length
      ) {
        this.at++;
        const high = this.member();
        if (typeof high !== "number" || high < low) fail(VALUE);
        tests.push((c) => c >= low && c <= (high as number));
      } else tests.push((c) => c === low);
    }
    this.at++;
    const any = this.folded((c) => tests.some((test) => test(c)));
    return negated ? not(any) : any;
  }

  /** A character or a class inside brackets. */
  private member(): number | Test {
    if (this.pattern[this.at] !== "\\") return this.pattern.charCodeAt(this.at++);
    const char = this.pattern[this.at + 1] ?? fail(VALUE);
    if (CLASSES[char]) {
      this.at += 2;
      return CLASSES[char];
    }
    if (char === "b") {
      this.at += 2;
      return 8;
    }
    return this.escapedCode();
  }
}
