import { expect, it } from "vitest";
import { dayAndTime, dayFrom, dayOfWeek, timeOfDay } from "../../src/bill/day.ts";
import { instant, SECONDS_PER_DAY } from "../../src/calc/schedule/calendar.ts";

const DAY_1970 = 25_569; // day number of the worksheet, from 1899-12-30
const WORDS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];

it("an instant is the day and the minute that the language's own calendar says, from 1900 to 2200", () => {
  for (let day = 2; day < 110_000; day += 13) {
    const at = instant(day * SECONDS_PER_DAY + ((day * 977) % 86_399));
    const date = new Date((at - DAY_1970 * SECONDS_PER_DAY) * 1000);
    expect(dayAndTime(at)).toBe(date.toISOString().slice(0, 16).replace("T", " "));
    expect(timeOfDay(at)).toBe(date.toISOString().slice(11, 16));
    expect(dayOfWeek(at)).toBe(`${WORDS[date.getUTCDay()]} ${date.toISOString().slice(0, 10)}`);
  }
});

it("an end at midnight has its hour, a day that something is due on is its end, and one that begins is the day alone", () => {
  const midnight = instant(46_084 * SECONDS_PER_DAY);
  expect([dayAndTime(midnight), dayAndTime(instant(midnight - 1)), dayFrom(midnight)]).toEqual([
    "2026-03-03 00:00",
    "2026-03-02",
    "2026-03-03",
  ]);
});
