/** The fewest sets against every subset tried, and against the integer program solved by HiGHS. */
import fc from "fast-check";
import loadHighs from "highs";
import { describe, expect, it } from "vitest";
import { fewestSets, type SetOption } from "../../../src/calc/time/fewest-sets.ts";

const option = fc.record({ key: fc.constantFrom(..."ABCDEFGH"), dislike: fc.integer({ min: 0, max: 9 }) });
const job = fc.uniqueArray(option, { selector: ({ key }) => key, minLength: 1, maxLength: 5 });

/** Least number of sets and, of those, least dislike, over all subsets. */
function byTrial(jobs: readonly (readonly SetOption[])[]): { count: number; dislike: number } {
  const keys = [..."ABCDEFGH"];
  let best = { count: Infinity, dislike: Infinity };
  for (let bits = 0; bits < 1 << keys.length; bits++) {
    const some = keys.filter((_, i) => bits & (1 << i));
    const costs = jobs.map((options) =>
      Math.min(...options.filter(({ key }) => some.includes(key)).map(({ dislike }) => dislike)),
    );
    const dislike = costs.reduce((sum, cost) => sum + cost, 0);
    if (dislike === Infinity) continue;
    if (some.length < best.count || (some.length === best.count && dislike < best.dislike))
      best = { count: some.length, dislike };
  }
  return best;
}

const dislikeOf = (jobs: readonly (readonly SetOption[])[], keys: ReadonlySet<string>): number =>
  jobs.reduce(
    (sum, options) => sum + Math.min(...options.filter(({ key }) => keys.has(key)).map(({ dislike }) => dislike)),
    0,
  );

describe("the fewest sets", () => {
  it("are as few, and as well liked, as any subset", () => {
    fc.assert(
      fc.property(fc.array(job, { minLength: 1, maxLength: 10 }), (jobs) => {
        const { keys, proved } = fewestSets(jobs);
        expect(proved).toBe(true);
        expect({ count: keys.size, dislike: dislikeOf(jobs, keys) }).toEqual(byTrial(jobs));
      }),
      { numRuns: 300 },
    );
  });

  it("agree with an integer program on a bill of 100 lines over 40 pairs", async () => {
    const highs = await loadHighs();
    let seed = 7;
    const random = (below: number) => {
      seed = (seed * 48271) % 2147483647;
      return seed % below;
    };
    const jobs = Array.from({ length: 100 }, () => {
      const first = random(36);
      return Array.from({ length: 1 + random(5) }, (_, i) => ({ key: `s${first + i}`, dislike: 0 }));
    });
    const names = [...new Set(jobs.flat().map(({ key }) => key))];
    const program = [
      "Minimize",
      ` all: ${names.join(" + ")}`,
      "Subject To",
      ...jobs.map((options, i) => ` c${i}: ${options.map(({ key }) => key).join(" + ")} >= 1`),
      "Binary",
      ` ${names.join(" ")}`,
      "End",
    ].join("\n");
    expect(fewestSets(jobs).keys.size).toBe(highs.solve(program).ObjectiveValue);
  });

  it("of too many choices are a quick answer that does every job and says that it is not proved", () => {
    let seed = 3;
    const random = (below: number) => {
      seed = (seed * 48271) % 2147483647;
      return seed % below;
    };
    const jobs = Array.from({ length: 400 }, () =>
      [...new Set(Array.from({ length: 6 }, () => random(120)))].map((n) => ({ key: `s${n}`, dislike: n })),
    );
    const { keys, proved } = fewestSets(jobs);
    expect(proved).toBe(false);
    expect(jobs.every((options) => options.some(({ key }) => keys.has(key)))).toBe(true);
    expect(keys.size).toBeLessThan(60);
  });

  it("a job without options asks for nothing", () => {
    expect(fewestSets([[], []])).toEqual({ keys: new Set(), proved: true });
  });
});
