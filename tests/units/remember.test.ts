/** What is remembered is remembered by content, refusals too, and never by which array or object it was. */
import { describe, expect, it } from "vitest";
import { Refusal } from "../../src/units/refusal.ts";
import { refusalOr, remember } from "../../src/units/remember.ts";

function counted<T>(most: number, answer: (...inputs: readonly unknown[]) => T) {
  const asked: unknown[][] = [];
  const ask = remember(most, (...inputs: readonly unknown[]): T => {
    asked.push([...inputs]);
    return answer(...inputs);
  });
  return { ask, asked };
}

describe("remember", () => {
  it("tables with the same cells are one question, whoever made them", () => {
    const { ask, asked } = counted(4, (table) => ({ rows: (table as unknown[]).length }));
    const first = ask([
      [1, "a"],
      [2, "b"],
    ]);
    expect(
      ask([
        [1, "a"],
        [2, "b"],
      ]),
    ).toBe(first);
    expect(asked).toHaveLength(1);
    expect(
      ask([
        [1, "a"],
        [2, "c"],
      ]),
    ).not.toBe(first);
    expect(asked).toHaveLength(2);
  });

  it("the same array is not the same question when it says something else elsewhere", () => {
    const { ask, asked } = counted(4, (...inputs) => inputs.length);
    const table = [1];
    ask(table, "in");
    ask(table, "mm");
    ask([1], "in");
    expect(asked).toHaveLength(2);
  });

  it("a refusal is an answer that is remembered, and is thrown again", () => {
    const { ask, asked } = counted(4, () => {
      throw new Refusal("#N/A", "die must be there; got none");
    });
    const refused = () => refusalOr(() => ask(1));
    expect(refused()).toBeInstanceOf(Refusal);
    expect(refused()).toBe(refused());
    expect(asked).toHaveLength(1);
  });

  it("any other fault is not an answer: it is thrown, and the question is asked again", () => {
    const { ask, asked } = counted(4, () => {
      throw new Error("ours");
    });
    expect(() => ask(1)).toThrow("ours");
    expect(() => ask(1)).toThrow("ours");
    expect(asked).toHaveLength(2);
    expect(() => refusalOr(() => ask(1))).toThrow("ours");
  });

  it("an answer of nothing is remembered as well", () => {
    const { ask, asked } = counted(4, () => undefined);
    ask(1);
    ask(1);
    expect(asked).toHaveLength(1);
  });

  it("keeps as many as it may, those used last", () => {
    const { ask, asked } = counted(2, (n) => n);
    for (const n of [1, 2, 1, 3, 1, 2]) ask(n);
    expect(asked.map(([n]) => n)).toEqual([1, 2, 3, 2]);
  });
});
