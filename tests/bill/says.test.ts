/** Every finding has a sentence of its own, short enough to be read, whatever its figures and names are. */
import { describe, expect, it } from "vitest";
import { fixSays } from "../../src/bill/fix-says.ts";
import {
  figureSays,
  LONGEST_SENTENCE,
  noQuoteSays,
  notesSay,
  problemsSay,
  SAID,
  says,
  vendorSays,
  withoutSays,
} from "../../src/bill/says.ts";
import { type Finding, type Severity, SUBJECTS, type Subject } from "../../src/calc/finding.ts";
import { mm } from "../../src/units/quantity.ts";
import type { QuantityKind } from "../../src/units/system.ts";
import { type Line, NONSENSE } from "../cells/example/tables.ts";
import { filesBelow } from "../house-rules/sources.ts";
import { bracket, planned, shopOf } from "./shop.ts";

/** Quantity of the figures of each kind, where it is not a length. */
const QUANTITY: Partial<Record<Subject, QuantityKind | undefined>> = {
  "brake force": "force",
  "bend ends": "force",
  punch: "lineLoad",
  die: "lineLoad",
  beam: "lineLoad",
  "loaded angle": "angle",
  opening: undefined,
  lifting: "mass",
};
const kinds = SAID.map((key) => {
  const at = key.indexOf(": ");
  return [key, key.slice(0, at) as Subject, key.slice(at + 2)] as const;
});
/** Findings whose words come from elsewhere, a refusal or a reason of the cut plan, may be cut at their end. */
const QUOTES = kinds
  .filter(
    ([, about, kind]) => about === "input" || /not judged|cannot be|no layout|no machine|not on waterjet/.test(kind),
  )
  .map(([key]) => key);

/** What is quoted: a material, or what is in the way. */
const wordsOf = (kind: string): string => (/rating|strong/.test(kind) ? "5052-H32" : "flange 2 meets the punch");

function finding(about: Subject, kind: string, size: number, name: string, words: string): Finding {
  const quantity = about in QUANTITY ? QUANTITY[about] : "length";
  const scale = { force: 1e6, lineLoad: 1e3, angle: 90, mass: 500, length: 3000 }[quantity as "length"] ?? 10;
  const figure = scale * size;
  return { about, status: "stop", kind, figure, limit: figure * 0.987, beside: figure * 1.234, quantity, name, words };
}

describe("every finding", () => {
  it.each(kinds)(
    "%s has a sentence that ends, with ordinary figures and names, in inches and millimeters",
    (key, about, kind) => {
      for (const system of ["in", "mm"] as const)
        for (const size of [0.001, 0.33333, 1]) {
          const sentence = says(finding(about, kind, size, "Brake 2 left", wordsOf(kind)), system);
          expect(sentence.length).toBeLessThanOrEqual(LONGEST_SENTENCE);
          expect(sentence).not.toBe(`${key}.`);
          expect(sentence).not.toMatch(/undefined|NaN|Infinity|\s{2}|e[+-]\d/);
          if (!QUOTES.includes(key)) expect(sentence).toMatch(/[^.]\.$/);
        }
    },
  );

  it.each(kinds)("%s stays short with long names and large numbers", (_, about, kind) => {
    const long = "The old press brake in the corner by the door, 1987 ".repeat(4);
    for (const size of [1e4, 1e9]) {
      const sentence = says(finding(about, kind, size, long, long), "mm");
      expect(sentence.length).toBeLessThanOrEqual(LONGEST_SENTENCE);
      expect(sentence.length).toBeGreaterThan(20);
    }
  });

  it("is about one of the subjects, and every subject has one", () => {
    expect([...new Set(kinds.map(([, about]) => about))].sort()).toEqual([...SUBJECTS].sort());
  });

  it("that the sources make has a sentence: every kind that stands beside a status", () => {
    const files = ["src/calc/bend/check", "src/calc/shear", "src/bill"].flatMap((folder) => filesBelow(folder));
    const made = files
      // The week says its own faults and ways to save a job.
      .filter(({ path }) => !/says\.ts$|fix\.ts$|changes\.ts$|^src\/bill\/week\//.test(path))
      .flatMap(({ text }) => [
        ...text.matchAll(/(?:found|finding)\("(?:note|check|stop)", "([^"]+)"/g),
        ...text.matchAll(/kind: (?:[a-z]+ \? )?"([^"]+)"/g),
        ...text.matchAll(/kind: [^"\n]*"[^"]+" : (?:[^"\n]*)"([^"]+)"/g),
      ])
      .map((match) => match[1]!)
      .filter((kind) => kind !== "stop"); // a status that is asked about
    expect(made.length).toBeGreaterThan(35);
    const unsaid = [...new Set(made)].filter(
      (kind) => !kinds.some(([, , said]) => said === kind || said.startsWith(`${kind} `)),
    );
    expect(unsaid).toEqual([]);
  });

  it("of a bill of traps has its own sentence", () => {
    const traps: Line[] = [
      NONSENSE,
      bracket({ Thickness: 1 }),
      bracket({ Flanges: "1.1; 3", "Hole distance": 0.2, Tolerance: 0.02, "Drawing radius": 0.1 }),
      bracket({ Material: "6061-T6", Thickness: 0.125, Width: 60 }),
      bracket({ Material: "304", Thickness: "14 ga", Width: 110, Flanges: "4; 1.5; 4" }),
      bracket({ Material: "A1008 CS", Thickness: "16 ga", Flanges: "0.2", "Bend angles": null, Width: 40 }),
      bracket({ Flanges: "46", "Bend angles": null, Width: 118, Route: "shear" }),
      bracket({ Flanges: "50", "Bend angles": null, Width: 60 }),
    ];
    const plan = planned(traps, shopOf());
    for (const { about, kind } of plan.lines.flatMap(({ findings }) => findings))
      expect(SAID).toContain(`${about}: ${kind}`);
  });
});

describe("what is said of a line", () => {
  const of = (status: Severity, kind: string): Finding => ({
    about: "lifting",
    status,
    kind,
    figure: 30,
    quantity: "mass",
  });
  const note = of("note", "two people");
  const check = of("check", "hoist");
  const stop = of("stop", "too heavy");
  it("problems worst first, notes apart, nothing on a clear line", () => {
    expect(problemsSay([note, check, stop], "mm")).toEqual([says(stop, "mm"), says(check, "mm")]);
    expect(notesSay([note, check, stop], "mm")).toEqual(["A blank of 30 kg takes two people."]);
    expect(problemsSay([note], "mm")).toEqual([]);
    expect(problemsSay([], "mm")).toEqual([]);
  });
  it("why there is no quote: a stop, or what Stock lacks; never a mere check", () => {
    const stock: Finding = {
      about: "stock",
      status: "check",
      kind: "not there",
      figure: 6.35,
      quantity: "length",
      name: "A36",
    };
    expect(noQuoteSays([check, stop], "in")).toMatch(/^no quote: A blank of 66 lb is too heavy/);
    expect(noQuoteSays([check, stock], "in")).toBe("no quote: A36 0.250 in is not in Stock: buy.");
    const near: Finding = { ...stock, figure: 0.1565 * 25.4 };
    expect(noQuoteSays([near], "in")).toBe("no quote: A36 0.1565 in is not in Stock: buy.");
    expect(noQuoteSays([check], "in")).toBe("no quote: no machine in the tables cuts it");
  });
  it.each([
    [0, ""],
    [1, "without 1 line"],
    [7, "without 7 lines"],
  ])("%d lines missing: %j", (lines, said) => expect(withoutSays(lines)).toBe(said));
});

describe("a die that is too narrow", () => {
  it.each([
    ["stop", "Die V 1 opens 4.00 times the thickness; usual is 6 to 12: too narrow for this sheet."],
    ["check", "Die V 1 opens 4.00 times the thickness; usual is 6 to 12: it marks, and force runs up."],
  ] as const)("is said with what comes of it, at a %s", (status, said) =>
    expect(says({ about: "opening", status, kind: "narrow", figure: 4, name: "V 1" }, "in")).toBe(said),
  );
});

describe("a refusal that is too long", () => {
  const cell = 'line 12 (row 13 of the range) column "Material" must be a material in the table';
  const unread = (words: string) => says({ about: "input", status: "stop", kind: "unread", words }, "in");
  it("leaves out its hint first, then its end", () => {
    expect(unread(`${cell}; got "cheese"; nearest is "A36"; MATERIAL.LIST shows all`)).toBe(`${cell}; got "cheese"`);
    expect(unread(`${cell}; got "${"x".repeat(80)}"; nearest is "A36"`)).toMatch(/; got "x+\.\.\.$/);
  });
});

describe("a fix in words", () => {
  it.each([
    [{ kind: "tools", die: "V 2" }, "die V 2"],
    [{ kind: "tools", die: "V 2", punch: "Plain", brake: "Brake 1" }, "die V 2, punch Plain, Brake 1"],
    [{ kind: "grain", grain: "across" }, "turn the blank: bend line across the grain"],
    [{ kind: "hole after" }, "drill the hole after bending"],
    [{ kind: "waterjet" }, "cut it on the waterjet"],
    [{ kind: "deburr", station: "Deburr" }, "deburr the bend ends"],
    [{ kind: "coat", station: "Coating" }, "send it to Coating"],
    [{ kind: "pieces", count: 2, width: mm(1600.2) }, "make it of 2 pieces, 63.000 in each, if the customer agrees"],
    [{ kind: "thickness", thickness: mm(3.175), isStocked: false }, "make it 0.1250 in thick, if the customer agrees"],
    [
      { kind: "thickness", thickness: mm(3.175), isStocked: true },
      "make it 0.1250 in thick, which is in Stock, if the customer agrees",
    ],
    [{ kind: "trim after", flange: mm(25.4) }, "make the short flange 1.000 in and trim it after bending"],
  ] as const)("%j", (change, said) => {
    expect(fixSays({ changes: [change], reaches: "clear" }, "in")).toBe(said);
  });
});

it("a bend line along the grain is said of how the blank lies, and turning it is tried before it is offered", () => {
  const metal = { Material: "6061-T6", Thickness: 0.125, Holes: 0, "Hole distance": null };
  const line = { ...metal, Die: "V 1-1/2", Punch: "Round 1/2" };
  const of = (Grain: string) => {
    const plan = planned([bracket({ ...line, Grain })], shopOf());
    return { plan, answer: plan.lines[0]! };
  };
  const along = of("along");
  expect(problemsSay(along.answer.findings, "in").join(" ")).toMatch(/along the grain, as this one lies/);
  const fix = along.plan.fix(along.answer)!;
  expect(fix.changes).toEqual([{ kind: "grain", grain: "across" }]);
  expect(of("across").answer.status).toBe(fix.reaches);
});

it("a vendor: days, and what its coat does to holes", () => {
  const coating = shopOf().stations.find(({ name }) => name === "Coating")!;
  expect(vendorSays(coating, 2, "in")).toBe("Coating outside, 5 vendor days, holes close by 0.006 in");
  expect(vendorSays({ ...coating, coat: undefined }, 2, "in")).toBe("Coating outside, 5 vendor days");
  expect(vendorSays({ ...coating, vendorDays: 1 }, 0, "in")).toBe("Coating outside, 1 vendor day");
});

it("a load along a die is tons a foot in inches and kN a meter in millimeters", () => {
  // 1 ton/ft (2,000 lbf over 12 in) is 8896.443 N over 304.8 mm: 29.188 N/mm, which is 29.188 kN/m.
  expect(figureSays(29.188 * 10, "lineLoad", "in")).toBe("10 tons/ft");
  expect(figureSays(29.188 * 10, "lineLoad", "mm")).toBe("290 kN/m");
});
