/** A share of the lines of some files, always the same ones: what is mutated where all of them would take hours. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** As the mutation tool is told: every file of the folder, or single lines of each. */
export function linesToMutate(folder: string, share: number): string[] {
  if (share >= 1) return [`${folder}/*.ts`];
  return readdirSync(folder)
    .filter((name) => name.endsWith(".ts"))
    .sort()
    .flatMap((name) => {
      const file = `${folder}/${name}`;
      const lines = readFileSync(join(folder, name), "utf8").split("\n").length;
      return Array.from({ length: lines }, (_, i) => i + 1)
        .filter((line) => isSampled(file, line, share))
        .map((line) => `${file}:${line}-${line}`);
    });
}

/** Whether a line is one of that share. */
export const isSampled = (file: string, line: number, share: number): boolean =>
  share >= 1 || placeOf(`${file}:${line}`) < share;

/** Between 0 and 1, by the name alone. */
const placeOf = (name: string): number => createHash("sha256").update(name).digest().readUInt32BE(0) / 2 ** 32;
