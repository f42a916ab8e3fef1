/** What is due first is loaded last; heavy parts at the bottom. Common practice. */
import { describe, expect, it } from "vitest";
import { planLoad } from "../../../src/bill/load/plan-load.ts";
import { Rates } from "../../../src/bill/nouns/rates.ts";
import { type Line, MONDAY, rates } from "../../cells/example/tables.ts";
import { bracket, planned, shopOf } from "../shop.ts";

const order = (...lines: Line[]) => planned(lines).load.map(({ plan: { line } }) => line.part);
const deck = { Area: "Deck", Due: MONDAY + 3 };
const truss = { Area: "Truss", Due: MONDAY + 2 };

describe("the order of loading", () => {
  it.each([
    ["what is due last goes in first", [bracket({ ...truss, Part: "T" }), bracket({ ...deck, Part: "D" })], ["D", "T"]],
    [
      "what has no time goes in before what has",
      [bracket({ ...truss, Part: "T" }), bracket({ Part: "O" })],
      ["O", "T"],
    ],
    [
      "heavy at the bottom within an area",
      [bracket({ ...deck, Part: "light" }), bracket({ ...deck, Part: "heavy", Width: 30 })],
      ["heavy", "light"],
    ],
    [
      "an area goes by what of it is due first",
      [
        bracket({ ...truss, Part: "T" }),
        bracket({ ...deck, Part: "D1" }),
        bracket({ ...deck, Part: "D2", Due: MONDAY + 1, Width: 9 }),
      ],
      ["T", "D2", "D1"],
    ],
  ])("%s", (_, lines, parts) => {
    expect(order(...lines)).toEqual(parts);
    expect(order(...[...lines].reverse())).toEqual(parts);
  });
});

describe("stacks", () => {
  const stacks = (changed: Line, limits = rates({})) => {
    const [first] = planned([bracket(changed)], shopOf({ rates: limits })).load;
    const { perStack, stacks: count, stackWeight, liftPiece, liftStack } = first!;
    return [perStack, count, Math.round(stackWeight / 0.45359237), liftPiece, liftStack];
  };
  it("as many as the pile limit allows, of the ordered pieces only", () => {
    // 4.5292 x 4 x 1/4 in of steel, 0.284 lb/in3: 1.286 lb; 466 to a pile of 600 lb.
    expect(stacks({ Quantity: 1000 })).toEqual([466, 3, 599, "one person", "hoist"]);
    expect(stacks({ Quantity: 20 })).toEqual([466, 1, 26, "one person", "one person"]);
    expect(stacks({ Quantity: 40 })).toEqual([466, 1, 51, "one person", "two people"]);
  });
  it("where no pile limit is stated the hoist's, else one person's", () => {
    const noPile = rates({}).filter(([name]) => name !== "Pile limit");
    expect(stacks({ Quantity: 1000 }, noPile)[0]).toBe(73); // 95 lb
    expect(
      stacks(
        { Quantity: 1000 },
        noPile.filter(([name]) => name !== "Hoist above"),
      )[0],
    ).toBe(34); // 45 lb
  });
  it("a missing limit is asked for", () => {
    expect(() => planLoad([], new Rates("rates", new Map()), [])).toThrow(
      expect.objectContaining({ message: expect.stringMatching(/^rates must be a table with a row "Pile limit", /) }),
    );
  });
});
