import { describe, expect, it } from "vitest";
import { wrapped } from "../../../src/hosts/command-line/wrapped.ts";

describe("wrapping", () => {
  it.each<[string, number, number, string[]]>([
    ["one two three", 7, 0, ["one two", "three"]],
    ["one two three", 20, 4, ["one two three"]],
    ["A   one two three", 11, 4, ["A   one two", "    three"]],
    ["incomprehensible", 6, 2, ["incomp", "  rehe", "  nsib", "  le"]],
    ["A   incomprehensible", 10, 4, ["A   incomp", "    rehens", "    ible"]],
    ["", 5, 2, [""]],
  ])("%j in %i columns, then from column %i", (text, width, indent, rows) => {
    expect(wrapped(text, width, indent)).toEqual(rows);
    for (const row of rows) expect(row.length).toBeLessThanOrEqual(width);
  });
});
