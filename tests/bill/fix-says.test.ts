/** How a fix is offered: to the shop, to the customer, to the floor. */
import { describe, expect, it } from "vitest";
import {
  askedSays,
  fixSays,
  instructionSays,
  mendSays,
  mendSentence,
  NO_FIX,
  offerSays,
} from "../../src/bill/fix-says.ts";
import type { Change } from "../../src/bill/lines/changes.ts";
import type { Fix } from "../../src/bill/lines/fix.ts";
import type { Finding, Severity, Subject } from "../../src/calc/finding.ts";
import { mm } from "../../src/units/quantity.ts";
import { bracket, lineOf } from "./shop.ts";

const fix = (...changes: Change[]): Fix => ({ changes, reaches: "clear" });
const tools: Change = { kind: "tools", die: "V 2" };
const steel = lineOf(bracket()).material;

describe("a fix of several changes", () => {
  it("is said in one line, on a button each with its verb", () => {
    const both = fix(tools, { kind: "hole after" });
    expect(fixSays(both, "in")).toBe("die V 2; drill the hole after bending");
    expect(offerSays(both, "in")).toBe("Use die V 2; drill the hole after bending");
    expect(offerSays(fix({ kind: "waterjet" }, { kind: "tools", punch: "Plain", brake: "Brake 2" }), "in")).toBe(
      "Cut it on the waterjet; use punch Plain, Brake 2",
    );
  });
  it("of a material or a length names it in the reader's units", () => {
    expect(fixSays(fix({ kind: "material", material: steel }), "in")).toBe(
      "use A36 of this thickness, which is in Stock, if the customer agrees",
    );
    expect(fixSays(fix({ kind: "trim after", flange: mm(25.4) }), "mm")).toBe(
      "make the short flange 25.4 mm and trim it after bending",
    );
  });
});

describe("what the customer is offered in place of what was asked", () => {
  const asked = lineOf(bracket({ Width: 126 }));
  it.each<[Change, string]>([
    [{ kind: "pieces", count: 2, width: mm(63 * 25.4) }, "offered in 2 pieces of 63.000 in, asked for 1 of 126.000 in"],
    [{ kind: "material", material: { ...steel, name: "304" } as typeof steel }, "offered in 304, asked for A36"],
    [{ kind: "thickness", thickness: mm(0.3125 * 25.4), isStocked: true }, "offered in 0.3125 in, asked for 0.2500 in"],
    [tools, ""],
    [{ kind: "hole after" }, ""],
  ])("%#", (change, says) => expect(askedSays(change, asked, "in")).toBe(says));
});

describe("what the floor must be told of a fix", () => {
  const said = (change: Change, line: Parameters<typeof bracket>[0]) =>
    instructionSays(change, lineOf(bracket(line)), "in");
  it("is where a hole is drilled after bending, if the bill says where it is", () => {
    expect(said({ kind: "hole after" }, { "Hole distance": 0.25 })).toBe(
      "Drill the hole after bending, 0.250 in from the flange's inside face",
    );
    expect(said({ kind: "hole after" }, {})).toBe("");
  });
  it("is which flanges are trimmed to what they were, and none that is long enough", () => {
    const trim: Change = { kind: "trim after", flange: mm(25.4) };
    expect(said(trim, { Flanges: "0.5; 3; 0.75", "Bend angles": 90 })).toBe(
      "After bending trim flange 1 to 0.500 in, flange 3 to 0.750 in",
    );
    expect(said(trim, { Flanges: "1; 3" })).toBe("");
    expect(said(trim, { Flanges: "0.5", "Bend angles": null })).toBe("");
    const tray = { Flanges: "0.5; 3; 2", "Cross flanges": "0.75; 5; 0.75", "Cross angles": 90, Width: null, Holes: 0 };
    expect(said(trim, tray)).toBe(
      "After bending trim flange 1 to 0.500 in, cross flange 1 to 0.750 in, cross flange 3 to 0.750 in",
    );
  });
  it("is nothing of a change that the sizes tell", () => expect(said(tools, {})).toBe(""));
});

describe("what would mend a line", () => {
  const finding = (about: Subject, status: Severity): Finding => ({ about, status, kind: "over" });
  it("is its fix and what it comes to", () => {
    expect(mendSays([finding("die", "stop")], fix(tools), "in")).toBe("die V 2");
    expect(mendSentence([finding("die", "stop")], fix(tools), "in")).toBe("Fix: die V 2, then clear.");
  });
  it("is said to be nothing where tools stop it and no change betters it", () => {
    expect(mendSays([finding("die", "stop")], undefined, "in")).toBe(NO_FIX);
    expect(mendSentence([finding("stock", "stop"), finding("die", "stop")], undefined, "in")).toBe(`Fix: ${NO_FIX}.`);
  });
  it("is left unsaid of a check, and of what no tool could mend", () => {
    for (const findings of [
      [],
      [finding("die", "check")],
      ...(["input", "tolerance", "stock", "lifting"] as const).map((about) => [finding(about, "stop")]),
    ]) {
      expect(mendSays(findings, undefined, "in")).toBe("");
      expect(mendSentence(findings, undefined, "in")).toBe("");
    }
  });
});
