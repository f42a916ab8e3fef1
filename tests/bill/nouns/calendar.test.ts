/** Which shifts a station has, and who is there: worked by hand from a calendar's rows. */
import { describe, expect, it } from "vitest";
import { type CalendarRow, calendarOf, peopleOn } from "../../../src/bill/nouns/calendar.ts";
import { shiftsOf } from "../../../src/calc/schedule/calendar.ts";

const H = 3600;
/** 2 March 2026 is a Monday: day 46083 of a worksheet. */
const MONDAY = 46_083;
const on = (weekday: number, from: number, to: number, more: Partial<CalendarRow> = {}): CalendarRow => ({
  day: { weekday },
  shift: { from: from * H, to: to * H },
  station: undefined,
  ...more,
});
const dated = (date: number, shift: [number, number] | undefined, more: Partial<CalendarRow> = {}): CalendarRow => ({
  day: { date },
  shift: shift && { from: shift[0] * H, to: shift[1] * H },
  station: undefined,
  ...more,
});
const hours = (rows: readonly CalendarRow[], day: number, station?: string) =>
  shiftsOf(calendarOf(rows, station), day).map(({ from, to }) => [from / H, to / H]);

describe("the calendar of a station", () => {
  const rows = [on(1, 13, 17), on(1, 7, 12), on(2, 7, 15), on(6, 8, 12, { station: "Brake" })];
  it("is the shop's where it has no days of its own: each day's shifts in order, none on other days", () => {
    for (const station of [undefined, "Shear"]) {
      expect(hours(rows, MONDAY, station)).toEqual([
        [7, 12],
        [13, 17],
      ]);
      expect(hours(rows, MONDAY + 1, station)).toEqual([[7, 15]]);
      expect(hours(rows, MONDAY + 2, station)).toEqual([]);
      expect(hours(rows, MONDAY + 5, station)).toEqual([]);
    }
  });
  it("is its own week alone where it has one, in whatever letters its name is written", () => {
    expect(hours(rows, MONDAY + 5, "BRAKE")).toEqual([[8, 12]]);
    expect(hours(rows, MONDAY, "brake")).toEqual([]);
  });
  it("is closed on the shop's holidays, unless it has shifts of its own on that day", () => {
    const holiday = [...rows, dated(MONDAY, undefined)];
    expect(hours(holiday, MONDAY)).toEqual([]);
    expect(hours(holiday, MONDAY + 7)).toHaveLength(2);
    const own = [dated(MONDAY, [9, 11], { station: "Shear" }), ...holiday, dated(MONDAY, [6, 8], { station: "Shear" })];
    expect(hours(own, MONDAY, "Shear")).toEqual([
      [6, 8],
      [9, 11],
    ]);
    expect(hours(own, MONDAY, "Drill")).toEqual([]);
    // A day of its own is no week of its own: on others it keeps the shop's.
    expect(hours(own, MONDAY + 1, "Shear")).toEqual([[7, 15]]);
  });
  it("of one day that differs has that day's shifts and its week's on all others", () => {
    const short = [...rows, dated(MONDAY + 1, [7, 11])];
    expect(hours(short, MONDAY + 1)).toEqual([[7, 11]]);
    expect(hours(short, MONDAY + 8)).toEqual([[7, 15]]);
    expect(hours(short, MONDAY)).toHaveLength(2);
  });
});

describe("who is there", () => {
  const people = (rows: readonly CalendarRow[], day: number) =>
    peopleOn(rows, day).map((span) => [(span.from - day * 86_400) / H, span.people]);
  it("is said by the shifts of the shop, together where they overlap; nobody says so between them", () => {
    const rows = [on(1, 7, 15, { people: 3 }), on(1, 12, 20, { people: 2 })];
    expect(people(rows, MONDAY)).toEqual([
      [0, Infinity],
      [7, 3],
      [12, 5],
      [15, 2],
      [20, Infinity],
    ]);
    expect(people(rows, MONDAY + 1)).toEqual([[0, Infinity]]);
  });
  it("is not known in a shift without a number", () => {
    expect(people([on(1, 7, 15)], MONDAY).map(([, count]) => count)).toEqual([Infinity, Infinity, Infinity]);
  });
  it("of a night shift is there past midnight, until the shift ends", () => {
    const rows = [on(1, 22, 30, { people: 2 })];
    expect(people(rows, MONDAY)).toEqual([
      [0, Infinity],
      [22, 2],
    ]);
    expect(people(rows, MONDAY + 1)).toEqual([
      [0, 2],
      [6, Infinity],
    ]);
  });
  it("is whom the stations have that work alone, where the shop does not work", () => {
    const rows = [on(1, 7, 15, { people: 3 }), on(1, 6, 17, { people: 1, station: "Brake" })];
    expect(people(rows, MONDAY)).toEqual([
      [0, Infinity],
      [6, 1],
      [7, 3],
      [15, 1],
      [17, Infinity],
    ]);
  });
  it("goes by the day's own rows where a date differs, and a station's week stays", () => {
    const rows = [
      on(1, 7, 15, { people: 3 }),
      on(1, 9, 10, { people: 1, station: "Brake" }),
      dated(MONDAY, [8, 12], { people: 2 }),
    ];
    expect(people(rows, MONDAY)).toEqual(
      [
        [0, Infinity],
        [8, 2],
        [12, Infinity],
      ].flatMap((span) =>
        span[0] === 8
          ? [
              [8, 2],
              [9, 2],
              [10, 2],
            ]
          : [span],
      ),
    );
    expect(people(rows, MONDAY + 7)[1]).toEqual([7, 3]);
    const ownDay = [on(1, 7, 15, { people: 3 }), dated(MONDAY, [16, 18], { people: 1, station: "Brake" })];
    expect(people(ownDay, MONDAY)).toEqual([
      [0, Infinity],
      [7, 3],
      [15, Infinity],
      [16, 1],
      [18, Infinity],
    ]);
    const holiday = [on(1, 7, 15, { people: 3 }), dated(MONDAY, undefined)];
    expect(people(holiday, MONDAY)).toEqual([[0, Infinity]]);
  });
});
