/** One line of the bill as it is shown beside the workbook: what the plan says of it, and its drawings. */

import { mendSentence } from "../bill/fix-says.ts";
import { lineName } from "../bill/line-name.ts";
import type { Subject } from "../bill/pictures.ts";
import type { BillPlan, LineAnswer } from "../bill/plan.ts";
import { problemsOf } from "../bill/problems.ts";
import { notCheckedSays, problemsSay } from "../bill/says.ts";
import { showNumber } from "../units/show.ts";
import { type FaultPlace, faultPlace } from "./fault-place.ts";
import { lineDrawings, type Picture } from "./line-drawings.ts";
import { type Figure, lineFigures, orderFigures } from "./line-figures.ts";
import { lineNotes } from "./line-words.ts";

export interface LineReport {
  readonly part: string;
  /** What it is called and how many are wanted. */
  readonly about: string;
  readonly status: LineAnswer["status"];
  /** Checks and stops, the worst first. */
  readonly sentences: readonly string[];
  /** What would mend them, or that nothing of the shop's does; "" where there is nothing to mend. */
  readonly mend: string;
  readonly notes: readonly string[];
  readonly figures: readonly Figure[];
  /** SVG; first the one that shows the worst of the line. Those of the tools are missing where no tool was found. */
  readonly drawings: readonly Picture[];
  /** The number of the plan it was taken from. */
  readonly plan: string;
}

export function lineReport(line: LineAnswer, plan: BillPlan): LineReport {
  const { system } = plan.shop;
  const notChecked = notCheckedSays(plan.notChecked);
  return {
    part: lineName(line),
    about: [line.plan?.line.description ?? "", line.plan ? `${showNumber(line.plan.line.quantity, 7)} pieces` : ""]
      .filter((words) => words !== "")
      .join(", "),
    status: line.status,
    sentences: problemsSay(line.findings, system),
    mend: mendSentence(line.findings, plan.fix(line), system),
    notes: [...lineNotes(line, plan), ...(notChecked === "" ? [] : [notChecked])],
    figures: line.plan ? [...lineFigures(line.plan, line, system), ...orderFigures(line.plan, system)] : [],
    drawings: line.plan ? worstFirst(line, lineDrawings(line.plan, system, placeOf(line))) : [],
    plan: plan.number,
  };
}

function placeOf({ findings, plan }: LineAnswer): FaultPlace | undefined {
  const [worst] = problemsOf(findings);
  return worst && plan && faultPlace(worst, plan);
}

/** A cutting problem is shown on the flat, a problem of the part on the part, everything else at the tools. */
function worstFirst({ findings }: LineAnswer, drawings: readonly Picture[]): Picture[] {
  const about = problemsOf(findings)[0]?.about;
  const kind =
    about === undefined || OF_THE_PART.includes(about) ? "bent" : ON_THE_FLAT.includes(about) ? "flat" : "hit";
  const first =
    drawings.find(({ isMarked }) => isMarked) ??
    drawings.find(({ fails }) => kind === "hit" && fails) ??
    drawings.findLast((one) => one.kind === kind);
  return first ? [first, ...drawings.filter((one) => one !== first)] : [...drawings];
}

const OF_THE_PART: readonly Subject[] = ["input", "tolerance", "drawing radius", "galvanized", "finish"];
const ON_THE_FLAT: readonly Subject[] = [
  "cutting",
  "hold-down",
  "blade gap",
  "narrow strip",
  "stock",
  "lifting",
  "hands",
  "edges",
  "instruction",
];
