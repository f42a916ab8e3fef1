/** A finish that no operation does is not in the price, and is said (trade practice: the color alone orders no coat). */
import { describe, expect, it } from "vitest";
import { sharedCauses } from "../../../src/bill/causes.ts";
import { fixSays } from "../../../src/bill/fix-says.ts";
import { problemsSay } from "../../../src/bill/says.ts";
import { type Line, SHOP } from "../../cells/example/tables.ts";
import { answerOf, bracket, planned, shopOf } from "../shop.ts";

const CLEAR: Line = { Material: "A1011 CS", Thickness: "11 ga", Holes: 0, "Hole distance": null };
const answer = (line: Line, shop = shopOf()) => answerOf(planned([bracket({ ...CLEAR, ...line })], shop), "HB1");
const ofFinish = (line: Line, shop = shopOf()) => answer(line, shop).findings.filter(({ about }) => about === "finish");
const without = (station: string) => shopOf({ stations: SHOP.stations.filter(([name]) => name !== station) });

describe("a finish", () => {
  it.each(["powder black", "RAL 9005", "zinc plated", "galvanized"])("%s without an operation that coats", (Finish) =>
    expect(problemsSay(ofFinish({ Finish }), "in")).toEqual([
      `Finish "${Finish}" is not priced: no operation coats it.`,
    ]),
  );
  it.each([
    { Finish: "powder black", Operations: "Coating" },
    { Finish: "powder black", Operations: "Deburr; coating" },
    { Finish: "mill finish" },
    { Finish: "none" },
    { Finish: "galvanized", Material: "A653 CS", Thickness: "16 ga" },
    { Finish: null, Operations: "Deburr" },
  ])("%j says nothing", (line) => expect(ofFinish(line)).toEqual([]));

  it("is a check that the coating fixes, tried, at its price; a shop without coating offers none", () => {
    const plan = planned([bracket({ ...CLEAR, Finish: "powder black" })], shopOf());
    const line = answerOf(plan, "HB1");
    const fix = plan.fix(line);
    expect([line.status, fix && fixSays(fix, "in"), fix?.reaches]).toEqual(["check", "send it to Coating", "clear"]);
    const coated = planned([bracket({ ...CLEAR, Finish: "powder black", Operations: "Coating" })], shopOf());
    expect(coated.money.charges.total).toBeGreaterThan(plan.money.charges.total);
    const bare = planned([bracket({ ...CLEAR, Finish: "powder black" })], without("Coating"));
    expect(bare.fix(answerOf(bare, "HB1"))).toBeUndefined();
  });

  it("is said once for all lines of one finish", () => {
    const lines = ["HB1", "HB2", "HB3"].map((Part) => bracket({ ...CLEAR, Part, Finish: "powder black" }));
    const causes = sharedCauses(planned(lines, shopOf()).lines).filter(({ finding }) => finding.about === "finish");
    expect(causes.map(({ lines: of }) => of.length)).toEqual([3]);
  });
});
