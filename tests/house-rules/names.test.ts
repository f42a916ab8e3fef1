/** Names are for ever: what a cell calls today must mean the same tomorrow. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { NAMESPACE, RECORDS } from "../../src/cells/catalogue.ts";
import { publicName } from "../../src/cells/record/record.ts";
import { resultUnits } from "../../src/cells/record/result-units.ts";
import { EDITIONS } from "../../src/data/materials/editions.ts";
import { EDITIONS_FILE, type RecordedEditions, renewedEditions } from "../../src/tools/generate/recorded-editions.ts";
import { NAMES_FILE, namesOf, type RecordedName, renewedNames } from "../../src/tools/generate/recorded-names.ts";
import { RESULT_UNITS } from "../../src/units/system.ts";
import { root } from "./sources.ts";

const read = <T>(file: string): T => JSON.parse(readFileSync(`${root}/${file}`, "utf8")) as T;
const recorded = read<RecordedName[]>(NAMES_FILE);
const current = namesOf(RECORDS);

describe("released names", () => {
  it.each(recorded.map((row) => [row.name, row] as const))("%s is as recorded", (name, row) => {
    expect(
      current.find((other) => other.name === name),
      "a changed name, argument or default breaks workbooks: npm run record, and a line in CHANGELOG.md",
    ).toEqual(row);
  });

  it("every function is recorded", () => {
    const known = new Set(recorded.map(({ name }) => name));
    expect(
      current.map(({ name }) => name).filter((name) => !known.has(name)),
      "npm run record writes new functions down",
    ).toEqual([]);
  });

  it("the switch refuses to change or drop a contract row and lets others change", () => {
    const row = { name: "A.B", parameters: ["x", "units?=in"], unit: "in | mm", contract: true };
    const changed = { ...row, parameters: ["units?=in", "x"] };
    expect(() => renewedNames([row], [changed])).toThrow("A.B is a contract");
    expect(() => renewedNames([row], [])).toThrow("A.B is a contract");
    expect(renewedNames([{ ...row, contract: false }], [changed])).toEqual([changed]);
  });
});

describe("released editions of the materials", () => {
  const editions = read<RecordedEditions>(EDITIONS_FILE);

  it("are unchanged", () => {
    expect(Object.keys(editions).length).toBeGreaterThan(0);
    expect(renewedEditions(editions, EDITIONS, { isRelease: false })).toEqual(editions);
  });

  it("the newest joins them at a release", () => {
    const newest = EDITIONS.at(-1)?.name;
    expect(Object.keys(renewedEditions(editions, EDITIONS, { isRelease: true }))).toContain(newest);
  });

  it("may not change in one figure", () => {
    const [first] = EDITIONS;
    const [material, ...rest] = first!.materials;
    const edited = { ...first!, materials: [{ ...material!, aliases: [] }, ...rest] };
    expect(() => renewedEditions(editions, [edited, ...EDITIONS.slice(1)], { isRelease: false })).toThrow(
      "is released",
    );
  });
});

/** Limits of Microsoft's documentation of custom functions: names, ids, descriptions, number of parameters. */
describe("Excel's rules for names", () => {
  const CELL_ADDRESS = /^(?:[A-Z]{1,3}\d+|R\d*C\d*|R\d*|C\d*)$/i;

  it.each(RECORDS.map((record) => [record.name, record] as const))("%s keeps them", (name, record) => {
    expect(name).toMatch(/^[A-Z][A-Z0-9_.]{2,63}$/);
    expect(name).not.toMatch(CELL_ADDRESS);
    expect(`${NAMESPACE}.${name}`.split(".").every((part) => part.length > 0)).toBe(true);
    expect(record.question.length).toBeGreaterThan(5);
    expect(record.question.length).toBeLessThanOrEqual(1024);
    expect(record.source.length).toBeGreaterThan(10);
    const parameters = Object.entries(record.parameters);
    expect(parameters.length).toBeLessThanOrEqual(128);
    for (const [key, { description }] of parameters) {
      expect(publicName(key), key).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(description.length, key).toBeGreaterThan(3);
      expect(description.length, key).toBeLessThanOrEqual(512);
    }
  });

  it("the namespace has at most 32 characters", () => {
    expect(NAMESPACE).toMatch(/^[A-Z][A-Z0-9]{0,31}$/);
  });

  it("no two names differ only in dots and underscores: the saved file has no dots", () => {
    const saved = RECORDS.map(({ name }) => name.replace(/[._]/g, "_"));
    expect(new Set(saved).size).toBe(saved.length);
  });

  it("optional arguments come last, units and data at the very end", () => {
    for (const { name, parameters } of RECORDS) {
      const entries = Object.entries(parameters);
      const firstOptional = entries.findIndex(([, { optional }]) => optional);
      if (firstOptional >= 0)
        expect(
          entries.slice(firstOptional).every(([, { optional }]) => optional),
          name,
        ).toBe(true);
      const keys = entries.map(([key]) => key);
      const tail = keys.filter((key) => key === "units" || key === "data");
      expect(keys.slice(keys.length - tail.length), name).toEqual(tail);
    }
  });

  it("results carry a unit of the closed list", () => {
    for (const record of RECORDS)
      for (const unit of resultUnits(record)?.split(" | ") ?? []) expect(RESULT_UNITS, record.name).toContain(unit);
  });
});
