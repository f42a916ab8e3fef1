import { describe, expect, it } from "vitest";
import { linesToMutate } from "../../../src/tools/mutate/sampled-lines.ts";

describe("the lines to mutate", () => {
  it("are whole files, or about the share asked for, always the same", () => {
    expect(linesToMutate("src/calc/flat", 1)).toEqual(["src/calc/flat/*.ts"]);
    const tenth = linesToMutate("src/calc/cutting", 0.1);
    expect(tenth).toEqual(linesToMutate("src/calc/cutting", 0.1));
    expect(tenth[0]).toMatch(/^src\/calc\/cutting\/[a-z-]+\.ts:(\d+)-\1$/);
    const half = linesToMutate("src/calc/cutting", 0.5);
    expect(half.length / tenth.length).toBeGreaterThan(4);
    expect(half.length / tenth.length).toBeLessThan(6);
    expect(half).toEqual(expect.arrayContaining(tenth));
  });
});
