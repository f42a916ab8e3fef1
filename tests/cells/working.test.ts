/** The working is the calculation itself: its last step is the answer, and a constant that changes one changes both. */
import { afterEach, describe, expect, it } from "vitest";
import { type Argument, callRecord } from "../../src/cells/call/call.ts";
import { RECORDS } from "../../src/cells/catalogue.ts";
import type { AnyRecord } from "../../src/cells/record/record.ts";
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
