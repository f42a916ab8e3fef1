import { describe, expect, it } from "vitest";
import { judged } from "./judge.ts";

describe("published answers, through the cell functions", () => {
  it.each(judged.map((each) => [each.row.id, each] as const))("%s", (_, { row, answer, misses }) => {
    const { expected, tolerance, source, basis } = row;
    const found = answer();
    expect(misses(), `${String(found)} against ${expected} within ${tolerance}, ${source} (${basis})`).toBe(false);
  });

  it("every answer names its source and stands once", () => {
    const rows = judged.map(({ row }) => row);
    expect(rows.filter(({ source }) => source.length < 8)).toEqual([]);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
  });
});
