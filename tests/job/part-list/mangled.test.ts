import { describe, expect, it } from "vitest";
import { isLine } from "../../../src/bill/nouns/line.ts";
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { rowsOfFile } from "../../../src/job/part-list/list-file.ts";
import { partRows, readPartList } from "../../../src/job/part-list/part-list.ts";
import { randomFrom } from "../../../src/tools/random/random.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import { mangledList, type TrueLine } from "./mangled-list.ts";

const LISTS = 2_000;
const SEED = Number(process.env["SEED"] ?? 21);

describe(`${LISTS} mangled part lists against the lines they were made from`, () => {
  const context = { system: "in", materials: currentMaterials(), material: undefined } as const;
  const counts = { refused: 0, asked: 0, taken: 0 };
  const wrong: string[] = [];

  for (let i = 0; i < LISTS; i++) {
    const { bytes, lines, how } = mangledList(randomFrom(SEED * 100_000 + i));
    try {
      const list = readPartList(rowsOfFile(bytes).rows, {}, context);
      const rows = partRows(list, context);
      const byPart = new Map(lines.map((line) => [line.part, line]));
      if (rows.length !== lines.length) wrong.push(`list ${i}: ${rows.length} lines for ${lines.length}\n${how}`);
      for (const row of rows) {
        if (!isLine(row)) {
          counts.asked++;
          continue;
        }
        counts.taken++;
        const truth = byPart.get(row.part);
        const found: TrueLine = {
          part: row.part,
          quantity: row.quantity,
          material: row.material.name,
          thickness: row.nominal,
          width: row.width ?? 0,
          flanges: row.main.flanges,
        };
        if (!truth || !isSame(found, truth))
          wrong.push(`list ${i}: ${JSON.stringify(found)} for ${JSON.stringify(truth)}\n${how}`);
      }
    } catch (problem) {
      if (!(problem instanceof Refusal)) throw problem;
      counts.refused++;
    }
  }

  it("misreads none silently", () => {
    expect(wrong.slice(0, 3).join("\n\n")).toBe("");
  });

  it("takes most lines all the same: to ask about everything would not be reading", () => {
    const lines = counts.taken + counts.asked;
    expect(counts.taken / lines).toBeGreaterThan(0.6);
    expect(counts.asked).toBeGreaterThan(100);
    expect(counts.refused).toBeLessThan(LISTS / 20);
    if (process.env["SHOW"]) console.info(counts);
  });
});

/** A gauge is written to ten-thousandths of an inch, a fixed format to thousandths. */
const near = (a: number, b: number): boolean => Math.abs(a - b) <= 0.013 + b * 1e-9;
const isSame = (a: TrueLine, b: TrueLine): boolean =>
  a.quantity === b.quantity &&
  a.material === b.material &&
  near(a.thickness, b.thickness) &&
  near(a.width, b.width) &&
  a.flanges.length === b.flanges.length &&
  a.flanges.every((flange, i) => near(flange, b.flanges[i]!));
