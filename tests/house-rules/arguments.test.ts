/**
 * Nobody reads the sixth argument of a call by its place: from six on a function takes one object with named parts. What
 * keeps them is listed with its reason; no other may.
 */
import { type AnyNode, parse } from "acorn";
import { transformSync } from "esbuild";
import { expect, test } from "vitest";
import { filesBelow } from "./sources.ts";

const MOST = 5;

/** Bodies of worksheet functions take what Excel hands over, in Excel's own order. */
const EXCELS_OWN = "src/sheet/functions/";

const POSES = "for every pose of a part: an object each would be thrown away millions of times a bill";
const CUTTING = "inside the search for a cut plan";
const KEPT: Readonly<Record<string, string>> = {
  "src/calc/bend/order/distance.ts pointToLine": POSES,
  "src/calc/bend/order/distance.ts lineToLine": POSES,
  "src/calc/bend/order/distance.ts facing": POSES,
  "src/calc/bend/order/distance.ts arcToLine": POSES,
  "src/calc/bend/order/distance.ts gapTo": POSES,
  "src/calc/bend/order/half.ts constructor": "its fields, made for every set of finished bends on one side",
  "src/calc/bend/order/piece.ts place": POSES,
  "src/calc/bend/order/watch.ts sweep": POSES,
  "src/calc/bend/order/watch.ts scan": POSES,
  "src/calc/cutting/column-generation.ts generateColumns": CUTTING,
  "src/calc/cutting/dive.ts dive": CUTTING,
  "src/calc/cutting/knapsack.ts fill": CUTTING,
  "src/calc/cutting/knapsack.ts addShare": CUTTING,
  "src/calc/cutting/plan-search.ts planRest": CUTTING,
  "src/calc/cutting/replay.ts lookAround": CUTTING,
  "src/calc/cutting/sequential.ts sequentialPlan": CUTTING,
  "src/calc/cutting/strip-table.ts constructor": CUTTING,
  "src/calc/cutting/tight-mix.ts tightMix": CUTTING,
  "src/sheet/graph/pending.ts first": "asked for every range of every formula that is evaluated",
  "src/sheet/workbook/formula-cell.ts constructor": "its fields, made for every formula of a workbook",
  "src/units/working.ts step": "a line of a working, read as one; without a working nothing may be made for it",
};

const isNode = (value: unknown): value is AnyNode => typeof value === "object" && value !== null && "type" in value;

/** Names of the functions below a node that take too many arguments by their place. */
function crowded(node: AnyNode, name: string): string[] {
  const params = "params" in node && Array.isArray(node.params) ? node.params : [];
  const own = "id" in node && node.id?.type === "Identifier" ? node.id.name : name;
  const key = "key" in node && node.key.type === "Identifier" ? node.key.name : own;
  const inside = Object.values(node)
    .flat()
    .filter(isNode)
    .flatMap((each) => crowded(each, key));
  return params.length > MOST ? [own, ...inside] : inside;
}

const crowdedIn = (text: string): string[] => {
  const { code } = transformSync(text, { loader: "ts", target: "es2022" });
  return crowded(parse(code, { ecmaVersion: 2022, sourceType: "module" }), "a function without a name");
};

test("a function with six arguments is found wherever it stands", () => {
  const six = "(a: A, b: B, c: C, d: D, e: E, f = 1)";
  const five = "(a: A, b: B, c: C, d: D, [e, f]: E)";
  expect(
    crowdedIn(`
      export function plain${six}: void {}
      const arrow = ${six}: void => {};
      class Thing { method${six} {} held = ${six} => {}; constructor${six} {} }
      list.map(${six} => ({ deep: ${six} => 0 }));
      function fine${five} {}
    `).sort(),
  ).toEqual(["a function without a name", "arrow", "constructor", "deep", "held", "method", "plain"]);
});

test("functions take at most five arguments by their place, or stand here with the reason", () => {
  const found = filesBelow("src")
    .filter(({ path }) => !path.startsWith(EXCELS_OWN))
    .flatMap(({ path, text }) => crowdedIn(text).map((name) => `${path} ${name}`));
  expect(found.filter((name) => !Object.hasOwn(KEPT, name))).toEqual([]);
  expect(found.length).toBeGreaterThan(0);
});
