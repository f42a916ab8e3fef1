import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { catalogueSource } from "../../../src/tools/generate/catalogue.ts";

describe("the generated catalogue", () => {
  let root = "";
  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), "catalogue-"));
    mkdirSync(join(root, "src/cells/functions"), { recursive: true });
    for (const name of ["flat-length.ts", "a-b-c.ts", "notes.md"])
      writeFileSync(join(root, "src/cells/functions", name), "");
  });
  afterEach(() => rmSync(root, { recursive: true, force: true }));

  it("has one import and one entry for each file, in alphabetical order", () => {
    const text = catalogueSource(root);
    expect(text).toContain(
      'import { aBC } from "./functions/a-b-c.ts";\nimport { flatLength } from "./functions/flat-length.ts";',
    );
    expect(text).toContain("= [\n  aBC,\n  flatLength,\n];");
    expect(text).not.toContain("notes");
    expect(text.split("\n")[0]).toMatch(/^\/\/ Generated/);
  });
});
