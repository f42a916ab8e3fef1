/** The bill of a shop that owns one die: every line understood, few stops, and no view that contradicts another. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../src/cells/catalogue.ts";
import { contradictions, type Views } from "./contradictions.ts";
import { oneDieBill, oneDieBillUnmeasured } from "./one-die-bill.ts";
import type { RandomBill } from "./random-bill.ts";
import { ask, NAMES, type Row } from "./views.ts";

const views = Object.fromEntries(NAMES.map((name) => [name, ask(name, oneDieBill)])) as unknown as Views;
function checksOf(bill: RandomBill): Row[] {
  const checks = ask("BILL.CHECK", bill);
  if (typeof checks === "string") throw new Error(checks);
  return checks;
}
const checks = checksOf(oneDieBill);
const lineOf = (part: string, rows = checks): Row => rows.find(({ Part }) => Part === part)!;
const parts = (status: string): unknown[] => checks.filter(({ Status }) => Status === status).map(({ Part }) => Part);

describe("45 lines in a shop with one die", () => {
  it("are all understood", () => {
    expect(checks.map(({ Part }) => Part)).toEqual(Array.from({ length: 45 }, (_, i) => `A${i + 1}`));
    expect(checks.filter(({ Sentence }) => /must (?:be|have)/.test(String(Sentence)))).toEqual([]);
  });

  it("stop where the die or the brakes cannot do it, and nowhere else: about a dozen", () => {
    // 6061-T6 below its table, 304 and 5052 past the die's face, a flange of 1 in, a hole at 1/4 in, 130 in on beds of 120,
    // 1/4 in over 110 in, 1/2 in plate over 4 t, 120 and 135 degrees over an 85 degree die.
    expect(parts("stop")).toEqual([
      ...["A15", "A16", "A17", "A18", "A30", "A31", "A32", "A33", "A34", "A40", "A41", "A42"],
    ]);
  });

  // Of these, everything that is bent over the 2 in die: angles, channels, Z's and hats of 1/8 in, clips of 1/4, channels of 3/16.
  const ORDINARY = "1 2 3 4 5 6 7 8 9 10 11 12 13 24 25 26 36 37 38 43 44 45".split(" ").map((n) => `A${n}`);
  it("of its ordinary work at most three lines ask for a look, each for a reason an operator would agree with", () => {
    expect(ORDINARY.filter((part) => lineOf(part)["Status"] === "stop")).toEqual([]);
    const asks = ORDINARY.filter((part) => lineOf(part)["Status"] === "check");
    expect(asks.map((part) => [part, lineOf(part)["Sentence"]])).toEqual([
      // Soft aluminum springs back too far for an 85 degree die: pressed on, it comes to its angle.
      ["A12", expect.stringMatching(/die V 2 allows .* it bottoms/)],
      ["A13", expect.stringMatching(/die V 2 allows .* it bottoms/)],
      // Legs of 6 in on a base of 4: they reach 1.4 in past the tip's line, deeper than the throat of 3/4 in.
      ["A37", expect.stringMatching(/at bend 2 flange 1 meets the punch/)],
    ]);
  });

  it("have an order for the deep U over the gooseneck whose throat is stated, and ask where it is not", () => {
    expect(lineOf("A36")).toMatchObject({ Status: "clear", Punch: "Gooseneck" });
    const unmeasured = lineOf("A36", checksOf(oneDieBillUnmeasured));
    expect(unmeasured["Status"]).toBe("check");
    expect(unmeasured["Sentence"]).toMatch(/^No bend order as drawn: .* A punch with a deeper relief may clear it/);
  });

  it("do not fail by a hair on a die block that nobody measured: the hat is told what to measure", () => {
    expect(lineOf("A25")["Status"]).toBe("clear");
    expect(lineOf("A25")["Notes"]).toMatch(/may be [\d.]+ in short, on assumed sizes: measure block width/);
  });

  it("contradict each other nowhere", () => {
    expect(contradictions(views, { lines: 45, hasStock: true })).toEqual([]);
  });
});

describe("a line that is bottomed", () => {
  // The die's faces let the sheet turn 95 degrees: of its springback all but 5 degrees is pressed out (plane geometry).
  const springback = air("SPRINGBACK");
  const pressed = (90 + springback - 95) / springback;
  const between = (inAir: number, onNose: number) => inAir + pressed * (onNose - inAir);

  it("takes of the nose what the faces press out, and says so in every view with one force and method", () => {
    const { Radius, Method, Force } = lineOf("A12");
    expect([Radius, Method]).toEqual([expect.closeTo(between(air("RADIUS"), 0.0625), 9), "bottoming"]);
    // 24 in of 1/8 in 5052-H32 in air, 33 ksi over 2 in: (1 + 4 t / V) 33 L t^2 / V = 1.25 x 33 x 24 x 0.0156 / 2 = 7.73 kips (Lange).
    expect(Number(Force)).toBeCloseTo((5 * 7.734) / 2, 1);
    const blanks = ask("BILL.BLANKS", oneDieBill) as Row[];
    const blank = blanks.find(({ Part }) => Part === "A12")!;
    const onNose = 2 * 0.1875 - (Math.PI / 2) * (0.0625 + 0.42 * 0.125);
    const length = 5 - between(air("DEDUCTION"), onNose);
    expect(lineOf("A12")["Flat length"]).toBeCloseTo(length, 9);
    expect(Object.values(blank).some((cell) => typeof cell === "number" && Math.abs(cell - length) < 1e-9)).toBe(true);
    expect(String(lineOf("A12")["Notes"])).toMatch(/cut one, bend, measure/);
  });
});

function air(name: string): number {
  const { value } = shopFunctions.call(
    `AIR.${name}`,
    ["5052-H32", 0.125, 90, 2, 0.0625].map((cell) => [[cell]]),
  );
  if (typeof value !== "number") throw new Error(JSON.stringify(value));
  return value;
}
