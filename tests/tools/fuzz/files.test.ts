/** A few damaged files at every test run; `npm run fuzz:files` makes as many as wanted, under limits of time and memory. */
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { BASE_PARTS } from "../../../src/tools/fuzz/base-files.ts";
import { randomFile } from "../../../src/tools/fuzz/random-file.ts";
import { tryFile } from "../../../src/tools/fuzz/try-file.ts";

const SEED = 1;
const FILES = Array.from({ length: 20 }, (_, i) => i);

describe("damaged and hostile files", () => {
  it.each(FILES)("file %i is refused or recalculated, and what is written can be read again", (index) => {
    const { outcome, problem } = tryFile(SEED, index);
    expect(problem, outcome).toBeUndefined();
  });

  it("are the same each time, and different from one another", () => {
    const bytes = FILES.map((index) => Buffer.from(randomFile(SEED, index).bytes).toString("base64"));
    expect(FILES.map((index) => Buffer.from(randomFile(SEED, index).bytes).toString("base64"))).toEqual(bytes);
    expect(new Set(bytes).size).toBe(FILES.length);
  });

  it("come from workbooks and from lists of parts", () => {
    const kinds = Array.from({ length: 60 }, (_, index) => randomFile(SEED, index).kind);
    expect(new Set(kinds)).toEqual(new Set(["workbook", "csv"]));
    const whole = FILES.map((index) => randomFile(SEED, index)).filter(({ kind }) => kind === "workbook");
    const opened = whole.filter(({ bytes }) => {
      try {
        return Object.keys(unzipSync(bytes)).length >= Object.keys(BASE_PARTS).length - 3;
      } catch {
        return false; // cut short or worse
      }
    });
    expect(opened.length).toBeGreaterThan(5);
  });
});
