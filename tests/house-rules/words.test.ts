/** Nothing in the repository names a machine it was written on, or the place packages were fetched from. */
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { filesBelow, root } from "./sources.ts";

/** Put together here, so that this file does not contain them. */
const FORBIDDEN = [
  /(?:^|[\s"'`(=])\/(?:work|tmp|home|root|Users)\//m,
  /[A-Z]:\\Users\\/,
  new RegExp(["registry", "\\.", "npm"].join("")),
  new RegExp(["npm", "mirror"].join("")),
  new RegExp(["arti", "factory"].join(""), "i"),
  new RegExp(["\\.\\.", "/shared/"].join("")),
  new RegExp(["issues", " show"].join("")),
];

function trackedFiles(): string[] {
  if (!existsSync(`${root}/.git`)) return filesBelow("src").map(({ path }) => path); // an unpacked archive
  const listed = execFileSync("git", ["ls-files", "-z", "--cached", "--others", "--exclude-standard"], { cwd: root });
  return listed
    .toString("utf8")
    .split("\0")
    .filter((path) => path !== "" && existsSync(`${root}/${path}`));
}

describe("forbidden words", () => {
  it("stand in no tracked file", () => {
    const found = trackedFiles().flatMap((path) => {
      const bytes = readFileSync(`${root}/${path}`);
      if (bytes.subarray(0, 8000).includes(0)) return []; // not text
      const text = bytes.toString("utf8");
      return FORBIDDEN.filter((word) => word.test(text)).map((word) => `${path}: ${word.source}`);
    });
    expect(found).toEqual([]);
  });

  it("are found where they stand", () => {
    expect(FORBIDDEN[0]!.test(`read "${["", "home", "someone"].join("/")}"`)).toBe(true);
    expect(FORBIDDEN[0]!.test("src/tools/homepage.ts")).toBe(false);
  });
});
