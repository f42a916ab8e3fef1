/** Mutation testing in numbers: what a report says, topic by topic. */
import type { TopicScore } from "../truth/table.ts";

export interface MutationReport {
  readonly files: Readonly<Record<string, { readonly mutants: readonly { readonly status: string }[] }>>;
}

const NOTICED = new Set(["Killed", "Timeout"]);
const SURVIVED = new Set(["Survived", "NoCoverage"]);

/** src/calc/bend/mechanics/root.ts belongs to "calc/bend/mechanics". Changes that make no program, or run once, count for nothing. */
export function scoresOf({ files }: MutationReport): Record<string, TopicScore> {
  const scores: Record<string, { noticed: number; survived: number }> = {};
  for (const [file, { mutants }] of Object.entries(files)) {
    const topic = file
      .replace(/^src\//, "")
      .split("/")
      .slice(0, -1)
      .join("/");
    scores[topic] ??= { noticed: 0, survived: 0 };
    scores[topic].noticed += mutants.filter(({ status }) => NOTICED.has(status)).length;
    scores[topic].survived += mutants.filter(({ status }) => SURVIVED.has(status)).length;
  }
  return scores;
}

export const scoreText = (scores: Readonly<Record<string, TopicScore>>): string =>
  `{\n${Object.entries(scores)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([topic, score]) => `  ${JSON.stringify(topic)}: ${JSON.stringify(score)}`)
    .join(",\n")}\n}\n`;
