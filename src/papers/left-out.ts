/** Lines that a list leaves out, each with the reason. */
import type { LineAnswer } from "../bill/plan.ts";
import { notMadeSays } from "../bill/says.ts";
import type { UnitSystem } from "../units/system.ts";
import { partSays } from "./line-words.ts";
import { table } from "./page.ts";

export const leftOut = (lines: readonly LineAnswer[], system: UnitSystem): string =>
  lines.length === 0
    ? ""
    : table(
        [{ title: "Part", short: true }, { title: "Why" }],
        lines.map((line) => [partSays(line), notMadeSays(line.findings, system)]),
        "tight",
      );
