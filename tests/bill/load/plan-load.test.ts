/** What is due first is loaded last; heavy parts at the bottom. Common practice. */
import { describe, expect, it } from "vitest";
import { planLoad, weightOf } from "../../../src/bill/load/plan-load.ts";
import { Rates } from "../../../src/bill/nouns/rates.ts";
import { job, type Line, MONDAY, rates } from "../../cells/example/tables.ts";
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

describe("the order of loading that a job states", () => {
  const of = (Areas: string | null, ...lines: Line[]) =>
    planned(lines, shopOf({ job: job({ Areas }) })).load.map(({ plan: { line } }) => line.part);
  const lines = [
    bracket({ ...deck, Part: "D" }),
    bracket({ ...truss, Part: "T" }),
    bracket({ Part: "R", Area: "Roof", Due: MONDAY + 1 }),
  ];
  it("comes before any date: what is stated first is loaded last, in whatever letters", () => {
    for (const all of [lines, [...lines].reverse()]) {
      expect(of("roof; DECK; Truss", ...all)).toEqual(["T", "D", "R"]);
      expect(of("truss; deck; roof", ...all)).toEqual(["R", "D", "T"]);
    }
  });
  it("leaves areas that it does not name behind all others, the last of them by date", () => {
    for (const all of [lines, [...lines].reverse()]) {
      expect(of("Deck", ...all)).toEqual(["T", "R", "D"]);
      expect(of(null, ...all)).toEqual(["D", "T", "R"]);
    }
  });
  it("goes by the area's name, however heavy, where neither the job nor a date says more, and by content within it", () => {
    const alike = ["Deck", "Tower"].flatMap((Area) =>
      ["a", "b"].map((Part) => bracket({ Area, Part: `${Area} ${Part}`, Width: Area === "Deck" ? 4 : 9 })),
    );
    const order = of(null, ...alike);
    expect(order.map((part) => part.split(" ")[0])).toEqual(["Deck", "Deck", "Tower", "Tower"]);
    expect(of(null, ...[...alike].reverse())).toEqual(order);
    expect(of(null, alike[1]!, alike[3]!, alike[0]!, alike[2]!)).toEqual(order);
  });
});

describe("the weight of a load", () => {
  it("is that of all its pieces: 1.286 lb each of the bracket worked by hand", () => {
    const { load } = planned([bracket(), bracket({ Part: "B", Quantity: 5 })]);
    expect(weightOf(load) / 0.45359237).toBeCloseTo(25 * 1.286, 1);
    const [few, many] = load.map(({ weight }) => weight);
    expect(many! / few!).toBeCloseTo(4, 9);
    expect(weightOf([])).toBe(0);
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
