/** Which topics of the arithmetic a cell function rests on, read from the imports of its record. */
import { existsSync, readFileSync } from "node:fs";
import { posix } from "node:path";

/** "calc/bend", "calc/cost" ...: the folders of src/calc that a record imports, itself or through src/cells. */
export function topicsOf(root: string, name: string): string[] {
  const topics = new Set<string>();
  const seen = new Set<string>();
  const open = [`src/cells/functions/${name.toLowerCase().replaceAll(".", "-")}.ts`];
  while (open.length > 0) {
    const file = open.pop()!;
    if (seen.has(file) || !existsSync(`${root}/${file}`)) continue;
    seen.add(file);
    const topic = topicOf(file);
    if (topic) topics.add(topic);
    else if (file.startsWith("src/cells/")) open.push(...importsOf(readFileSync(`${root}/${file}`, "utf8"), file));
  }
  return [...topics].sort();
}

/** src/calc/bend/mechanics/root.ts -> calc/bend/mechanics; files of calc itself belong to no topic. */
function topicOf(file: string): string | undefined {
  const match = /^src\/(calc\/[\w-]+(?:\/[\w-]+)*)\/[\w-]+\.ts$/.exec(file);
  return match?.[1];
}

const importsOf = (text: string, file: string): string[] =>
  [...text.matchAll(/^(?:import|export) (?!type\b)[^;]*? from "(\.[^"]+)"/gms)].map(([, to]) =>
    posix.join(posix.dirname(file), to!),
  );
