import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { filesBelow, root } from "./sources.ts";

/** Folders of tests that are not a mirror: published answers, recorded results, these rules. */
const OWN = ["tests/reference/", "tests/recorded/", "tests/house-rules/"];
const folderOf = (path: string): string => path.split("/").slice(0, -1).join("/");
const tests = filesBelow("tests").filter(({ path }) => !OWN.some((folder) => path.startsWith(folder)));

describe("tests mirror src", () => {
  it("every folder of tests is a folder of src", () => {
    const folders = [...new Set(tests.map(({ path }) => folderOf(path)))];
    expect(folders.filter((folder) => !existsSync(`${root}/${folder.replace(/^tests/, "src")}`))).toEqual([]);
  });

  it("every topic of calc, and every layer, has tests", () => {
    const tested = tests.filter(({ path }) => path.endsWith(".test.ts")).map(({ path }) => `${folderOf(path)}/`);
    const wanted = new Set(
      filesBelow("src").map(({ path }) => {
        const [, layer, topic] = path.split("/");
        return layer === "calc" && !topic!.endsWith(".ts") ? `tests/calc/${topic}/` : `tests/${layer}/`;
      }),
    );
    expect([...wanted].filter((folder) => !tested.some((path) => path.startsWith(folder)))).toEqual([]);
  });
});
