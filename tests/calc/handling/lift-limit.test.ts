import { describe, expect, it } from "vitest";
import { type Lift, liftLimit } from "../../../src/calc/handling/lift-limit.ts";
import { degrees, hours, mm } from "../../../src/units/quantity.ts";
import type { Refusal } from "../../../src/units/refusal.ts";

const inch = (value: number) => mm(value * 25.4);
const best: Lift = {
  horizontal: inch(10),
  vertical: inch(30),
  travel: inch(10),
  asymmetry: degrees(0),
  liftsPerMinute: 0.2,
  coupling: "good",
  hours: hours(1),
};
const limit = (change: Partial<Lift>) => liftLimit({ ...best, ...change });

/** NIOSH 94-110: the rules of the manual's text (memory). */
describe("lifting limit", () => {
  it("a nearer reach and a shorter travel count as 10 in", () => {
    expect(limit({ horizontal: inch(5) })).toBe(liftLimit(best));
    expect(limit({ travel: inch(0) })).toBe(liftLimit(best));
  });

  it("rarer than once in five minutes counts as 0.2 a minute", () => {
    expect(limit({ liftsPerMinute: 0 })).toBe(liftLimit(best));
  });

  it("nothing raises it above the best posture's", () => {
    for (const change of [
      { horizontal: inch(20) },
      { vertical: inch(0) },
      { vertical: inch(60) },
      { travel: inch(40) },
      { asymmetry: degrees(60) },
      { liftsPerMinute: 5 },
      { coupling: "poor" as const },
      { hours: hours(8) },
    ])
      expect(limit(change)).toBeLessThan(liftLimit(best));
  });

  it("hours go by the table's columns: up to 1, up to 2, more", () => {
    const of = (h: number) => limit({ liftsPerMinute: 4, hours: hours(h) });
    expect(of(0.5)).toBe(of(1));
    expect(of(1.5)).toBe(of(2));
    expect(of(3)).toBe(of(8));
    expect(of(1)).toBeGreaterThan(of(2));
    expect(of(2)).toBeGreaterThan(of(8));
  });

  it.each([
    ["horizontal", { horizontal: inch(25.1) }],
    ["vertical", { vertical: inch(70.1) }],
    ["travel", { travel: inch(70.1) }],
    ["asymmetry", { asymmetry: degrees(135.1) }],
    ["lifts_per_minute", { liftsPerMinute: 15.1 }],
  ])("outside the equation's range %s has no answer", (name, change) => {
    try {
      limit(change);
      expect.unreachable();
    } catch (refusal) {
      expect((refusal as Refusal).code).toBe("#N/A");
      expect((refusal as Refusal).message.startsWith(`${name} must be at most`)).toBe(true);
    }
  });

  it("says where the equation ends in both units", () => {
    expect(() => limit({ liftsPerMinute: 99 })).toThrow(/^lifts_per_minute must be at most 15; got 99/);
    expect(() => limit({ horizontal: inch(26) })).toThrow(
      "horizontal must be at most 25 in (635 mm), the equation's end; got 26 in",
    );
  });
});
