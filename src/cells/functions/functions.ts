import type { CellMatrix } from "../../units/cell.ts";
import { catalogueRows } from "../record/catalogue-rows.ts";
import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Function", "Question", "Arguments", "Unit", "Example", "Source"] as const;

export const functions = defineFunction({
  name: "FUNCTIONS",
  question: "Which functions are there, and what does each answer?",
  parameters: {},
  result: { kind: "table", columns: COLUMNS },
  example: { formula: "=INDEX(SHOP.FUNCTIONS(),1,1)", answer: "Function" },
  source: "the catalogue itself",
  calculate: (): CellMatrix => [[...COLUMNS], ...catalogueRows()],
});
