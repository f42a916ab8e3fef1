/** One line of the bill as it is shown beside the workbook: what the plan says of it, and its drawings. */
import { lineName } from "../bill/line-name.ts";
import type { BillPlan, LineAnswer } from "../bill/plan.ts";
import { notCheckedSays } from "../bill/says.ts";
import { lineDrawings, type Picture } from "./line-drawings.ts";
import { type Figure, lineFigures, orderFigures } from "./line-figures.ts";
import { lineNotes, lineProblems } from "./line-words.ts";

export interface LineReport {
  readonly part: string;
  readonly status: LineAnswer["status"];
  /** Checks and stops, the worst first, and what would mend them. */
  readonly sentences: readonly string[];
  readonly notes: readonly string[];
  readonly figures: readonly Figure[];
  /** SVG; the pictures of the tools come last, and are missing where no tool was found. */
  readonly drawings: readonly Picture[];
  /** The number of the plan it was taken from. */
  readonly plan: string;
}

export function lineReport(line: LineAnswer, plan: BillPlan): LineReport {
  const { system } = plan.shop;
  const notChecked = notCheckedSays(plan.notChecked);
  return {
    part: lineName(line),
    status: line.status,
    sentences: lineProblems(line, plan),
    notes: [...lineNotes(line, plan), ...(notChecked === "" ? [] : [notChecked])],
    figures: line.plan ? [...lineFigures(line.plan, line, system), ...orderFigures(line.plan, system)] : [],
    drawings: line.plan ? lineDrawings(line.plan, system) : [],
    plan: plan.number,
  };
}
