/** The same cause on several lines is said once; what only the customer can answer is one question. */
import { describe, expect, it } from "vitest";
import { causeKey, causeSays, questionSays, sharedCauses } from "../../src/bill/causes.ts";
import { customerSays } from "../../src/bill/customer-says.ts";
import type { LineAnswer } from "../../src/bill/line-answer.ts";
import { lineName } from "../../src/bill/line-name.ts";
import type { Finding, Severity, Subject } from "../../src/calc/finding.ts";

const found = (about: Subject, status: Severity, kind: string, more: Partial<Finding> = {}): Finding => ({
  about,
  status,
  kind,
  ...more,
});
const line = (part: string, ...findings: Finding[]) => ({ part, row: 7, findings }) as unknown as LineAnswer;
const swing = found("swing", "check", "swings", { figure: 508, quantity: "length" });
const edges = found("edges", "check", "cracking temper", { name: "6061-T6" });
const stop = found("lifting", "stop", "too heavy", { figure: 90, quantity: "mass" });

describe("a cause", () => {
  it("is shared from three lines on, of the same kind, status and tool", () => {
    const two = [line("A", swing), line("B", swing), line("C", edges)];
    expect(sharedCauses(two)).toEqual([]);
    const [shared, ...others] = sharedCauses([...two, line("D", { ...swing, figure: 600 })]);
    expect(others).toEqual([]);
    expect(shared!.lines.map(({ part }) => part)).toEqual(["A", "B", "D"]);
    expect(shared!.finding).toBe(swing);
    expect(sharedCauses([...two, line("D", { ...swing, name: "V 2" })])).toEqual([]);
    expect(sharedCauses([...two, line("D", { ...swing, status: "stop" })])).toEqual([]);
    expect(causeKey(swing)).not.toBe(causeKey({ ...swing, kind: "sags" }));
    expect(causeKey(swing)).not.toBe(causeKey({ ...swing, about: "hands" }));
  });
  it("counts a line once, and neither notes nor what is not understood nor what the customer is asked", () => {
    expect(sharedCauses([line("A", swing, swing), line("B", swing)])).toEqual([]);
    const note = found("edges", "note", "plate");
    const unread = found("input", "stop", "unread", { words: "x" });
    const ask = found("drawing radius", "check", "ask");
    for (const one of [note, unread, ask])
      expect(sharedCauses(["A", "B", "C"].map((part) => line(part, one)))).toEqual([]);
    const measure = found("drawing radius", "check", "measure");
    expect(sharedCauses(["A", "B", "C"].map((part) => line(part, measure)))).toHaveLength(1);
  });
  it("stands before others where it is worse, then where it is of more lines", () => {
    const lines = [
      line("A", edges, swing, stop),
      line("B", swing, edges, stop),
      line("C", swing, edges, stop),
      line("D", swing),
    ];
    expect(sharedCauses(lines).map(({ finding }) => finding.about)).toEqual(["lifting", "swing", "edges"]);
  });
  it("is said with the lines it is of, and whether their figures are its own", () => {
    const same = { finding: stop, lines: ["A", "B", ""].map((part) => line(part, stop)) };
    expect(causeSays(same, "mm")).toBe(
      "A: A blank of 90 kg is too heavy for two people, and there is no hoist. The same on B, line 6.",
    );
    const further = { ...same, lines: [line("A", stop), line("B", swing, stop), line("C", stop, edges)] };
    expect(causeSays(further, "mm")).toMatch(/no hoist\. The same on B, C\.$/);
    const other = { ...same, lines: [line("A", stop), line("B", { ...stop, figure: 120 }), line("C", stop)] };
    expect(causeSays(other, "mm")).toMatch(/no hoist\. Likewise, with figures of their own, B, C\.$/);
  });
});

describe("the question to the customer", () => {
  const ask = (figure: number, limit: number) =>
    found("drawing radius", "check", "ask", { figure, limit, quantity: "length" });
  it("is one for all lines that have it, with both radii", () => {
    expect(questionSays([line("A", ask(6, 4)), line("B", swing), line("", ask(8, 5))], "mm")).toBe(
      "Are these inside radii acceptable in place of the drawing's? A 6.0 mm for 4.0 mm; line 6 8.0 mm for 5.0 mm.",
    );
    expect(questionSays([line("B", swing)], "mm")).toBe("");
    expect(questionSays([line("A", found("edges", "check", "ask"))], "mm")).toBe("");
    expect(questionSays([line("A", found("drawing radius", "note", "near", { figure: 6 }))], "mm")).toBe("");
  });
});

describe("a line without a name", () => {
  it("is called by its place in the bill", () => {
    expect(lineName({ part: "", row: 7 })).toBe("line 6");
    expect(lineName({ part: "HB1", row: 7 })).toBe("HB1");
  });
});

describe("why a line is not quoted, to the customer", () => {
  const says = (...findings: Finding[]) => customerSays({ isQuoted: false, findings });
  it.each<[Subject, string]>([
    ["brake force", "cannot be bent as drawn"],
    ["bend ends", "cannot be bent as drawn"],
    ["beam", "cannot be bent as drawn"],
    ["punch", "cannot be bent as drawn"],
    ["die", "cannot be bent as drawn"],
    ["room", "cannot be bent as drawn"],
    ["loaded angle", "cannot be bent as drawn"],
    ["radius", "cannot be bent as drawn"],
    ["opening", "cannot be bent as drawn"],
    ["flange", "cannot be bent as drawn"],
    ["bend order", "cannot be bent as drawn"],
    ["cutting", "cannot be cut as drawn"],
    ["narrow strip", "cannot be cut as drawn"],
    ["hold-down", "cannot be cut as drawn"],
    ["blade gap", "cannot be cut as drawn"],
    ["lifting", "too heavy for us to handle"],
    ["tolerance", "the tolerance will not hold"],
    ["input", "we have a question about this line"],
    ["hands", "we have a question about this line"],
  ])("a stop of %s: %s", (about, reason) => expect(says(found(about, "stop", "x"))).toBe(`no quote: ${reason}`));
  it("what Stock lacks counts though it is a check; other checks do not", () => {
    expect(says(found("stock", "check", "not there"))).toBe("no quote: we have no sheet for it");
    expect(says(found("stock", "check", "larger"))).toBe("no quote: larger than the sheets we have");
    expect(says(found("stock", "check", "no layout"))).toBe("no quote: cannot be cut as drawn");
    expect(says(found("hole", "check", "goes oval"))).toBe("no quote: cannot be cut as drawn");
    expect(says()).toBe("no quote: cannot be cut as drawn");
  });
  it("the worst is said: a stop before what Stock lacks; of a quoted line without a price only that there is a question", () => {
    expect(says(found("stock", "check", "not there"), stop)).toBe("no quote: too heavy for us to handle");
    expect(customerSays({ isQuoted: true, findings: [stop] })).toBe("no quote: we have a question about this line");
  });
});
