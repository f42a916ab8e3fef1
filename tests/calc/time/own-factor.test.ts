/** The shop's own factor on estimated minutes, from finished jobs. */
import { describe, expect, it } from "vitest";
import { shrunkMean } from "../../../src/calc/shrunk-mean.ts";
import { ownFactors } from "../../../src/calc/time/own-factor.ts";
import { seconds } from "../../../src/calc/time/seconds.ts";
import type { Working } from "../../../src/units/working.ts";

describe("the mean of measurements and a prior", () => {
  it("is that of the textbook: a rock of 370 +- 20 million years, measured at 421 +- 8", () => {
    // Lee, Bayesian Statistics: An Introduction, section 2.2, the Ennerdale granophyre: about 413 with a deviation of 7
    // (memory, unverified). By hand: (370/400 + 421/64) / (1/400 + 1/64) = 413.97, deviation 7.43.
    const { value, deviation } = shrunkMean([{ value: 421, deviation: 8 }], { value: 370, deviation: 20 });
    expect(Math.abs(value - 413)).toBeLessThan(1);
    expect(Math.floor(deviation)).toBe(7);
    expect(value).toBeCloseTo((370 / 400 + 421 / 64) / (1 / 400 + 1 / 64), 9);
  });
  it("without measurements is the prior, and lies nearer to the surer one", () => {
    expect(shrunkMean([], { value: 3, deviation: 2 })).toEqual({ value: 3, deviation: 2 });
    expect(shrunkMean([{ value: 1, deviation: 1 }], { value: 0, deviation: 1 }).value).toBeCloseTo(0.5, 12);
  });
});

const jobs = (...recorded: number[]) =>
  recorded.map((minutes, i) => ({
    ...{ station: i % 2 === 0 ? "Brake" : "brake", part: `P${i}` },
    ...{ estimated: seconds(3600), recorded: seconds(60 * minutes) },
  }));

describe("a station's factor", () => {
  it("by hand: three jobs that all took a quarter longer", () => {
    // 3 / 0.35^2 = 24.49 against 1 / 0.2^2 = 25: 0.4949 of ln 1.25.
    const weight = 3 / 0.35 ** 2 / (3 / 0.35 ** 2 + 25);
    const [found] = ownFactors(jobs(75, 75, 75));
    expect(found).toMatchObject({ station: "Brake", jobs: 3, isFew: false, outliers: [], spread: 0 });
    expect(found!.factor).toBeCloseTo(1.25 ** weight, 12);
    expect(found!.low).toBeLessThan(found!.factor);
    expect(found!.high).toBeGreaterThan(found!.factor);
  });
  it("below three jobs there is none, and that is said", () => {
    expect(ownFactors(jobs(75, 75))[0]).toMatchObject({ jobs: 2, factor: 1, isFew: true });
    const work: Working = [];
    ownFactors(jobs(75), work);
    expect(work.at(-1)!.meaning).toBe("Brake: fewer than 3 jobs, no factor yet");
  });
  it("a job that took five times its estimate is left out and named", () => {
    const [found] = ownFactors(jobs(60, 66, 54, 63, 57, 300));
    expect(found!.outliers).toEqual([{ place: 6, part: "P5", ratio: expect.closeTo(5, 9) }]);
    expect(found!.jobs).toBe(5);
    expect(found!.factor).toBeCloseTo(ownFactors(jobs(60, 66, 54, 63, 57))[0]!.factor, 12);
  });
  it("the spread is the sample's own", () => {
    expect(ownFactors(jobs(60, 72, 84))[0]!.spread).toBeCloseTo(0.2, 12);
  });
  it("stations are kept apart", () => {
    const mixed = [...jobs(75, 75, 75), ...jobs(50, 50, 50).map((job) => ({ ...job, station: "Shear" }))];
    expect(ownFactors(mixed).map(({ station, factor }) => [station, factor > 1])).toEqual([
      ["Brake", true],
      ["Shear", false],
    ]);
  });
});
