/** What a line has come to, of a plan made for the purpose: which machine's findings it has, and whether it may be quoted. */
import { describe, expect, it } from "vitest";
import { answerOf, canBeQuoted, shortFinding } from "../../src/bill/line-answer.ts";
import type { LinePlan } from "../../src/bill/lines/plan-line.ts";
import type { Finding } from "../../src/calc/finding.ts";
import { bracket, planned, quotedOf } from "./shop.ts";

const finding = (kind: string, status: Finding["status"] = "check"): Finding => ({ about: "cutting", status, kind });
const made = quotedOf(planned([bracket()]), "HB1").plan;
const jet = quotedOf(planned([bracket({ Route: "waterjet" })]), "HB1").plan.cutting.waterjet;
const base: LinePlan = {
  ...made,
  findings: [],
  cutting: {
    ...made.cutting,
    onShear: [finding("of the shear")],
    waterjet: jet,
    onWaterjet: [finding("of the waterjet")],
  },
};
const without = (machine: "shear" | "waterjet"): LinePlan => ({
  ...base,
  cutting: { ...base.cutting, [machine]: undefined },
});
const none = new Map<LinePlan, Finding>();

describe("the findings of a line", () => {
  const kinds = (plan: LinePlan, cutter?: "shear" | "waterjet") =>
    answerOf(plan, cutter ? new Map([[plan, cutter]]) : new Map(), none).findings.map(({ kind }) => kind);
  it("are those of the machine that cuts it", () => {
    expect(kinds(base, "shear")).toEqual(["of the shear"]);
    expect(kinds(base, "waterjet")).toEqual(["of the waterjet"]);
  });
  it("are, where nothing cuts it, the shear's if one could, else the waterjet's", () => {
    expect(kinds(base)).toEqual(["of the shear"]);
    expect(kinds(without("shear"))).toEqual(["of the waterjet"]);
  });
  it("begin with its own, and end with what its sheets lack", () => {
    const plan: LinePlan = { ...base, findings: [{ ...finding("own"), about: "flange" }] };
    const { findings, status, isQuoted } = answerOf(
      plan,
      new Map([[plan, "shear"]]),
      new Map([[plan, shortFinding(plan, 2, undefined)]]),
    );
    expect(findings.map(({ about }) => about)).toEqual(["flange", "cutting", "stock"]);
    expect([status, isQuoted]).toEqual(["check", true]);
  });
  it("say of sheets that run out how many blanks they lack, and of a blank that no sheet holds why", () => {
    expect(shortFinding(base, 2, undefined)).toMatchObject({
      status: "check",
      kind: "runs out",
      figure: 2,
      name: "A36",
    });
    expect(shortFinding(base, 2, "too long")).toEqual({
      about: "stock",
      status: "stop",
      kind: "no layout",
      words: "too long",
    });
  });
});

describe("a line", () => {
  it("is quoted only where a machine was chosen for it", () => {
    expect(answerOf(base, new Map([[base, "shear"]]), none)).toMatchObject({ cutter: "shear", isQuoted: true });
    expect(answerOf(base, new Map(), none)).toMatchObject({ cutter: undefined, isQuoted: false });
  });
  it("may be quoted unless it is stopped, or no machine cuts it, or no sheet holds it", () => {
    expect(canBeQuoted(base)).toBe(true);
    expect(canBeQuoted({ ...base, findings: [finding("look")] })).toBe(true);
    expect(canBeQuoted({ ...base, findings: [finding("look"), finding("no", "stop")] })).toBe(false);
    expect([canBeQuoted(without("shear")), canBeQuoted(without("waterjet"))]).toEqual([true, true]);
    expect(canBeQuoted({ ...base, cutting: { ...base.cutting, shear: undefined, waterjet: undefined } })).toBe(false);
    expect(canBeQuoted({ ...base, sheets: [] })).toBe(false);
    expect(canBeQuoted({ ...base, sheets: undefined })).toBe(true);
  });
});
