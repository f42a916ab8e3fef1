import { describe, expect, it } from "vitest";
import { callRecord } from "../../src/cells/call/call.ts";
import { RECORDS } from "../../src/cells/catalogue.ts";
import { type AnyRecord, publicName } from "../../src/cells/record/record.ts";
import { CellError } from "../../src/units/cell.ts";
import { exampleArguments } from "./example-call.ts";
import { expectedFor, ODD, type Odd } from "./expectations.ts";

/** `<parameter> must be <rule>; got <value>[; <hint>]`; a table's message names row and column after the parameter. */
const grammarFor = (name: string): RegExp =>
  new RegExp(`^${name}(?: row \\d+)?(?: column "[^"]+")? must be .+; got .+`, "s");

const withArgument = (record: AnyRecord, index: number, value: unknown) => {
  const given = exampleArguments(record);
  while (given.length <= index) given.push(undefined);
  given[index] = value as never;
  return given;
};
/** With its only required argument blank the whole call is blank, and a blank row answers "". */
const isAllBlank = (record: AnyRecord, key: string): boolean =>
  Object.entries(record.parameters)
    .filter(([, { optional, shape }]) => !optional && shape !== "table" && shape !== "data")
    .every(([other]) => other === key);

const cases = RECORDS.flatMap((record) =>
  Object.entries(record.parameters)
    .filter(([, { type }]) => type !== "anything")
    .map(([key, parameter], index) => ({ record, key, name: publicName(key), parameter, index })),
);

describe.each(cases)("$record.name $name", ({ record, key, name, parameter, index }) => {
  it.each(Object.keys(ODD) as Odd[])("%s", (odd) => {
    const isBlank = (ODD[odd] ?? "") === "";
    // Some arguments may be blank because another one is given; their example shows it.
    const isBlankInExample = (exampleArguments(record)[index] ?? "") === "";
    const expected = isBlank && isBlankInExample ? "answered" : expectedFor(record, name, parameter, odd);
    const { value } = callRecord(record, withArgument(record, index, ODD[odd]));
    const error = value instanceof CellError ? value : undefined;
    if (expected === "answered") {
      expect(error?.message ?? "").not.toMatch(grammarFor(name));
    } else if (error === undefined && isAllBlank(record, key) && isBlank) {
      expect(value).toBe("");
    } else {
      expect({ code: error?.code, value }).toMatchObject({ code: expected });
      expect(error?.message).toMatch(grammarFor(name));
    }
  });

  it("a range of one cell is that cell", () => {
    const given = exampleArguments(record);
    const cell = given[index];
    const wrapped = Array.isArray(cell) ? cell : [[cell ?? null]];
    expect(callRecord(record, withArgument(record, index, wrapped))).toEqual(callRecord(record, given));
  });

  it("an error cell passes through", () => {
    for (const error of [new CellError("#REF!"), [[new CellError("#REF!")]]])
      expect(callRecord(record, withArgument(record, index, error)).value).toMatchObject({ code: "#REF!" });
  });
});

describe("what a date is told", () => {
  it("a thickness that became a day gets the hint that 1/4 became a date", () => {
    for (const { record, parameter, index } of cases.filter(({ parameter: { type } }) => type === "thickness")) {
      const { value } = callRecord(record, withArgument(record, index, ODD.date));
      expect((value as CellError).message, `${record.name} ${parameter.type}`).toMatch(/date.*1\/4|1\/4.*day/);
    }
  });
});

describe("calls", () => {
  it.each(RECORDS.map((record) => [record.name, record] as const))("%s refuses one argument too many", (_, record) => {
    const given = exampleArguments(record);
    while (given.length <= Object.keys(record.parameters).length) given.push(null);
    expect(callRecord(record, given).value).toMatchObject({ code: "#VALUE!" });
  });

  it.each(RECORDS.map((record) => [record.name, record] as const))("%s answers its example", (_, record) => {
    const { value } = callRecord(record, exampleArguments(record));
    expect(value).not.toBeInstanceOf(CellError);
    expect(value).not.toBe("");
  });
});
