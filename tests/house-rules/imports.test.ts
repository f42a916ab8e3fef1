import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { codeOnly, filesBelow, importsOf, resolved, root } from "./sources.ts";

/** What each layer may import beside itself. A view (papers, hosts) shows a plan and works nothing out: never calc. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  units: [],
  data: ["units"],
  calc: ["units", "data"],
  bill: ["units", "data", "calc"],
  cells: ["units", "data", "calc", "bill"],
  sheet: ["units"],
  papers: ["units", "data", "bill"],
  job: ["units", "data", "bill", "cells", "sheet"],
  hosts: ["units", "data", "bill", "cells", "sheet", "papers", "job"],
  tools: ["units", "data", "calc", "bill", "cells", "sheet", "papers", "job", "hosts"],
};
/** Topics of calc: a rank uses only itself and those before it, and within a rank never in a circle. */
const TOPICS = [
  ["material", "bend", "flat", "strip", "shear", "jet", "handling", "tolerance"],
  ["cutting"],
  ["time"],
  ["route"],
  ["cost"],
  ["schedule"],
];
/** A file directly in src/calc is shared by all topics and stands below them. */
const rankOf = (topic: string): number =>
  topic.endsWith(".ts") ? 0 : TOPICS.findIndex((rank) => rank.includes(topic));

const files = filesBelow("src");
const edges = files.flatMap(({ path, text }) =>
  importsOf(text)
    .filter((to) => to.startsWith("."))
    .map((to) => ({ from: path, to: resolved(path, to) })),
);
const layerOf = (path: string): string => path.split("/")[1]!;
const topicOf = (path: string): string => path.split("/")[2]!;

describe("imports go one way", () => {
  it("every file of src lies in a layer", () => {
    expect(files.filter(({ path }) => !(layerOf(path) in MAY_IMPORT)).map(({ path }) => path)).toEqual([]);
  });

  it("every layer imports only what it may", () => {
    const upward = edges.filter(
      ({ from, to }) => layerOf(from) !== layerOf(to) && !MAY_IMPORT[layerOf(from)]?.includes(layerOf(to)),
    );
    expect(upward).toEqual([]);
  });

  it("nothing in src imports from tests", () => {
    expect(edges.filter(({ to }) => !to.startsWith("src/"))).toEqual([]);
  });

  const inCalc = edges.filter(({ from, to }) => layerOf(from) === "calc" && layerOf(to) === "calc");

  it("every topic of calc has a place in the order", () => {
    const topics = files.filter(({ path }) => layerOf(path) === "calc").map(({ path }) => topicOf(path));
    expect([...new Set(topics)].filter((topic) => rankOf(topic) < 0)).toEqual([]);
  });

  it("no topic of calc imports a later one", () => {
    expect(inCalc.filter(({ from, to }) => rankOf(topicOf(to)) > rankOf(topicOf(from)))).toEqual([]);
  });

  it("no two topics of calc import each other, directly or through others", () => {
    const crossing = inCalc.filter(({ from, to }) => topicOf(from) !== topicOf(to));
    expect(circles(crossing.map(({ from, to }) => [topicOf(from), topicOf(to)]))).toEqual([]);
  });

  it("no files import each other in a circle, not even for a type", () => {
    expect(circles(edges.map(({ from, to }) => [from, to]))).toEqual([]);
  });

  it("no folders import each other in a circle", () => {
    const folderOf = (path: string) => path.split("/").slice(0, -1).join("/");
    const pairs = edges
      .map(({ from, to }) => [folderOf(from), folderOf(to)] as const)
      .filter(([from, to]) => from !== to);
    expect(circles(pairs)).toEqual([]);
  });
});

const PURE = ["units", "data", "calc", "bill", "cells"];
describe("what the lower layers may touch", () => {
  const pure = files.filter(({ path }) => PURE.includes(layerOf(path)));

  it("no clock, chance, network, file or global in units, data, calc, bill and cells", () => {
    const impure = /\b(?:Date\b|Math\.random|performance\.|process\.|globalThis|console\.|fetch\(|window\.|document\.)/;
    const found = pure.filter(({ text }) => impure.test(codeOnly(text))).map(({ path }) => path);
    expect(found).toEqual([]);
    const builtIns = pure.flatMap(({ path, text }) =>
      importsOf(text).flatMap((to) => (to.startsWith("node:") ? [`${path}: ${to}`] : [])),
    );
    expect(builtIns).toEqual([]);
  });

  it("what is shipped uses no package that only development has", () => {
    const { dependencies, optionalDependencies } = JSON.parse(readFileSync(`${root}/package.json`, "utf8")) as Record<
      "dependencies" | "optionalDependencies",
      Record<string, string>
    >;
    const nameOf = (path: string) => path.split("/", path.startsWith("@") ? 2 : 1).join("/");
    const foreign = files
      .filter(({ path }) => layerOf(path) !== "tools")
      .flatMap(({ path, text }) =>
        importsOf(text)
          .filter((to) => !/^(?:[.#]|node:)/.test(to) && !(nameOf(to) in { ...dependencies, ...optionalDependencies }))
          .map((to) => `${path}: ${to}`),
      );
    expect(foreign).toEqual([]);
  });
});

/** Nodes that lie on a circle of the graph. */
function circles(pairs: readonly (readonly [string, string])[]): string[] {
  const next = new Map<string, Set<string>>();
  for (const [from, to] of pairs) next.set(from, (next.get(from) ?? new Set()).add(to));
  const reaches = (start: string): boolean => {
    const seen = new Set<string>();
    const open = [...(next.get(start) ?? [])];
    while (open.length > 0) {
      const node = open.pop()!;
      if (node === start) return true;
      if (seen.has(node)) continue;
      seen.add(node);
      open.push(...(next.get(node) ?? []));
    }
    return false;
  };
  return [...next.keys()].filter(reaches).sort();
}
