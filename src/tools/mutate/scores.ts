/** What a report of mutation testing says about one topic: how many changes were noticed, and those that were not. */
import { belongs, isSampled, type Judged } from "./sampled-lines.ts";

interface Point {
  readonly line: number;
  readonly column: number;
}
interface Mutant {
  readonly status: string;
  readonly replacement?: string | undefined;
  readonly location: { readonly start: Point; readonly end: Point };
}
interface MutationReport {
  readonly files: Readonly<Record<string, { readonly source: string; readonly mutants: readonly Mutant[] }>>;
}

export interface TopicScore {
  readonly noticed: number;
  readonly survived: number;
  /** Of those that survived: a test need not notice them, as the page of survivors says of each. */
  readonly explained: number;
}

export interface Change {
  /** File and line. */
  readonly at: string;
  readonly was: string;
  readonly replacement: string;
}

/** A change that no test noticed. */
export interface Survivor extends Change {
  /** Why no test need notice it; undefined where nobody has said. */
  readonly why: string | undefined;
}

const NOTICED = new Set(["Killed", "Timeout"]);
const SURVIVED = new Set(["Survived", "NoCoverage"]);

/**
 * Changes that make no program, or run once, count for nothing, nor do those that a report remembers from a run over a
 * larger share of the lines.
 */
export function judged(
  part: Judged,
  { files }: MutationReport,
  why: (change: Change) => string | undefined,
): { score: TopicScore; survivors: Survivor[] } {
  let noticed = 0;
  const survivors: Survivor[] = [];
  for (const [file, { source, mutants }] of Object.entries(files)) {
    if (!belongs(file, part)) continue;
    const lines = source.split("\n");
    const now = mutants.filter(({ location: { start } }) => isSampled(file, start.line, part.share));
    noticed += now.filter(({ status }) => NOTICED.has(status)).length;
    for (const { status, location, replacement = "" } of now) {
      if (!SURVIVED.has(status)) continue;
      const { start, end } = location;
      const line = lines[start.line - 1] ?? "";
      const was = line.slice(start.column - 1, start.line === end.line ? end.column - 1 : undefined);
      const change = { at: `${file}:${start.line}`, was, replacement };
      survivors.push({ ...change, why: why(change) });
    }
  }
  const explained = survivors.filter((survivor) => survivor.why !== undefined).length;
  return { score: { noticed, survived: survivors.length, explained }, survivors };
}

export const scoreText = (scores: Readonly<Record<string, TopicScore>>): string =>
  `{\n${Object.entries(scores)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([topic, score]) => `  ${JSON.stringify(topic)}: ${JSON.stringify(score)}`)
    .join(",\n")}\n}\n`;

/** All topics in one sentence, with and without what is explained. */
export function inAll(scores: Readonly<Record<string, TopicScore>>): string {
  const sum = (key: keyof TopicScore) => Object.values(scores).reduce((total, score) => total + score[key], 0);
  const [noticed, survived, explained] = [sum("noticed"), sum("survived"), sum("explained")];
  const share = (of: number) => `${((100 * noticed) / of).toFixed(1)} %`;
  return (
    `${noticed} of ${noticed + survived} changes noticed: ${share(noticed + survived)}; ` +
    `${share(noticed + survived - explained)} of those that are not explained (${explained} are)`
  );
}
