/** The truth table is what this run finds; `npm test -- tests/tools/truth -u` writes it anew. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { RECORDS } from "../../src/cells/catalogue.ts";
import { root } from "../house-rules/sources.ts";
import { judged } from "../reference/judge.ts";
import { type Evidence, truthTable } from "./truth-table.ts";
import { topicsOf } from "./truth-topics.ts";

const namesIn = (formula: string): string[] => [...formula.matchAll(/SHOP\.([A-Z.]+)\(/g)].map(([, name]) => name!);

const evidence = judged.map(
  ({ row, misses }): Evidence => ({
    names: "formula" in row ? namesIn(row.formula) : [row.call[0]],
    basis: row.basis,
    held: !misses(),
  }),
);

const table = truthTable({
  records: RECORDS,
  evidence,
  topicsOf: (name) => topicsOf(root, name),
  mutation: JSON.parse(readFileSync(`${root}/tests/recorded/mutation.json`, "utf8")),
});

it("is fresh", async () => {
  await expect(table, "npm test -- tests/tools/truth -u writes the truth table anew").toMatchFileSnapshot(
    `${root}/tests/recorded/truth-table.md`,
  );
});

it("names every function once and counts what held", () => {
  for (const { name } of RECORDS) expect(table.split(`| ${name} |`), name).toHaveLength(2);
  const [first] = RECORDS;
  const one = (held: boolean) =>
    truthTable({
      records: [first!],
      evidence: [{ names: [first!.name], basis: "read", held }],
      topicsOf: () => ["calc/x"],
      mutation: { "calc/x": { noticed: 9, survived: 1, explained: 0 } },
    });
  expect(one(true)).toContain("| 1 |  |  | held | 90 % |");
  expect(one(false)).toContain("| 1 missed | 90 % |");
});

it("a function that nothing from outside speaks for says none", () => {
  const alone = truthTable({ records: RECORDS, evidence: [], topicsOf: () => [], mutation: {} });
  expect(alone).toContain("| none | no arithmetic |");
});
