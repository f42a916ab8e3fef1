import { strFromU8, strToU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { releaseFiles, zip } from "../../../src/hosts/install/archive.ts";

const dist = new Map(
  [
    "functions.js",
    "taskpane.html",
    "assets/icon-16.png",
    "changelog.txt",
    "license.txt",
    "third-party-notices.txt",
    "first-run.xlsx",
    "manifest/bracket-bill.xml",
    "manifest/manifest.json",
    "manifest/color.png",
    "manifest/outline.png",
  ].map((path) => [path, strToU8(path)]),
);

describe("the release archive", () => {
  const release = releaseFiles(dist);

  it("holds what is installed, and all that is served in one folder", () => {
    expect([...release.keys()].sort()).toEqual([
      "CHANGELOG.md",
      "LICENSE",
      "READ-ME-FIRST.txt",
      "THIRD-PARTY-NOTICES.txt",
      "first-run.xlsx",
      "manifest/bracket-bill-app.zip",
      "manifest/bracket-bill.xml",
      ...[...dist.keys()].map((path) => `web/${path}`).sort(),
    ]);
    expect(Object.keys(unzipSync(release.get("manifest/bracket-bill-app.zip")!)).sort()).toEqual([
      "color.png",
      "manifest.json",
      "outline.png",
    ]);
  });

  it("is the same byte for byte, whatever the order of the files and the time of day", () => {
    expect(zip(new Map([...release].reverse()))).toEqual(zip(release));
    const time = zip(release).subarray(10, 14); // time and date of the first entry, by the zip format
    expect([...time]).toEqual([0, 0, 0b00100001, 0]); // midnight on 1 January 1980
    expect(strFromU8(unzipSync(zip(release))["LICENSE"]!)).toBe("license.txt");
  });

  it.each(["third-party-notices.txt", "manifest/manifest.json", "manifest/bracket-bill.xml"])(
    "is not made without %s",
    (missing) => {
      const without = new Map([...dist].filter(([path]) => path !== missing));
      expect(() => releaseFiles(without)).toThrow(`dist must hold ${missing}`);
    },
  );
});
