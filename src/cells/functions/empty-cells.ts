import { type CellMatrix, isBlank } from "../../units/cell.ts";
import { topLeft, widthOf } from "../../units/certain.ts";
import { message, Refusal } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import { step } from "../../units/working.ts";
import { defineFunction, type TableParameter } from "../record/record.ts";

/** Two cells at least: builds of Excel that pass the blanks of a range as 0 pass a single one as it is. */
const range = (): TableParameter<CellMatrix> => ({
  shape: "table",
  type: "range",
  description: "Two cells or more",
  optional: false,
  default: null,
  read: (given, name) => {
    if (given.length * widthOf(given) < 2)
      throw new Refusal("#VALUE!", message(name, "a range of two cells or more", showGiven(topLeft(given))));
    return given;
  },
});

/** Older builds of Excel hand over the blank cells of a range as 0; every bill would change. This tells them apart. */
export const emptyCells = defineFunction({
  name: "EMPTY.CELLS",
  question: "How many cells of a range reach the functions as empty? If fewer than COUNTBLANK says, update Excel.",
  parameters: { cells: range() },
  result: { kind: "count" },
  example: { formula: '=SHOP.EMPTY.CELLS({1,"",2})', answer: 1 },
  source: "the add-in itself",
  calculate: ({ cells }, { work }) =>
    step(work, "n", "cells that came in as empty", cells.flat().filter(isBlank).length, "", "the add-in itself"),
});
