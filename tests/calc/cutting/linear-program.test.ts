/** The linear program against an independent solver (HiGHS, as the `highs` package), on random programs from a seed. */
import loadHighs from "highs";
import { describe, expect, test } from "vitest";
import { LinearProgram } from "../../../src/calc/cutting/linear-program.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";

const highs = await loadHighs();
const never = () => false;

interface Case {
  readonly columns: { readonly rows: number[]; readonly gives: number[]; readonly cost: number }[];
  readonly right: Float64Array<ArrayBuffer>;
  readonly least: number;
}

/** Covering rows, then supply rows: the shape of a cutting plan, with a column that alone can fill each row. */
function randomCase(seed: number): Case {
  const unit = randomFrom(seed);
  const least = 3 + Math.floor(unit() * 15);
  const limited = Math.floor(unit() * 3);
  const columns = Array.from({ length: least * 4 }, (_, k) => {
    const rows = k < least ? [k] : [...new Set(Array.from({ length: 4 }, () => Math.floor(unit() * least)))];
    const supply = limited > 0 && k >= least ? [least + Math.floor(unit() * limited)] : [];
    return {
      rows: [...rows, ...supply],
      gives: [...rows.map(() => 1 + Math.floor(unit() * 5)), ...supply.map(() => 1)],
      cost: 1 + Math.floor(unit() * 20),
    };
  });
  return { columns, right: rightOf(least, limited, unit), least };
}

const rightOf = (least: number, limited: number, unit: () => number): Float64Array<ArrayBuffer> =>
  Float64Array.from({ length: least + limited }, (_, r) =>
    r < least ? Math.floor(unit() * 30) : Math.floor(unit() * 10),
  );

function theirs({ columns, right, least }: Case): number {
  const name = (k: number) => `x${k}`;
  const rows = [...right].map((wanted, r) => {
    const terms = columns.flatMap(({ rows, gives }, k) =>
      rows.flatMap((row, n) => (row === r ? [`${gives[n]} ${name(k)}`] : [])),
    );
    return terms.length === 0 ? "" : ` r${r}: ${terms.join(" + ")} ${r < least ? ">=" : "<="} ${wanted}`;
  });
  const objective = columns.map(({ cost }, k) => `${cost} ${name(k)}`).join(" + ");
  const answer = highs.solve(`Minimize\n obj: ${objective}\nSubject To\n${rows.filter(Boolean).join("\n")}\nEnd`);
  expect(answer.Status).toBe("Optimal");
  return answer.ObjectiveValue;
}

describe("the linear program over patterns", () => {
  test.each(Array.from({ length: 60 }, (_, k) => k + 1))("random program %i has the cost that HiGHS finds", (seed) => {
    const given = randomCase(seed);
    const program = new LinearProgram(given.right, given.least, 1e4);
    for (const { rows, gives, cost } of given.columns) program.add(rows, gives, cost);
    program.solve(never);
    expect(program.cost).toBeCloseTo(theirs(given), 5);
    // Strong duality: what the columns in use cost, and not only what the prices are worth.
    let used = 0;
    program.each((column, amount) => {
      used += amount * given.columns[column - program.own]!.cost;
    });
    expect(used).toBeCloseTo(program.cost, 1);
  });

  test.each(Array.from({ length: 40 }, (_, k) => k + 100))(
    "and still does after its right side changed, %i",
    (seed) => {
      const given = randomCase(seed);
      const program = new LinearProgram(given.right, given.least, 1e4);
      for (const { rows, gives, cost } of given.columns) program.add(rows, gives, cost);
      program.solve(never);
      const right = rightOf(given.least, given.right.length - given.least, randomFrom(seed + 1));
      program.change(right, never);
      program.solve(never);
      expect(program.cost).toBeCloseTo(theirs({ ...given, right }), 5);
    },
  );

  test("says what a row lacks that no column fills", () => {
    const program = new LinearProgram(Float64Array.of(3, 2), 2, 100);
    program.add([0], [1], 5);
    program.solve(never);
    expect(program.cost).toBe(3 * 5 + 2 * 100);
  });
});
