import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { notices } from "../../../src/tools/package/notices.ts";

describe("third-party notices", () => {
  let folder: string;
  const addPackage = (name: string, files: Record<string, string>) => {
    mkdirSync(`${folder}/node_modules/${name}/lib`, { recursive: true });
    for (const [file, text] of Object.entries(files)) writeFileSync(`${folder}/node_modules/${name}/${file}`, text);
  };
  beforeEach(() => {
    folder = mkdtempSync(`${tmpdir()}/notices-`);
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  it("name every bundled package once, with version, license and its text", () => {
    addPackage("plain", {
      "package.json": '{"name":"plain","version":"1.2.3","license":"MIT"}',
      LICENSE: "Do as you like",
    });
    addPackage("@scope/deep", {
      "package.json": '{"name":"@scope/deep","version":"4.0.0","license":"ISC"}',
      "LICENCE.md": "With\r\nregards",
      "NOTICE.txt": "Thanks",
    });
    const below = `${folder}/node_modules`;
    const text = notices([
      `${below}/plain/lib/a.js`,
      `${below}/plain/lib/b.js`,
      `${below}/@scope/deep/lib/c.js`,
      "src/own.ts",
    ]);
    expect(text.match(/plain 1\.2\.3 \(MIT\)/g)).toHaveLength(1);
    expect(text).toContain("Do as you like");
    expect(text).toContain("@scope/deep 4.0.0 (ISC)\n\nWith\nregards\n\nThanks");
    expect(text).not.toContain("own.ts");
  });

  it("stop the build where a package brings no license text", () => {
    addPackage("bare", { "package.json": '{"name":"bare","version":"1.0.0","license":"MIT"}' });
    expect(() => notices([`${folder}/node_modules/bare/lib/a.js`])).toThrow("bare must bring a license text");
  });

  it("of the real bundle quote the packages' own words", () => {
    const own = readFileSync("node_modules/zod/LICENSE", "utf8").trim();
    expect(notices([`${process.cwd()}/node_modules/zod/v4/core/core.js`])).toContain(own);
  });
});
