import { describe, expect, it } from "vitest";
import { switched } from "../../../src/tools/mutate/constants.ts";
import { explanationsOf } from "../../../src/tools/mutate/explained.ts";
import { changed } from "../../../src/tools/mutate/perturb.ts";
import { inAll, judged, type Survivor, scoreText } from "../../../src/tools/mutate/scores.ts";
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

const PAGE = `# calc/bend: 1 changes that no test noticed
## Not explained: 0
## 1: What is remembered is only asked for again.
- src/calc/bend/air-estimate.ts:7: \`known && b\` as \`true\`
`;
const topics = ["calc", "calc/bend", "calc/bend/order", "calc/bend/order/press"];
const judgedIn = (topic: string, share = 1) => judged({ topic, share, topics }, report, explanationsOf(PAGE));

describe("mutation scores", () => {
  it("count what was noticed, survived and is explained in one folder or file, and nothing else", () => {
    expect(judgedIn("calc/bend").score).toEqual({ noticed: 3, survived: 2, explained: 1 });
    expect(judgedIn("calc/bend/order/press").score).toEqual({ noticed: 0, survived: 1, explained: 0 });
    expect(judgedIn("calc/bend/order").score).toEqual({ noticed: 0, survived: 0, explained: 0 });
    expect(judgedIn("calc").score).toEqual({ noticed: 0, survived: 0, explained: 0 });
  });

  it("leave out the lines beyond the share", () => {
    const { noticed, survived } = judgedIn("calc/bend", 1e-9).score;
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
  const { survivors } = judgedIn("calc/bend");
  const page = survivorsPage("calc/bend", survivors);

  it("tells what was changed where, the explained apart from the others", () => {
    expect(page).toContain("# calc/bend: 2 changes that no test noticed");
    expect(page).toContain("## Not explained: 1\n\n- src/calc/bend/air-estimate.ts:2: `x + y` as `x - y`");
    expect(page).toMatch(/## 1: What is remembered .*\n\n- src\/calc\/bend\/air-estimate.ts:1: `known && b` as `true`/);
  });

  it("keeps the reason of a change, on whatever line it stands, and of no other", () => {
    const [known, sum] = survivors as [Survivor, Survivor];
    const why = explanationsOf(page);
    expect(why({ ...known, at: "src/calc/bend/air-estimate.ts:44" })).toBe(
      "What is remembered is only asked for again.",
    );
    expect(why(known)).toBeUndefined(); // its one row has spoken
    expect(why(sum)).toBeUndefined();
    expect(explanationsOf(page)({ ...known, replacement: "false" })).toBeUndefined();
    expect(explanationsOf(page)({ ...known, at: "src/calc/bend/air-bend.ts:1" })).toBeUndefined();
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
