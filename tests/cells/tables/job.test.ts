/** The job's table: what is misspelled in it must not vanish. */
import { describe, expect, it } from "vitest";
import { currentMaterials } from "../../../src/cells/parameters/read-data.ts";
import { readJob } from "../../../src/cells/tables/job.ts";
import type { CellValue } from "../../../src/units/cell.ts";

const read = (...rows: [string, CellValue][]) =>
  readJob([["Job", "Entry"], ...rows], "job", { system: "in", materials: currentMaterials(), material: undefined });

describe("entries of the job", () => {
  it("are found by their names, whatever the case", () => {
    const { isRush, areas, areaDues } = read(
      ["PACE", "rush"],
      ["Areas", "Tower; Deck"],
      ["Must leave by tower", "2026-05-21 12:00"],
      ["Due Deck", null],
    );
    expect([isRush, areas, areaDues.map(({ area }) => area)]).toEqual([true, ["Tower", "Deck"], ["tower"]]);
  });

  it.each<[what: string, rows: [string, CellValue][], says: RegExp]>([
    [
      "a misspelled name",
      [["Pase", "rush"]],
      /^job row 2 must be an entry of the job by its name, such as .*; got "Pase"; nearest is "Pace"$/,
    ],
    ["a name that is nothing like one", [["Foreman", "Max"]], /; got "Foreman"$/],
    [
      "the time of an area that is none",
      [
        ["Areas", "Tower; Deck"],
        ["Must leave by Towr", "2026-05-21"],
      ],
      /^job row 3 "Must leave by Towr" must be for an area of the job: Tower; Deck; got "Towr"; nearest is "Tower"$/,
    ],
  ])("refuses %s", (_, rows, says) => {
    expect(() => read(...rows)).toThrow(says);
  });

  it("a misspelled name beside nothing is no entry", () => {
    expect(read(["Pase", null]).isRush).toBe(false);
  });
});
