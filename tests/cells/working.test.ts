/** The working is the calculation itself: its last step is the answer, and a constant that changes one changes both. */
import { afterEach, describe, expect, it } from "vitest";
import { type Argument, callRecord } from "../../src/cells/call/call.ts";
import { givenSteps, isGiven } from "../../src/cells/call/given-steps.ts";
import { RECORDS } from "../../src/cells/catalogue.ts";
import type { AnyRecord } from "../../src/cells/record/record.ts";
import { type CellMatrix, isCellError } from "../../src/units/cell.ts";
import { type QuantityKind, SCALES, UNIT_SYSTEMS } from "../../src/units/system.ts";
import { unitSize } from "../../src/units/unit-words.ts";
import type { Working } from "../../src/units/working.ts";
import { factsOf } from "../data/all-facts.ts";
import { exampleArguments } from "./example-call.ts";

const allFacts = await factsOf();

interface Worked {
  readonly value: number;
  readonly unit: string | null;
  readonly steps: Working;
}

function work(record: AnyRecord, given = exampleArguments(record)): Worked | undefined {
  const steps: Working = [];
  const { value, unit } = callRecord(record, given, steps);
  return typeof value === "number" ? { value, unit, steps } : undefined;
}

/** The last step in the unit of the answer. */
function lastStep({ unit, steps }: Worked): number {
  const last = steps.at(-1)!;
  const kind = (Object.keys(SCALES) as QuantityKind[]).find((each) =>
    UNIT_SYSTEMS.some((system) => SCALES[each][system].name === unit),
  );
  const scale = kind && UNIT_SYSTEMS.map((system) => SCALES[kind][system]).find(({ name }) => name === unit);
  const size = kind ? (unitSize(last.unit, kind) ?? 1) : 1;
  return scale ? (Number(last.value) * size) / scale.size : Number(last.value);
}

const figures = RECORDS.filter((record) => work(record) !== undefined);

/** Functions whose answer rests on geometry and tables alone; their tables are no Facts. */
const WITHOUT_CONSTANTS = [
  "BEND.SETBACK",
  "TOLERANCE.ANGLE",
  "TOLERANCE.LENGTH",
  "BEND.MINRADIUS",
  "DATE.FINISH",
  "DATE.LATESTSTART",
  "DATE.SLACK",
  "EMPTY.CELLS",
  "JET.TIME",
  "PRICE.FORMARGIN",
];

describe("the working of every function that answers a figure", () => {
  it("there are some", () => {
    expect(figures.length).toBeGreaterThan(20);
  });

  it.each(figures.map((record) => [record.name, record] as const))("%s: the last step is the answer", (_, record) => {
    const worked = work(record)!;
    expect(worked.steps.length).toBeGreaterThan(0);
    expect(lastStep(worked)).toBeCloseTo(worked.value, 9);
    for (const { symbol, meaning, source } of worked.steps) {
      expect(meaning.length, symbol).toBeGreaterThan(2);
      expect(source.length, symbol).toBeGreaterThan(2);
    }
  });

  it("costs nothing when nobody asks: the same answer without it", () => {
    for (const record of figures)
      expect(callRecord(record, exampleArguments(record)).value, record.name).toBe(work(record)!.value);
  });
});

const WORKING = RECORDS.find(({ name }) => name === "WORKING")!;
const EDITIONS = ["2026.1", "2026.2"];

/** The arguments of the example, with the edition written in where the function takes one. */
function inEdition(record: AnyRecord, edition: string): Argument[] {
  const given = [...exampleArguments(record)];
  const place = Object.keys(record.parameters).indexOf("data");
  if (place < 0) return given;
  while (given.length <= place) given.push(null);
  given[place] ??= edition;
  return given;
}

const workedOut = RECORDS.flatMap((record) =>
  EDITIONS.flatMap((edition) => {
    const given = inEdition(record, edition);
    const { value } = callRecord(WORKING, [record.name, ...given]);
    const steps: Working = [];
    callRecord(record, given, steps, (...read) => steps.push(...givenSteps(...read)));
    return isCellError(value) ? [] : [[record.name, edition, given, (value as CellMatrix).slice(1), steps] as const];
  }),
);

describe("WORKING says everything that an answer rests on", () => {
  it("answers of every function that calculates, whole bills among them", () => {
    const silent = ["BEND.DIE", "FUNCTIONS", "MATERIAL.LIST", "SOURCE", "VERSION", "WORKING"];
    const answered = new Set(workedOut.map(([name]) => name));
    expect(RECORDS.map(({ name }) => name).filter((name) => !answered.has(name))).toEqual(silent);
  });

  it.each(workedOut)("%s, %s: each symbol once, every argument among them", (name, _, given, rows, steps) => {
    const symbols = rows.map(([symbol]) => symbol);
    expect(symbols.filter((symbol, i) => symbols.indexOf(symbol) !== i)).toEqual([]);
    const { parameters } = RECORDS.find((record) => record.name === name)!;
    const inputs = Object.entries(parameters).flatMap(([key, { shape }], i) =>
      shape !== "table" && key !== "units" && (given[i] ?? null) !== null ? [i + 1] : [],
    );
    const shown = steps.filter(isGiven);
    for (const place of inputs) {
      const input = shown.find(({ source }) => source === `given as argument ${place}`);
      expect(symbols, `argument ${place}`).toContain(input?.symbol);
    }
  });

  it("lengths, gauges and lists stand in the unit of the call, and what was left blank says its default", () => {
    const call = (...given: Argument[]) =>
      (callRecord(WORKING, given).value as CellMatrix).map((row) => row.join(" | "));
    const force = call("BEND.TONNAGE", "A36", "10 ga", 12, 1, null, null, "in", "2026.2");
    expect(force[2]).toMatch(/^t \| Sheet thickness \| 0\.134505\d* \| in \| given as argument 2$/);
    expect(force).toContainEqual(
      expect.stringMatching(/^method \| .* \| Lange \| {2}\| left blank: default of argument 5$/),
    );
    expect(force).toContain("data | edition of the materials | 2026.2 |  | given as argument 8");
    // What an argument is stands there to its first clause, a chosen word with what it means: nothing is cut within one.
    expect(call("JET.FEED", "A36", 0.25, 3, 50, 0.014, 0.8, 0.04)).toContainEqual(
      expect.stringMatching(/^q \| 1 rough cut, 2 clean through-cut, .* 5 fine finish \| 3 \|/),
    );
    expect(call("AIR.RADIUS", "A36", 0.25, 90, 2, null, "mechanics")).toContain(
      "method | solved wherever it can be | mechanics |  | given as argument 6",
    );
    const flat = call("FLAT.LENGTH", "38;25", 60, 3.2, 4.75, "Groover", "tangent", "mm");
    expect(flat[1]).toBe("flanges | Flanges in order along the strip | 38; 25 | mm | given as argument 1");
    // Two bends alike: the lines of the deduction stand once; two that differ are numbered.
    const symbols = (angles: string) =>
      call("FLAT.LENGTH", "2;3;2", angles, 0.125, 0.25).map((row) => row.split(" |")[0]);
    expect(symbols("90;90").filter((symbol) => symbol!.startsWith("BD"))).toEqual(["BD"]);
    expect(symbols("90;45").filter((symbol) => symbol!.startsWith("BD"))).toEqual(["BD", "BD 2"]);
  });

  it("a lift to where a load is placed is worked out at both ends", () => {
    const rows = callRecord(WORKING, ["LIFT.PLACE", 23, 15, 0, 23, 64, 0, 0.2, "fair", 1]).value as CellMatrix;
    const at = (symbol: string) => rows.find(([found]) => found === symbol)![2];
    // NIOSH 94-110, example 1 (memory): 0.89 and 0.75 for the heights, 16.3 and 14.5 lb.
    expect(at("VM origin")).toBeCloseTo(0.89, 2);
    expect(at("VM destination")).toBeCloseTo(0.745, 3);
    expect(at("RWL")).toBe(at("RWL destination"));
  });
});

describe("one source bears one mark", () => {
  it("in steps, in what SOURCE says and in the data", () => {
    const texts = [
      ...RECORDS.map(({ source }) => source),
      ...workedOut.flatMap(([, , , rows]) => rows.map((row) => String(row[4]))),
    ];
    const marked = /\((read|memory|derived|fitted|common practice)/;
    const wrong = allFacts.flatMap(({ fact: { source, mark } }) =>
      texts
        .filter((text) => text.includes(`${source} (`))
        .map((text) => ({ text, said: marked.exec(text.slice(text.indexOf(`${source} (`) + source.length))?.[1] }))
        .filter(({ said }) => said !== undefined && said !== mark)
        .map(({ text, said }) => `${source} is ${mark}, not ${said}: ${text}`),
    );
    expect([...new Set(wrong)]).toEqual([]);
  });
});

/** Where the example gives every figure itself: a call that leans on the data. */
const LEANING: Record<string, Argument[]> = {
  "BEND.DEDUCTION": [0.125, 0.125, 90],
  "SHEAR.FORCE": ["A36", 0.25, 120, 2],
};

describe("a constant that changes the answer changes its working alike", () => {
  const facts = [...new Set(allFacts.map(({ fact }) => fact))];
  const original = new Map(facts.map((fact) => [fact, fact.value]));
  afterEach(() => {
    for (const [fact, value] of original) (fact as { value: number }).value = value;
  });

  it.each(figures.map((record) => [record.name, record] as const))("%s", (name, record) => {
    const given = LEANING[name] ?? exampleArguments(record);
    const before = work(record, given)!;
    let moved = 0;
    for (const fact of facts) {
      (fact as { value: number }).value *= 1.01;
      const after = work(record, given);
      (fact as { value: number }).value = original.get(fact)!;
      if (!after || after.value === before.value) continue; // not used here, or out of range with it
      moved++;
      expect(lastStep(after), fact.source).toBeCloseTo(after.value, 9);
    }
    if (WITHOUT_CONSTANTS.includes(name)) expect(moved).toBe(0);
    else expect(moved).toBeGreaterThan(0);
  });
});
