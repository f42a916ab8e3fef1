import { describe, expect, it } from "vitest";
import { SECONDS_PER_DAY } from "../../src/calc/schedule/calendar.ts";
import { BILL_JSON } from "../../src/job/bill-schema.ts";
import { figureIn, isoTime, plain, textOrNull } from "../../src/job/plain-figures.ts";

const EMPTY = {
  version: 1,
  plan: "0000-0000",
  units: "in",
  lines: [],
  sheets: [],
  setups: [],
  totals: {
    lines: 0,
    clear: 0,
    check: 0,
    stop: 0,
    quoted: 0,
    pieces: 0,
    weight: 0,
    cost: null,
    price: null,
    finish: null,
    late: null,
    minimum: null,
    rush: null,
    crate: null,
    truck: null,
    tax: null,
    order: null,
  },
  not_checked: ["stock"],
};

describe("the schema of a bill", () => {
  it("takes a bill without lines", () => {
    expect(BILL_JSON.parse(EMPTY)).toEqual(EMPTY);
  });

  it.each<[string, object]>([
    ["not a number", { totals: { ...EMPTY.totals, cost: Number.NaN } }],
    ["endless", { totals: { ...EMPTY.totals, price: Number.POSITIVE_INFINITY } }],
    ["half a line", { totals: { ...EMPTY.totals, lines: 0.5 } }],
    ["a date with a zone", { totals: { ...EMPTY.totals, finish: "2026-03-02T07:00:00Z" } }],
    ["a key nobody knows", { extra: 1 }],
    ["another version", { version: 2 }],
    ["a table nobody knows", { not_checked: ["lathes"] }],
    ["a missing key", { plan: undefined }],
  ])("refuses %s", (_, changed) => {
    expect(BILL_JSON.safeParse({ ...EMPTY, ...changed }).success).toBe(false);
  });
});

describe("figures of JSON", () => {
  it("keep 15 digits, in the shop's own units", () => {
    expect(plain(0.1 + 0.2)).toBe(0.3);
    // 1 in = 25.4 mm, 1 lb = 0.45359237 kg, both by definition (NIST SP 811).
    expect(figureIn("in")(25.4 * 1.5, "length")).toBe(1.5);
    expect(figureIn("mm")(25.4 * 1.5, "length")).toBe(38.1);
    expect(figureIn("in")(0.45359237, "mass")).toBe(1);
  });

  it.each([
    // The worksheet's day 61 is 1 March 1900, and 36526 is 1 January 2000 (as spreadsheets count).
    [61, "1900-03-01T00:00:00"],
    [36526, "2000-01-01T00:00:00"],
    [46083 + 7.5 / 24, "2026-03-02T07:30:00"],
  ])("day %d is %s", (day, text) => {
    expect(isoTime(day * SECONDS_PER_DAY)).toBe(text);
  });

  it("text that nobody wrote is null", () => {
    expect([textOrNull(""), textOrNull(undefined), textOrNull("red")]).toEqual([null, null, "red"]);
  });
});
