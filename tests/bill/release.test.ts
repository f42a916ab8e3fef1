/** Whether a line may be made or its blanks cut, and whose rows nobody has read from the plate. */
import { describe, expect, it } from "vitest";
import { openPlates, rowsOfLine } from "../../src/bill/open-plates.ts";
import { releaseOf, releaseToCut } from "../../src/bill/release.ts";
import type { Finding, Subject } from "../../src/calc/finding.ts";
import { type Line, NONSENSE } from "../cells/example/tables.ts";
import { answerOf, bracket, planned, shopOf } from "./shop.ts";

const release = (line: Line, shop = shopOf()) => {
  const answer = planned([line], shop).lines[0]!;
  return [answer.status, releaseOf(answer), releaseToCut(answer)];
};
describe("a line", () => {
  it("that is clear is released, to cut as well", () =>
    expect(release(bracket())).toEqual(["clear", "CLEAR", "CLEAR"]));
  it("with a stop, or that could not be read, is stopped, whoever accepts it", () => {
    expect(release(bracket({ Width: 130, Accepted: "A. Person" }))).toEqual(["stop", "STOP", "STOP"]);
    expect(release(NONSENSE)).toEqual(["stop", "STOP", "STOP"]);
  });
  const { plan: held, ...rest } = planned([bracket()]).lines[0]!;
  const plan = held!;
  const check = (...about: Subject[]) => ({
    ...rest,
    plan,
    status: "check" as const,
    findings: about.map((each): Finding => ({ about: each, status: "check", kind: "x" })),
  });
  const accepted = { ...plan, line: { ...plan.line, accepted: "A. Person, 3 March" } };
  it("with open checks is held until somebody accepts them", () => {
    const tight = check("tolerance");
    expect([releaseOf(tight), releaseToCut(tight)]).toEqual(["HOLD", "HOLD"]);
    const signed = { ...tight, plan: accepted };
    expect([releaseOf(signed), releaseToCut(signed)]).toEqual(["CHECK", "CHECK"]);
  });
  it("whose checks are all settled after the cut may be cut, and is held then", () => {
    for (const about of ["swing", "edges", "galvanized", "finish"] as const)
      expect(releaseToCut(check(about, "swing"))).toBe("cut, then HOLD");
    // Another die, which force asks for, gives another flat.
    expect(releaseToCut(check("swing", "brake force"))).toBe("HOLD");
    expect(releaseToCut({ ...check("swing"), plan: { ...plan, tools: undefined } })).toBe("HOLD");
    expect(releaseToCut({ ...check("swing"), plan: accepted })).toBe("CHECK");
  });
  it("with bends is not clear where no tool was there to hold it against; a flat plate is", () => {
    const bare = { ...rest, plan: { ...plan, tools: undefined } };
    expect([bare.status, releaseOf(bare), releaseToCut(bare)]).toEqual(["clear", "HOLD", "HOLD"]);
    const flat = planned([bracket({ Flanges: "5", "Bend angles": null })]).lines[0]!;
    expect([flat.plan!.tools, releaseOf(flat)]).toEqual([undefined, "CLEAR"]);
  });
});

describe("rows that nobody has read from the plate", () => {
  const row = (name: string, plate: string) => ({ name, plate });
  it("are named once, in order", () => {
    expect(openPlates([row("b", ""), undefined, row("a", ""), row("b", ""), row("c", "A. Person, 3 March")])).toEqual([
      "a",
      "b",
    ]);
  });
  it("of a line are those it is bent and cut with", () => {
    const answer = answerOf(planned([bracket({ Die: "V 2", Punch: "Plain" })]), "HB1");
    const names = rowsOfLine(answer).map((each) => each?.name);
    expect(names).toEqual([answer.plan!.tools!.brake.name, "V 2", "Plain", answer.plan!.cutting.shear!.name]);
    expect(rowsOfLine({ plan: undefined, cutter: undefined })).toEqual([undefined, undefined, undefined, undefined]);
    const onJet = { ...answer, cutter: "waterjet" as const };
    expect(rowsOfLine(onJet)[3]?.name).toBe(answer.plan!.cutting.waterjet!.name);
  });
});
