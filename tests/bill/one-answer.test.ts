/**
 * One bill, one answer: whatever shows a bill says the same about it. Bills and shops by chance; what each view says is
 * read as a person reads it, from its cells, and held against the others.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LONGEST_SENTENCE } from "../../src/bill/says.ts";
import { contradictions, type Views } from "./contradictions.ts";
import { billArbitrary, type RandomBill } from "./random-bill.ts";
import { ask, NAMES } from "./views.ts";

const RUNS = { numRuns: 120, seed: 20261128 };
const LONG = 600_000;

const contradictionsIn = (bill: RandomBill): string[] =>
  contradictions(Object.fromEntries(NAMES.map((name) => [name, ask(name, bill)])) as unknown as Views, {
    lines: bill.bill.length - 1,
    hasStock: "stock" in bill.tables,
  });

describe("one bill, one answer", () => {
  it("holds in every view of 120 random bills and shops", { timeout: LONG }, () => {
    fc.assert(
      fc.property(billArbitrary, (bill) => {
        expect(contradictionsIn(bill)).toEqual([]);
      }),
      RUNS,
    );
  });

  it("does not depend on the order of lines and tables, nor on asking again", { timeout: LONG }, () => {
    fc.assert(
      fc.property(billArbitrary, fc.infiniteStream(fc.nat()), (bill, chance) => {
        const shuffled = <T>(list: readonly T[]): T[] =>
          list
            .map((item) => ({ item, at: chance.next().value as number }))
            .sort((a, b) => a.at - b.at)
            .map(({ item }) => item);
        const { bill: lines, tables } = bill;
        const mixed: RandomBill = {
          bill: [lines[0]!, ...shuffled(lines.slice(1))],
          tables: Object.fromEntries(
            Object.entries(tables).map(([name, [header, ...rest]]) => [
              name,
              [header!, ...(name === "calendar" || name === "job" ? rest : shuffled(rest))],
            ]),
          ),
        };
        const said = (name: string, from: RandomBill) => {
          const answer = ask(name, from);
          // Lines of one content may stand in any order, and so may the rows about them.
          if (typeof answer === "string") return answer;
          return answer.map(({ Run: _, ...row }) => unplaced(JSON.stringify(row))).sort();
        };
        for (const name of ["BILL.CHECK", "BILL.PRICE", "BILL.TIMES", "BILL.SHEETS", "BILL.WHATIF"])
          expect(said(name, mixed), name).toEqual(said(name, bill));
        expect(said("BILL.PRICE", bill)).toEqual(said("BILL.PRICE", bill));
      }),
      { ...RUNS, numRuns: 30 },
    );
  });

  it("says each finding in one sentence of at most 120 characters", { timeout: LONG }, () => {
    fc.assert(
      fc.property(billArbitrary, (bill) => {
        const answer = ask("BILL.CHECK", bill);
        for (const row of typeof answer === "string" ? [] : answer)
          for (const sentence of String(row["Sentence"]).split(/(?<=\.) (?=[A-Z0-9])/))
            expect(sentence.length, sentence).toBeLessThanOrEqual(LONGEST_SENTENCE);
      }),
      { ...RUNS, numRuns: 40 },
    );
  });
});

/** A refusal names the line's place in the bill, which is another one when the lines stand otherwise. */
const unplaced = (row: string) => row.replace(/line \d+(?: \(row \d+ of the range\))?/g, "line");
