import { spawnSync } from "node:child_process";
import {
  chmodSync,
  lstatSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { replaceFile } from "../../../src/hosts/command-line/replace-file.ts";
import type { FileRefusal } from "../../../src/sheet/package/file-refusal.ts";

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

  it("a link stays a link, and the file behind it changes", () => {
    const at = folder();
    writeFileSync(join(at, "real.xlsx"), "old");
    symlinkSync("real.xlsx", join(at, "link.xlsx"));
    replaceFile(join(at, "link.xlsx"), bytes("new"));
    expect(lstatSync(join(at, "link.xlsx")).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(at, "real.xlsx"), "utf8")).toBe("new");
  });

  it("a device, a pipe, a folder, a link to nowhere and a read-only file are refused", () => {
    const at = folder();
    spawnSync("mkfifo", [join(at, "pipe")]);
    symlinkSync("nowhere", join(at, "link"));
    writeFileSync(join(at, "locked"), "old", { mode: 0o444 });
    const said = ["/dev/null", join(at, "pipe"), at, join(at, "link"), join(at, "locked")].map((path) => {
      try {
        replaceFile(path, bytes("new"));
        return "replaced";
      } catch (refused) {
        return (refused as FileRefusal).message.slice(path.length);
      }
    });
    expect(said).toEqual([
      " must be a file; got a device",
      " must be a file; got a pipe",
      " must be a file; got a folder",
      " must be a file or a link to one; got a link that leads nowhere",
      " must be a file that may be written; got a read-only one; allow writing or give another name",
    ]);
    expect(readFileSync(join(at, "locked"), "utf8")).toBe("old");
    expect(readdirSync(at).sort()).toEqual(["link", "locked", "pipe"]);
  });

  it("a folder that is not there is said, and nothing is made", () => {
    const at = folder();
    const path = join(at, "no", "a.xlsx");
    expect(() => replaceFile(path, bytes("x"))).toThrow(
      expect.objectContaining({
        message: `${path} must be in a folder that exists; got none there; make the folder first`,
      }),
    );
    expect(readdirSync(at)).toEqual([]);
  });
});
