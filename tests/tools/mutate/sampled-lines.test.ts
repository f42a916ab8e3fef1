import { describe, expect, it } from "vitest";
import { linesToMutate } from "../../../src/tools/mutate/sampled-lines.ts";

const lines = (topic: string, share: number, topics: readonly string[] = [topic]) =>
  linesToMutate({ topic, share, topics });

describe("the lines to mutate", () => {
  it("are whole files, or about the share asked for, always the same", () => {
    expect(lines("calc/jet", 1)).toContain("src/calc/jet/feed.ts");
    const tenth = lines("calc/cutting", 0.1);
    expect(tenth).toEqual(lines("calc/cutting", 0.1));
    expect(tenth[0]).toMatch(/^src\/calc\/cutting\/[a-z-]+\.ts:(\d+)-\1$/);
    const half = lines("calc/cutting", 0.5);
    expect(half.length / tenth.length).toBeGreaterThan(4);
    expect(half.length / tenth.length).toBeLessThan(6);
    expect(half).toEqual(expect.arrayContaining(tenth));
  });

  it("leave a file that is a topic of its own to it", () => {
    const topics = ["calc/cutting", "calc/cutting/knapsack"];
    expect(lines("calc/cutting/knapsack", 1, topics)).toEqual(["src/calc/cutting/knapsack.ts"]);
    expect(lines("calc/cutting", 1, topics)).not.toContain("src/calc/cutting/knapsack.ts");
    expect(lines("calc/cutting", 1, topics)).toContain("src/calc/cutting/replay.ts");
  });
});
