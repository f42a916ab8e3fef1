import { describe, expect, it } from "vitest";
import { switched } from "../../../src/tools/mutate/constants.ts";
import { changed } from "../../../src/tools/mutate/perturb.ts";
import { scoresOf, scoreText } from "../../../src/tools/mutate/scores.ts";

const mutants = (...statuses: string[]) => ({ mutants: statuses.map((status) => ({ status })) });

describe("mutation scores", () => {
  it("count what was noticed and what survived by folder, and nothing else", () => {
    expect(
      scoresOf({
        files: {
          "src/calc/bend/a.ts": mutants("Killed", "Timeout", "Survived", "Ignored", "CompileError"),
          "src/calc/bend/b.ts": mutants("NoCoverage"),
          "src/calc/bend/order/c.ts": mutants("Killed"),
        },
      }),
    ).toEqual({ "calc/bend": { noticed: 2, survived: 2 }, "calc/bend/order": { noticed: 1, survived: 0 } });
  });

  it("are written a topic a line, in order", () => {
    const text = scoreText({ b: { noticed: 1, survived: 0 }, a: { noticed: 2, survived: 3 } });
    expect(text.split("\n")[1]).toBe('  "a": {"noticed":2,"survived":3},');
    expect(JSON.parse(text)).toHaveProperty("b");
  });
});

describe("a switch at every figure", () => {
  it("replaces figures and leaves names, keys and texts alone", () => {
    const { code, constants } = switched('const a1 = { 2: 3, b: x[4] }; const c = "5"; f(6.5);', "src/calc/x.ts", 10);
    expect(code).toBe('const a1 = { 2: $figure(10, 3), b: x[$figure(11, 4)] }; const c = "5"; f($figure(12, 6.5));');
    expect(constants.map(({ value }) => value)).toEqual([3, 4, 6.5]);
    expect(constants[2]!.line).toContain("f(6.5)");
  });

  it("changes facts by one per cent and whole numbers of a calculation by one", () => {
    expect(changed({ file: "src/data/x.ts", value: 36 })).toEqual([36.36, 35.64]);
    expect(changed({ file: "src/calc/x.ts", value: 36 })).toEqual([37, 35]);
    expect(changed({ file: "src/data/x.ts", value: 0 })).toEqual([1, -1]);
  });
});
