import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { RECORDS } from "../../src/cells/catalogue.ts";
import { generatedFiles } from "../../src/tools/generate/files.ts";
import { filesBelow, root } from "./sources.ts";

describe("generated files", () => {
  const generated = generatedFiles(root);

  it.each(Object.keys(generated))("%s is fresh", (file) => {
    expect(readFileSync(`${root}/${file}`, "utf8"), "run npm run generate").toBe(generated[file]);
  });

  it("whatever is named generated is generated and says so on its first line", () => {
    const named = filesBelow("src").filter(({ path }) => path.includes(".generated."));
    expect(named.map(({ path }) => path).filter((path) => !(path in generated))).toEqual([]);
    for (const { path, text } of named) expect(text.split("\n")[0], path).toMatch(/generated/i);
  });

  it("the catalogue holds one record for each file of src/cells/functions", () => {
    expect(RECORDS).toHaveLength(filesBelow("src/cells/functions").length);
  });
});
