/** functions.json: the rules of Microsoft's reference of custom function metadata, beyond those of the schema. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { NAMESPACE, RECORDS } from "../../../src/cells/catalogue.ts";
import { publicName } from "../../../src/cells/record/record.ts";
import { functionMetadata, functionsJson } from "../../../src/hosts/excel/metadata.ts";
import { storedFormula } from "../../../src/job/building/formulas.ts";
import { readWorkbook } from "../../../src/sheet/workbook/read-workbook.ts";
import { SAMPLES } from "../../../src/tools/sample/file.ts";

const GUIDE = "https://localhost:3000/taskpane.html";
const metadata = functionsJson(RECORDS, GUIDE);

describe("functions.json", () => {
  it("lets error cells in and holds every record once", () => {
    expect(metadata.allowErrorForDataTypeAny).toBe(true);
    expect(metadata.functions.map(({ name }) => name)).toEqual(RECORDS.map(({ name }) => name));
    expect(new Set(metadata.functions.map(({ id }) => id.toUpperCase())).size).toBe(RECORDS.length);
  });

  it("has ids that are stored as the samples store every call of theirs", () => {
    const stored = new Set(metadata.functions.map(({ id }) => `_xldudf_${NAMESPACE}_${id}`));
    const held = SAMPLES.flatMap(({ file }) =>
      readWorkbook(new Uint8Array(readFileSync(file))).sheets.flatMap(({ formulas }) =>
        formulas.flatMap(({ text }) => text.match(/_xldudf_\w+(?=\()/g) ?? []),
      ),
    );
    expect(held.length).toBeGreaterThan(50);
    expect([...new Set(held)].filter((call) => !stored.has(call))).toEqual([]);
  });

  it("stays well under 1 MB", () => expect(JSON.stringify(metadata).length).toBeLessThan(500_000));

  it.each(metadata.functions.map((one) => [one.name, one] as const))("%s is within Excel's limits", (name, one) => {
    expect(one.id).toMatch(/^[A-Z][A-Z0-9_]{2,63}$/);
    expect(name).toMatch(/^[A-Z][A-Z0-9_.]{2,63}$/);
    expect(`_xldudf_${NAMESPACE}_${one.id}`).toBe(storedFormula(`=${NAMESPACE}.${name}()`).replace("()", ""));
    expect(one.description.length).toBeLessThanOrEqual(1024);
    expect(one.parameters.length).toBeLessThanOrEqual(128);
    for (const { description, type, dimensionality } of one.parameters) {
      expect(description.length).toBeLessThanOrEqual(512);
      expect([type, dimensionality]).toEqual(["any", "matrix"]);
    }
    const record = RECORDS.find((other) => other.name === name)!;
    expect(one.parameters.map((parameter) => parameter.name)).toEqual(Object.keys(record.parameters).map(publicName));
    expect(one.parameters.map(({ optional = false }) => optional)).toEqual(
      Object.values(record.parameters).map(({ optional }) => optional),
    );
    // Whatever takes a range answers a block; only a lone word such as the version is a single value.
    const lone = one.parameters.length === 0 && record.result.kind !== "table" && record.result.kind !== "row";
    expect(one.result.dimensionality).toBe(lone ? "scalar" : "matrix");
  });

  it("says units and defaults in words", () => {
    const { description, parameters } = metadata.functions.find(({ id }) => id === "BEND_SETBACK")!;
    expect(description).toMatch(/Answers in or mm\.$/);
    expect(parameters[0]!.description).toMatch(/\(in or mm\)$/);
    expect(parameters.at(-1)!.description).toMatch(/Default "in"$/);
  });

  it("marks long functions as cancelable, and only those", () => {
    const record = RECORDS.find(({ name }) => name === "BEND.SETBACK")!;
    expect(functionMetadata(record, GUIDE).options).toBeUndefined();
    expect(functionMetadata({ ...record, long: true }, GUIDE).options).toEqual({ cancelable: true });
  });
});
