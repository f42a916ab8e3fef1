/** A part list as this project reads it, in a few lines that a person can check against the list itself. */
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { titleOf } from "../../../src/job/part-list/heading-words.ts";
import { rowsOfFile } from "../../../src/job/part-list/list-file.ts";
import { readPartList } from "../../../src/job/part-list/part-list.ts";
import { Refusal } from "../../../src/units/refusal.ts";
import type { UglyList } from "./ugly-lists.ts";

const context = { system: "in", materials: currentMaterials(), material: undefined } as const;

export function shownAs({ text, options = {} }: UglyList): string[] {
  try {
    const bytes = typeof text === "string" ? new TextEncoder().encode(text) : text;
    const { columns, leftOut, faults, cells } = readPartList(rowsOfFile(bytes).rows, options, context);
    return [
      columns
        .map(({ letter, read }) => `${letter}=${read ? titleOf(read.key) : "-"}${read?.unit ? ` ${read.unit}` : ""}`)
        .join(", "),
      ...leftOut.map(({ row, words }) => `row ${row} left out: ${words}`),
      ...faults.map(({ row, column, given, kind }) => `${column}${row} ${JSON.stringify(given)}: ${kind}`),
      ...cells
        .filter((row) => row.some((cell) => cell !== null))
        .map((row) => row.map((cell) => cell ?? "").join(" | ")),
    ];
  } catch (problem) {
    if (!(problem instanceof Refusal)) throw problem;
    return [`refused: ${problem.message}`];
  }
}
