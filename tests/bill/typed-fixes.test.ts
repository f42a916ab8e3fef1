/** Every fix, typed into the workbook and recalculated, reaches the status that the sheet promised. */
import { describe, expect, it } from "vitest";
import { brokenIn, fixesTyped } from "./typed-fixes.ts";

const WANTED = 450;

describe("fixes typed into the workbook", () => {
  it(`of ${WANTED} each reaches the status it promised`, { timeout: 900_000 }, () => {
    const tried = fixesTyped(WANTED);
    expect(tried.length).toBeGreaterThanOrEqual(WANTED);
    expect(brokenIn(tried)).toEqual([]);
    // What page and pane write is what the words say.
    expect(tried.filter(({ sameCells }) => !sameCells)).toEqual([]);
    const kinds = (words: RegExp) => tried.filter(({ fix }) => words.test(fix)).length;
    for (const words of [
      /\bdie /,
      /punch /,
      /Brake /,
      /turn/,
      /deburr/,
      /drill/,
      /waterjet/,
      /trim/,
      /pieces/,
      /thick,/,
      /of this thickness/,
    ])
      expect(kinds(words), String(words)).toBeGreaterThan(0);
  });
});
