/** DATE, PRICE and JET.TIME as a cell calls them: known answers, then what is refused. */
import { describe, expect, it } from "vitest";
import { shopFunctions } from "../../../src/cells/catalogue.ts";
import { type CellMatrix, type CellValue, isCellError } from "../../../src/units/cell.ts";
import { MONDAY, range } from "../example/tables.ts";

const H = 1 / 24;
/** Eight hours a day: sums that are easy to follow. */
const CALENDAR = range(
  ["Day", "Start", "End"],
  ...["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"].map((day) => [day, "7:00", "15:00"]),
);
const call = (name: string, ...args: (CellValue | CellMatrix)[]) => shopFunctions.call(name, args);
const said = (name: string, ...args: (CellValue | CellMatrix)[]): string => {
  const { value } = call(name, ...args);
  return isCellError(value) ? `${value.code} ${value.message}` : `answered ${String(value)}`;
};
const WITH_HOLIDAY: CellMatrix = [...CALENDAR, [MONDAY + 1, null, null], [MONDAY + 2, "7:00", "12:00"]];
const OWN: CellMatrix = [
  ["Day", "Start", "End", "Station"],
  ...CALENDAR.slice(1).map((row) => [...row, null]),
  ["Tue", "6:00 am", "6:00 PM", "Brake"],
];

describe("working dates", () => {
  it.each([
    ["in a shift", ["DATE.FINISH", MONDAY + 8 * H, 3, CALENDAR], MONDAY + 11 * H],
    ["over a holiday and a short day", ["DATE.FINISH", MONDAY + 7 * H, 14, WITH_HOLIDAY], MONDAY + 3 + 8 * H],
    ["a date as text", ["DATE.FINISH", "2026-03-02 08:00", 3, CALENDAR], MONDAY + 11 * H],
    [
      "shifts as fractions of a day",
      ["DATE.FINISH", MONDAY, 1, range(["Day", "Start", "End"], ["Monday", 7 / 24, 15 / 24])],
      MONDAY + 8 * H,
    ],
    ["a station's own shifts", ["DATE.FINISH", MONDAY, 13, OWN, "brake"], MONDAY + 8 + 7 * H],
    ["a station without its own", ["DATE.FINISH", MONDAY, 13, OWN, "Shear"], MONDAY + 1 + 12 * H],
    ["latest start", ["DATE.LATESTSTART", MONDAY + 11 * H, 3, CALENDAR], MONDAY + 8 * H],
    ["latest start, over the weekend", ["DATE.LATESTSTART", MONDAY + 8 * H, 2, CALENDAR], MONDAY - 3 + 14 * H],
    ["slack", ["DATE.SLACK", MONDAY + 7 * H, MONDAY + 1, 5, CALENDAR], 3],
    ["slack that is missing", ["DATE.SLACK", MONDAY + 7 * H, MONDAY + 9 * H, 5, CALENDAR], -3],
  ] as [string, [string, ...(CellValue | CellMatrix)[]], number][])("%s", (_, [name, ...args], expected) => {
    expect(call(name, ...args).value).toBeCloseTo(expected, 8);
  });

  it.each([
    ["no start", ["DATE.FINISH", "soon", 1, CALENDAR], /^#VALUE! start must be a date, or text such as/],
    ["a day that is none", ["DATE.FINISH", "2026-02-30", 1, CALENDAR], /^#VALUE! start must be a date/],
    ["hours below zero", ["DATE.FINISH", MONDAY, -1, CALENDAR], /^#VALUE! hours must be a number of at least 0/],
    ["no calendar", ["DATE.FINISH", MONDAY, 1, null], /^#VALUE! calendar must be given/],
    [
      "a calendar of holidays",
      ["DATE.FINISH", MONDAY, 1, range(["Day", "Start", "End"], [MONDAY, null, null])],
      /^#N\/A calendar must be one with working time enough/,
    ],
    [
      "half a shift",
      ["DATE.FINISH", MONDAY, 1, range(["Day", "Start", "End"], ["Mon", "7:00", null])],
      /^#VALUE! calendar row 2 column "End" must be given where the other one is/,
    ],
    [
      "a time of day that is none",
      ["DATE.FINISH", MONDAY, 1, range(["Day", "Start", "End"], ["Mon", "7:75", "9:00"])],
      /^#VALUE! calendar row 2 column "Start" must be a time of day/,
    ],
    [
      "a weekday that is none",
      ["DATE.FINISH", MONDAY, 1, range(["Day", "Start", "End"], ["Someday", "7:00", "9:00"])],
      /^#VALUE! calendar row 2 column "Day" must be a weekday/,
    ],
  ] as [string, [string, ...(CellValue | CellMatrix)[]], RegExp][])("refuses %s", (_, [name, ...args], message) => {
    expect(said(name, ...args)).toMatch(message);
  });
});

describe("prices", () => {
  it.each([
    [["PRICE.FORMARGIN", 70, 0.3], 100],
    [["PRICE.FORMARGIN", 70, 0.3, "markup"], 91],
    [["PRICE.FORMARGIN", 10, 0], 10],
    [["PRICE.FORMARGIN", 70, "30%"], 100],
    [["PRICE.FORMARGIN", 70, "30 %"], 100],
    [["PRICE.FORMARGIN", 1, 1 / 3], 1.5],
  ] as [[string, ...CellValue[]], number][])("%j", ([name, ...args], expected) => {
    expect(call(name, ...args)).toEqual({ value: expected, unit: "money" });
  });

  it.each([
    [
      ["PRICE.FORMARGIN", 70, 1],
      /^#VALUE! margin must be a share of less than 1 of the price; got 1; write 30 percent as 0.3/,
    ],
    [
      ["PRICE.FORMARGIN", 70, 30],
      /^#VALUE! margin must be a share of at least 0 and at most 10; got 30; write 30 percent as 0.3/,
    ],
    [
      ["PRICE.FORMARGIN", -1, 0.3],
      /^#VALUE! cost must be a amount of at least 0|^#VALUE! cost must be an amount of at least 0/,
    ],
    [["PRICE.BREAKS", 70, 7, "1; 0", 0.3], /^#VALUE! quantities must be a whole quantity of at least 1/],
  ] as [[string, ...CellValue[]], RegExp][])("refuses %j", ([name, ...args], message) => {
    expect(said(name, ...args)).toMatch(message);
  });

  it("breaks: the more, the cheaper", () => {
    const spill = call("PRICE.BREAKS", 70, 7, "1; 10; 100", 0.3).value as CellMatrix;
    expect(spill).toEqual([
      ["Quantity", "Unit cost", "Unit price", "Price"],
      [1, 77, 110, 110],
      [10, 14, 20, 200],
      [100, 7.7, 11, 1100],
    ]);
  });
});

describe("JET.TIME", () => {
  it.each([
    ["path over feed, and pierces", [60, 3, 100, 10, 12], 5 + 0.5],
    ["never faster than the machine", [60, 0, 30, 10, 12_000], 2],
    ["the shop's timed cut comes first", [60, 0, 100, 10, 12, 30, 3], 6],
    ["and needs no feed", [60, 0, 100, 10, null, 30, 3], 6],
  ] as [string, CellValue[], number][])("%s", (_, args, expected) => {
    expect(call("JET.TIME", ...args)).toEqual({ value: expect.closeTo(expected, 10), unit: "min" });
  });

  it("the same in millimeters", () => {
    const metric = call("JET.TIME", 60 * 25.4, 3, 100 * 25.4, 10, 12 * 25.4, null, null, "mm").value;
    expect(metric).toBeCloseTo(5.5, 10);
  });

  it.each([
    [
      "neither feed nor timed cut",
      [60, 0, 100, 10],
      /^#VALUE! timed_path must be given with timed_minutes where there is no feed/,
    ],
    ["half a timed cut", [60, 0, 100, 10, 12, 30], /^#VALUE! timed_minutes must be given where the other one is/],
    ["half a pierce", [60, 0.5, 100, 10, 12], /^#VALUE! pierces must be a whole number/],
  ] as [string, CellValue[], RegExp][])("refuses %s", (_, args, message) => {
    expect(said("JET.TIME", ...args)).toMatch(message);
  });

  it("the working ends with the answer", () => {
    const steps = call("WORKING", "JET.TIME", 60, 3, 100, 10, 12).value as CellMatrix;
    expect(steps.at(-1)![2]).toBeCloseTo(5.5, 10);
  });
});
