/** Every line by itself, on tools the bill shares; lines that cannot be read stop and harm nobody. */
import { describe, expect, it } from "vitest";
import { setKey } from "../../../src/bill/lines/tools.ts";
import { type Line, NONSENSE, SHOP, withCell } from "../../cells/example/tables.ts";
import { answerOf, bracket, kindsOf, planned, shopOf } from "../shop.ts";

const thin: Line = { ...bracket(), Part: "A", Thickness: 0.12, Flanges: "4; 4", Holes: 0 };
const thick: Line = { ...thin, Part: "B", Thickness: 0.14 };
const sets = (...lines: Line[]) =>
  Object.fromEntries(
    planned(lines, shopOf({ stock: undefined })).lines.map(({ part, plan }) => [part, setKey(plan!.tools!)]),
  );

describe("tools of a bill", () => {
  it("as few sets as will do: lines share one though each alone might take another", () => {
    const both = sets(
      bracket({ Thickness: 0.06, Part: "S", Flanges: "4; 4" }),
      bracket({ Thickness: 0.09, Part: "T", Flanges: "4; 4" }),
    );
    expect(both["S"]).toBe(both["T"]);
  });
  it("the order of the lines changes nothing", () => {
    const lines = [thin, thick, bracket(), bracket({ Part: "C", Thickness: 0.06 }), bracket({ Part: "D", Width: 60 })];
    expect(sets(...[...lines].reverse())).toEqual(sets(...lines));
  });
  it("a set on which a part has no order of its bends gives way to one on which it has", () => {
    // The deep channel closes on a straight punch as drawn from its table; a line that names its tools keeps them.
    const deep = bracket({ Part: "U", Thickness: 0.125, Flanges: "4; 1.5; 4", Holes: 0, Die: "V 1", Punch: "Plain" });
    const [line] = planned([deep]).lines;
    expect(kindsOf(line!)).toContain("bend order: check none on a plain punch");
  });
});

describe("a line that is not understood", () => {
  it("is a stop about the input; the others are as they would be alone", () => {
    const alone = planned([bracket()]);
    const plan = planned([NONSENSE, bracket()]);
    expect(answerOf(plan, "??")).toMatchObject({ status: "stop", isQuoted: false, plan: undefined });
    expect(kindsOf(answerOf(plan, "??"))).toEqual(["input: stop unread"]);
    expect(answerOf(plan, "HB1").findings).toEqual(answerOf(alone, "HB1").findings);
  });
  it("a tool that is in no table makes a line one", () => {
    const plan = planned([bracket({ Die: "V 9" }), bracket({ Part: "good" })]);
    expect(kindsOf(answerOf(plan, "HB1"))).toEqual(["input: stop unread"]);
    expect(answerOf(plan, "HB1").findings[0]!.words).toMatch(/^line 1: die must be a die in the table; got "V 9"/);
    expect(answerOf(plan, "good").status).toBe("clear");
  });
});

describe("the thickness a line is planned at", () => {
  const found = (changed: Line) => answerOf(planned([bracket(changed)]), "HB1");
  it("is the next thicker one throughout, with a check, where Stock does not have its own", () => {
    const thicker = found({ Thickness: 0.2 });
    const same = found({});
    expect(kindsOf(thicker)).toContain("stock: check thicker");
    expect(thicker.plan!.line).toMatchObject({ thickness: 0.25 * 25.4, nominal: expect.closeTo(0.2 * 25.4, 9) });
    expect(thicker.plan!.blank).toEqual(same.plan!.blank);
    expect(thicker.plan!.force).toEqual(same.plan!.force);
    expect(thicker.isQuoted).toBe(true);
  });
  it("is what was measured where the bill says it", () => {
    const measured = found({ "Actual thickness": 0.24 });
    expect(measured.plan!.line.thickness).toBeCloseTo(0.24 * 25.4, 9);
    expect(kindsOf(measured)).not.toContain("stock: check thicker");
  });
  it("not in Stock: a check, and no quote", () => {
    const none = found({ Material: "A572-50", Thickness: 0.375, Flanges: "5", "Bend angles": null });
    expect(kindsOf(none)).toContain("stock: check not there");
    expect(none.isQuoted).toBe(false);
  });
  it("larger than every sheet stops", () => {
    expect(kindsOf(found({ Flanges: "50", "Bend angles": null, Width: 60 }))).toContain("stock: stop larger");
  });
  it("a counted sheet that runs out: a check, and no quote", () => {
    const counted = withCell(SHOP.stock, "Plate 1/4", "Sheets", 1);
    const plan = planned([bracket({ Quantity: 400 }), bracket({ Part: "few" })], shopOf({ stock: counted }));
    expect(kindsOf(answerOf(plan, "HB1"))).toContain("stock: check runs out");
    expect(answerOf(plan, "HB1").isQuoted).toBe(false);
  });
});

describe("a tolerance", () => {
  // One bend: edge 1/32, deduction 0.012, angle 0.75 degrees over the 2 in flange while the 3 in one lies down, 0.0262: 0.069 at worst, 0.042 usually.
  it.each([
    [0.07, []],
    [0.068, ["tolerance: note at risk"]],
    [0.04, ["tolerance: stop will not hold"]],
  ])("of %d in", (Tolerance, found) => {
    const line = answerOf(planned([bracket({ Tolerance })]), "HB1");
    expect(kindsOf(line).filter((kind) => kind.startsWith("tolerance"))).toEqual(found);
  });
  it("is not judged where the shop does not say how well it holds a size: a check that says so", () => {
    const rates = SHOP.rates.filter(([name]) => name !== "Angle spread");
    const line = answerOf(planned([bracket({ Tolerance: 0.05 })], shopOf({ rates })), "HB1");
    expect(kindsOf(line)).toContain("tolerance: check not judged");
  });
});
