/** The bills of the three jobs, written as bills come in. All invented. */
import type { CellValue } from "../../../units/cell.ts";

export interface WeekJobRows {
  readonly file: string;
  readonly name: string;
  readonly customer: string;
  readonly number: string;
  /** Day of the worksheet with its hour. */
  readonly due: number;
  readonly pace: "normal" | "rush";
  readonly rows: readonly Readonly<Record<string, CellValue>>[];
}

const HEADERS = [
  "Part",
  "Description",
  "Quantity",
  "Material",
  "Thickness",
  "Flanges",
  "Bend angles",
  "Bend length",
  "Operations",
  "Done",
  "Started",
] as const;
type Line = readonly CellValue[];
const rows = (lines: readonly Line[]) =>
  lines.map((line) => Object.fromEntries(HEADERS.map((header, i): [string, CellValue] => [header, line[i] ?? null])));

const MONDAY = 46_160; // 18 May 2026

export const JOBS: readonly WeekJobRows[] = [
  {
    file: "pier-railing",
    name: "Pier railing",
    customer: "Cobble Pier Trust (invented)",
    number: "Q-0431",
    due: MONDAY + 3 + 12 / 24,
    pace: "rush",
    rows: rows([
      [
        "PR-01",
        "Post shoe",
        64,
        "A36",
        "1/4",
        "2; 4; 2",
        90,
        6,
        "Deburr; Weld 2",
        "Shear; Deburr",
        "Brake 2026-05-16 11:30",
      ],
      ["PR-02", "Post shoe, end", 12, "A36", "1/4", "2; 4; 2", 90, 8, "Deburr; Weld 2", "Shear"],
      ["PR-03", "Rail cleat", 220, "A36", "3/16", "2; 2", 90, 3, "Deburr", "yes"],
      ["PR-04", "Rail cleat, corner", 48, "A36", "3/16", "2; 2", 45, 3, "Deburr"],
      ["PR-05", "Toe board", 40, "A1011 CS", "10 ga", "1; 5; 1", 90, 72, null],
      ["PR-06", "Toe board, end", 8, "A1011 CS", "10 ga", "1; 5; 1", 90, 40, null],
      ["PR-07", "Splice plate", 80, "A36", "1/4", "6", null, 4, "Deburr", null, "Shear 2026-05-15 15:00"],
      ["PR-08", "Gate strike", 6, "304", "14 ga", "1; 2; 1", "90; -90", 6, "Deburr"],
      ["PR-09", "Gate hinge leaf", 12, "A36", "1/4", "3; 3", 90, 5, "Deburr; Weld 4"],
      ["PR-10", "Cap strip", 36, "A653 CS", "16 ga", "0.75; 3; 0.75", 90, 60, null],
      ["PR-11", "Cable clip", 300, "A1011 CS", "14 ga", "0.75; 1.25", 90, 1.5, "Pack"],
      ["PR-12", "Sign back", 10, "5052-H32", "1/8", "1; 12; 1", 90, 18, "Deburr"],
      ["PR-13", "Kick plate", 24, "304", "14 ga", "0.75; 8", 90, 30, "Deburr"],
      ["PR-14", "Foot plate", 64, "304", "1/4", "5", null, 5, "Deburr"],
      ["PR-15", "Brace", 32, "A36", "3/16", "2; 3", 90, 16, "Weld 2"],
    ]),
  },
  {
    file: "orchard-crates",
    name: "Orchard crates",
    customer: "Russet Hill Orchards (invented)",
    number: "Q-0436",
    due: MONDAY + 4 + 15 / 24,
    pace: "normal",
    rows: rows([
      ["OC-01", "Crate corner", 480, "A1011 CS", "14 ga", "1.5; 1.5", 90, 10, "Deburr"],
      ["OC-02", "Crate corner, tall", 160, "A1011 CS", "14 ga", "1.5; 1.5", 90, 16, "Deburr"],
      ["OC-03", "Side rail", 120, "A1011 CS", "14 ga", "1; 3; 1", 90, 44, null],
      ["OC-04", "Bottom rail", 120, "A1011 CS", "14 ga", "1; 2; 1", 90, 38, null],
      ["OC-05", "Fork pocket", 60, "A1011 CS", "10 ga", "3; 7; 3", 90, 22, "Weld 3"],
      ["OC-06", "Latch plate", 120, "A1011 CS", "10 ga", "1; 2.5", 90, 3, "Deburr; Tap 1"],
      ["OC-07", "Latch hook", 120, "A1011 CS", "10 ga", "0.75; 1; 0.75", 90, 2, "Deburr"],
      ["OC-08", "Tag holder", 60, "A653 CS", "18 ga", "0.5; 3; 0.5", 90, 5, "Pack"],
      ["OC-09", "Stack pin plate", 240, "A36", "3/16", "3", null, 3, "Deburr"],
      ["OC-10", "Stack guide", 240, "A36", "3/16", "1.5; 2", 90, 3, "Deburr; Weld 1"],
      ["OC-11", "Liner", 20, "5052-H32", "1/8", "1; 20", 90, 36, "Deburr"],
      ["OC-12", "Liner, end", 20, "5052-H32", "1/8", "1; 16", 90, 20, "Deburr"],
      ["OC-13", "Gate frame", 24, "A1011 CS", "10 ga", "1.5; 2; 1.5", 90, 30, "Weld 2"],
      ["OC-14", "Gate strap", 48, "A1011 CS", "10 ga", "2; 2", 45, 4, null],
      ["OC-15", "Drip edge", 60, "A653 CS", "18 ga", "0.75; 2", 90, 44, null],
      ["OC-16", "Runner", 60, "A36", "3/16", "2; 3; 2", 90, 36, "Weld 2"],
    ]),
  },
  {
    file: "school-lockers",
    name: "School lockers",
    customer: "Fernside School (invented)",
    number: "Q-0440",
    due: MONDAY + 9 + 12 / 24,
    pace: "normal",
    rows: rows([
      ["SL-01", "Door", 48, "A1008 CS", "18 ga", "0.75; 12; 0.75", 90, 58, "Deburr; Coating"],
      ["SL-02", "Shelf", 96, "A1008 CS", "18 ga", "0.75; 11; 0.75", 90, 11, "Deburr; Coating"],
      ["SL-03", "Hinge strip", 96, "A1011 CS", "14 ga", "1; 1.25", 90, 6, "Deburr"],
      ["SL-04", "Base rail", 24, "A1011 CS", "14 ga", "1.5; 4; 1.5", 90, 48, "Coating"],
      ["SL-05", "Top cap", 12, "A1008 CS", "18 ga", "0.75; 14; 0.75", 90, 60, "Coating"],
      ["SL-06", "Back brace", 48, "A1011 CS", "14 ga", "1; 2; 1", "90; -90", 30, null],
      ["SL-07", "Coat hook plate", 96, "A1011 CS", "10 ga", "1; 2", 90, 2, "Deburr; Weld 1"],
      ["SL-08", "Vent cover", 48, "5052-H32", "1/8", "4", null, 6, "Deburr"],
      ["SL-09", "Lock plate", 48, "304", "14 ga", "0.75; 2.5", 90, 3, "Deburr; Tap 2"],
      ["SL-10", "Leveling foot", 48, "A36", "1/4", "2; 2", 90, 2.5, "Deburr; Tap 1"],
      ["SL-11", "Number plate", 48, "304", "14 ga", "2", null, 3, "Deburr; Pack"],
      ["SL-12", "Side stiffener", 48, "A1011 CS", "14 ga", "1; 1.5; 1", 90, 56, null],
      ["SL-13", "Floor clip", 96, "A36", "3/16", "1.5; 2", 90, 2, "Deburr"],
      ["SL-14", "Filler strip", 12, "A1008 CS", "18 ga", "0.75; 3; 0.75", 90, 58, "Coating"],
      ["SL-15", "Bench bracket", 24, "A36", "1/4", "3; 8; 3", 90, 3, "Deburr; Weld 2; Coating"],
    ]),
  },
];
