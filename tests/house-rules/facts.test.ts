import { describe, expect, it } from "vitest";
import { factValue } from "../../src/calc/material/fact-value.ts";
import { PROPERTIES } from "../../src/cells/parameters/property.ts";
import { EDITIONS } from "../../src/data/materials/editions.ts";
import { factsOf } from "../data/all-facts.ts";

const MARKS = ["read", "memory", "derived", "common practice", "fitted", "by definition", "given"];
const all = await factsOf();

describe("every fact of the data", () => {
  it("is found by this test", () => {
    expect(all.length).toBeGreaterThan(200);
  });

  it("has a finite value, a known mark and a source in words", () => {
    const faulty = all.filter(
      ({ fact }) => !Number.isFinite(fact.value) || !MARKS.includes(fact.mark) || !/[A-Za-z]{3}/.test(fact.source),
    );
    expect(faulty).toEqual([]);
  });

  it("of a material has a unit of its property's kind", () => {
    for (const { materials } of EDITIONS)
      for (const material of materials)
        for (const { key, quantity } of PROPERTIES) {
          const fact = material[key];
          if (fact) expect(factValue(fact, quantity), `${material.name} ${key}`).toBeGreaterThanOrEqual(0);
        }
  });
});
