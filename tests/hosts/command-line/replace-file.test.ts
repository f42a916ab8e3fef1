import { spawnSync } from "node:child_process";
import { chmodSync, mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { replaceFile } from "../../../src/hosts/command-line/replace-file.ts";

const folder = () => mkdtempSync(join(tmpdir(), "replace-test-"));
const bytes = (text: string) => new TextEncoder().encode(text);

describe("a file is replaced", () => {
  it("with its mode, and nothing is left beside it", () => {
    const at = folder();
    const file = join(at, "a.xlsx");
    replaceFile(file, bytes("one"));
    chmodSync(file, 0o640);
    replaceFile(file, bytes("two"));
    expect(readFileSync(file, "utf8")).toBe("two");
    expect(statSync(file).mode & 0o777).toBe(0o640);
    expect(readdirSync(at)).toEqual(["a.xlsx"]);
  });

  it("what a killed run left goes, what a living one writes and other files stay", () => {
    const at = folder();
    const dead = spawnSync(process.execPath, ["-e", ""]).pid;
    for (const name of [`a.xlsx.${dead}.tmp`, `a.xlsx.${process.ppid}.tmp`, `b.xlsx.${dead}.tmp`, "a.xlsx.tmp"])
      writeFileSync(join(at, name), "x");
    replaceFile(join(at, "a.xlsx"), bytes("new"));
    expect(readdirSync(at).sort()).toEqual(
      ["a.xlsx", `a.xlsx.${process.ppid}.tmp`, "a.xlsx.tmp", `b.xlsx.${dead}.tmp`].sort(),
    );
  });

  it("a folder that is not there is said, and nothing is made", () => {
    expect(() => replaceFile(join(folder(), "no", "a.xlsx"), bytes("x"))).toThrow(/ENOENT/);
  });
});
