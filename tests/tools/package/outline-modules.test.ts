import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { RECORDS } from "../../../src/cells/catalogue.ts";
import { outlineModules } from "../../../src/tools/package/outline-modules.ts";

describe("outlines of long records", () => {
  const modules = outlineModules();

  it("there is one for each long record, in the place of its file", () => {
    expect(modules).toHaveLength(RECORDS.filter(({ long }) => long).length);
    for (const { file } of modules) expect(existsSync(`src/cells/functions/${file}`), file).toBe(true);
  });

  it("export the same name as the record's file", () => {
    for (const { file, source } of modules) {
      const exported = /export const (\w+)/.exec(source("./outlined.ts"))![1]!;
      expect(readFileSync(`src/cells/functions/${file}`, "utf8")).toMatch(
        new RegExp(`export const ${exported} = define(?:Bill|Week)?Function\\(`),
      );
    }
  });
});
