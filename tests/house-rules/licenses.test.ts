/** What we build on may be used by a shop without asking anybody. Read from the lock file, which names every package. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { root } from "./sources.ts";

interface Locked {
  readonly license?: string;
  readonly dev?: boolean;
}

const PERMISSIVE = new Set(["MIT", "ISC", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "0BSD", "BlueOak-1.0.0"]);
/** Only while developing, never in what is shipped: copyleft by file (MPL-2.0) and data under attribution. */
const WHILE_DEVELOPING = new Set(["MPL-2.0", "CC-BY-4.0"]);
/** Misspelled by its author; its license file is the BSD 3-clause. */
const MISSPELT: Readonly<Record<string, string>> = { "BDS-3-Clause": "BSD-3-Clause" };

/** Microsoft's own terms: to develop and test one's own add-ins. Never shipped; the page takes it from Microsoft. */
const OWN_TERMS = new Set(["node_modules/@microsoft/office-js"]);

const isAllowed = (license: string, allowed: ReadonlySet<string>): boolean =>
  license
    .replace(/[()]/g, "")
    .split(" OR ")
    .some((each) => allowed.has(MISSPELT[each] ?? each));

const { packages } = JSON.parse(readFileSync(`${root}/package-lock.json`, "utf8")) as {
  packages: Record<string, Locked>;
};
const locked = Object.entries(packages).filter(([path]) => path !== "");
const refused = (all: typeof locked, allowed: ReadonlySet<string>): string[] =>
  all
    .filter(([, { license = "none" }]) => !isAllowed(license, allowed))
    .map(([path, { license }]) => `${path}: ${license}`);

describe("licenses of every package", () => {
  it("that is shipped are permissive", () => {
    const shipped = locked.filter(([, { dev }]) => !dev);
    expect(shipped.length).toBeGreaterThan(5);
    expect(shipped.filter(([path]) => OWN_TERMS.has(path))).toEqual([]);
    expect(refused(shipped, PERMISSIVE)).toEqual([]);
  });

  it("that is used while developing are permissive, or bind only their own files", () => {
    const others = locked.filter(([path]) => !OWN_TERMS.has(path));
    expect(refused(others, new Set([...PERMISSIVE, ...WHILE_DEVELOPING]))).toEqual([]);
  });

  it("a choice of licenses needs one that is allowed; anything else is found", () => {
    expect(isAllowed("(BSD-3-Clause OR GPL-2.0)", PERMISSIVE)).toBe(true);
    expect(isAllowed("GPL-3.0", PERMISSIVE)).toBe(false);
    expect(isAllowed("MPL-2.0", PERMISSIVE)).toBe(false);
  });
});
