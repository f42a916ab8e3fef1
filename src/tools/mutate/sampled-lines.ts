/** What is mutated of a topic: its files, or always the same share of their lines where all of them would take hours. */
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";

/** The part of src that is judged together. */
export interface Judged {
  readonly topic: string;
  /** Of the lines. */
  readonly share: number;
  /** All topics: what has one of its own is no part of its folder's. */
  readonly topics: readonly string[];
}

/** src/calc/bend/mechanics/root.ts belongs to "calc/bend/mechanics", unless there is a topic "calc/bend/mechanics/root". */
export const belongs = (file: string, { topic, topics }: Omit<Judged, "share">): boolean => {
  const path = file.slice("src/".length, -".ts".length);
  return path === topic || (path.slice(0, path.lastIndexOf("/")) === topic && !topics.includes(path));
};

/** As the mutation tool is told: files of the topic, or single lines of each. */
export function linesToMutate(part: Judged): string[] {
  const path = `src/${part.topic}`;
  const folder = existsSync(path) ? path : path.slice(0, path.lastIndexOf("/"));
  return readdirSync(folder)
    .map((name) => `${folder}/${name}`)
    .filter((file) => file.endsWith(".ts") && belongs(file, part))
    .sort()
    .flatMap((file) => {
      if (part.share >= 1) return [file];
      const lines = readFileSync(file, "utf8").split("\n").length;
      return Array.from({ length: lines }, (_, i) => i + 1)
        .filter((line) => isSampled(file, line, part.share))
        .map((line) => `${file}:${line}-${line}`);
    });
}

/** Whether a line is one of that share. */
export const isSampled = (file: string, line: number, share: number): boolean =>
  share >= 1 || placeOf(`${file}:${line}`) < share;

/** Between 0 and 1, by the name alone. */
const placeOf = (name: string): number => createHash("sha256").update(name).digest().readUInt32BE(0) / 2 ** 32;
