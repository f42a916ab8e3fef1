import { describe, expect, it } from "vitest";
import { readMarks } from "../../../src/cells/tables/marks.ts";
import { CellError, type CellValue } from "../../../src/units/cell.ts";

const read = (...rows: CellValue[][]) => readMarks([["Part", "Done", "Started", "Pinned"], ...rows], "bill", 4);

describe("marks of the floor", () => {
  it("are stations, with a time where one is asked for", () => {
    const { marks, faults } = read(
      ["A", "yes", null, null],
      ["B", "Shear; Deburr", "Brake 2 2026-03-02 07:00", "Weld 2026-03-03"],
    );
    expect(faults).toEqual([]);
    expect(marks.get(2)!.isDone).toBe(true);
    const day = 46_083 * 86_400; // 2 March 2026
    expect(marks.get(3)).toEqual({
      isDone: false,
      done: ["Shear", "Deburr"],
      started: [{ station: "Brake 2", at: day + 7 * 3600 }],
      pins: [{ station: "Weld", at: day + 86_400 }],
    });
  });

  it("that nobody understands are named by row and column; the others of the same line count", () => {
    const { marks, faults } = read(
      ["A", new CellError("#N/A", ""), "Shear", "Brake"],
      ["B", "Shear", "Brake at 7:30", "Brake 2026-03-02 07:00; Weld soon"],
    );
    expect(faults).toEqual([
      'bill row 6 column "Done" must be a value; got #N/A',
      'bill row 7 column "Started" must be a station and a time, such as "Brake 2026-05-18 06:30"; got "Brake at 7:30"; this mark is left out',
      'bill row 6 column "Pinned" must be a station and a time, such as "Brake 2026-05-19 07:00"; got "Brake"; this mark is left out',
      'bill row 7 column "Pinned" must be a station and a time, such as "Brake 2026-05-19 07:00"; got "Weld soon"; this mark is left out',
    ]);
    expect(marks.get(2)!.started).toEqual([{ station: "Shear", at: undefined }]);
    expect([marks.get(3)!.done, marks.get(3)!.pins.map(({ station }) => station)]).toEqual([["Shear"], ["Brake"]]);
  });
});
