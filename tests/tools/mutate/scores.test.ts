import { describe, expect, it } from "vitest";
import { switched } from "../../../src/tools/mutate/constants.ts";
import { whyUnnoticed } from "../../../src/tools/mutate/explained.ts";
import { changed } from "../../../src/tools/mutate/perturb.ts";
import { inAll, judged, scoreText } from "../../../src/tools/mutate/scores.ts";
import { survivorsPage } from "../../../src/tools/mutate/survivors-page.ts";

const source = "const a = known && b;\nreturn x + y;";
const at = (line: number, from: number, to: number) => ({
  start: { line, column: from },
  end: { line, column: to },
});
const report = {
  files: {
    "src/calc/bend/air-estimate.ts": {
      source,
      mutants: [
        { status: "Survived", replacement: "true", location: at(1, 11, 21) },
        { status: "NoCoverage", replacement: "x - y", location: at(2, 8, 13) },
        ...["Killed", "Timeout", "Killed", "Ignored", "CompileError"].map((status) => ({
          status,
          replacement: "",
          location: at(2, 8, 13),
        })),
      ],
    },
    "src/calc/bend/order/press.ts": { source, mutants: [{ status: "Survived", location: at(1, 1, 2) }] },
  },
};

describe("mutation scores", () => {
  it("count what was noticed, survived and is explained in one folder, and nothing else", () => {
    expect(judged("calc/bend", report).score).toEqual({ noticed: 3, survived: 2, explained: 1 });
    expect(judged("calc/bend/order", report).score).toEqual({ noticed: 0, survived: 1, explained: 1 });
    expect(judged("calc", report).score).toEqual({ noticed: 0, survived: 0, explained: 0 });
  });

  it("leave out the lines beyond the share", () => {
    const { noticed, survived } = judged("calc/bend", report, 1e-9).score;
    expect([noticed, survived]).toEqual([0, 0]);
  });

  const scores = {
    b: { noticed: 15, survived: 3, explained: 2 },
    a: { noticed: 2, survived: 0, explained: 0 },
  };
  it("are written a topic a line, in order", () => {
    const text = scoreText(scores);
    expect(text.split("\n")[1]).toBe('  "a": {"noticed":2,"survived":0,"explained":0},');
    expect(JSON.parse(text)).toEqual(scores);
  });

  it("are told in all, the explained apart", () => {
    expect(inAll(scores)).toBe("17 of 20 changes noticed: 85.0 %; 94.4 % of those that are not explained (2 are)");
  });
});

describe("the page of survivors", () => {
  it("tells what was changed where, the explained apart from the others", () => {
    const page = survivorsPage("calc/bend", judged("calc/bend", report).survivors);
    expect(page).toContain("# calc/bend: 2 changes that no test noticed");
    expect(page).toContain("## Not explained: 1\n\n- src/calc/bend/air-estimate.ts:2: `x + y` as `x - y`");
    expect(page).toMatch(/## 1: What is remembered .*\n\n- src\/calc\/bend\/air-estimate.ts:1: `known && b` as `true`/);
  });
});

describe("why a change may stay unnoticed", () => {
  const file = "src/calc/bend/mechanics/root.ts";
  it("equality of computed lengths, in the geometry only", () => {
    expect(whyUnnoticed(file, "", "a > 0 && b", "a >= 0 && b")).toMatch(/to the last digit/);
    expect(whyUnnoticed(file, "", "a <= b", "a < b")).toMatch(/to the last digit/);
    expect(whyUnnoticed(file, "", "a > 0", "a < 0")).toBeUndefined();
    expect(whyUnnoticed("src/calc/cost/order.ts", "", "a > 0", "a >= 0")).toBeUndefined();
  });
});

describe("a switch at every figure", () => {
  it("replaces figures and leaves names, keys and texts alone", () => {
    const { code, constants } = switched('const a1 = { 2: 3, b: x[4] }; const c = "5"; f(6.5);', "src/calc/x.ts", 10);
    expect(code).toBe('const a1 = { 2: $figure(10, 3), b: x[$figure(11, 4)] }; const c = "5"; f($figure(12, 6.5));');
    expect(constants.map(({ value }) => value)).toEqual([3, 4, 6.5]);
    expect(constants[2]!.line).toContain("f(6.5)");
  });

  it("changes facts by one percent and whole numbers of a calculation by one", () => {
    expect(changed({ file: "src/data/x.ts", value: 36 })).toEqual([36.36, 35.64]);
    expect(changed({ file: "src/calc/x.ts", value: 36 })).toEqual([37, 35]);
    expect(changed({ file: "src/data/x.ts", value: 0 })).toEqual([1, -1]);
  });
});
