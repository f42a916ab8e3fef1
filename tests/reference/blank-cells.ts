/** What counts as blank, by Excel's own function: EMPTY.CELLS is compared with it in every State cell. */
import type { Published } from "./published.ts";

const COUNTBLANK =
  'Microsoft, support page of COUNTBLANK: cells that hold empty text ("") are counted too, cells with zero are not';

export const blankCells: readonly Published[] = [
  {
    id: "blank-cells-text",
    call: [
      "EMPTY.CELLS",
      [
        [null, ""],
        [6, 4],
      ],
    ],
    expected: 2,
    tolerance: 0,
    source: COUNTBLANK,
    basis: "memory",
  },
  {
    id: "blank-cells-zero",
    call: [
      "EMPTY.CELLS",
      [
        [0, null],
        ["x", false],
      ],
    ],
    expected: 1,
    tolerance: 0,
    source: COUNTBLANK,
    basis: "memory",
  },
];
