import { describe, expect, it } from "vitest";
import { type Measured, resultsPage } from "../../../src/tools/bench/results-page.ts";
import { medianOf, spreadOf } from "../../../src/tools/bench/spread.ts";

describe("the median", () => {
  it("is the middle one, or between the two in the middle", () => {
    expect(medianOf([3, 1, 2])).toBe(2);
    expect(medianOf([4, 1, 2, 3])).toBe(2.5);
    expect(spreadOf([5, 1, 3])).toEqual({ median: 3, least: 1, most: 5 });
  });
});

describe("the page of results", () => {
  const machine = {
    processor: "an invented processor",
    cores: 2,
    gigabytes: 8,
    system: "linux 1",
    node: "v20",
    version: "0.1.0",
    load: 0.5,
    date: "2026-11-25",
  };
  const row = (what: string, size: string, ms: number): Measured => ({
    what,
    size,
    unit: "ms",
    runs: 3,
    spread: { median: ms, least: ms - 1, most: ms + 1 },
  });

  it("shows growth only between two sizes of the same thing", () => {
    const page = resultsPage(machine, [row("a", "10", 10), row("a", "100", 120), row("b", "1", 5)], [], []);
    expect(page).toContain("| a | 100 | 120 ms | 119 to 121 | 3 | 12.0 |");
    expect(page).toContain("| b | 1 | 5.00 ms | 4.00 to 6.00 | 3 |  |");
    expect(page).toContain("an invented processor, 2 cores");
  });

  it("says what was not measured", () => {
    const page = resultsPage(machine, [{ what: "a", size: "1", unit: "ms", runs: 0 }], [], []);
    expect(page).toContain("| a | 1 | not measured |  | 0 |  |");
    expect(page).toContain("`npm run build` has not been run");
  });
});
