/** Will the line keep its drawing's tolerance, by what the shop says of its edges, bends and angles? */
import type { Finding } from "../../calc/finding.ts";
import { judgeStack, type StackVerdict, toleranceStack } from "../../calc/tolerance/stack.ts";
import { firstOf } from "../../units/certain.ts";
import { type Degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr } from "../../units/remember.ts";
import type { Working } from "../../units/working.ts";
import type { BillLine, Strip } from "../nouns/line.ts";
import type { Rates } from "../nouns/rates.ts";

export interface ToleranceStack {
  readonly verdict: StackVerdict | undefined;
  readonly worst: Millimeters | undefined;
  readonly finding: Finding | undefined;
}

/** undefined where the drawing states no tolerance. */
export function judgeTolerance(line: BillLine, rates: Rates, work?: Working): ToleranceStack | undefined {
  const { tolerance, main, pin } = line;
  if (tolerance === undefined) return undefined;
  const bends = main.angles.length;
  const spread = refusalOr(() => ({
    edge: mm(rates.get(pin === "waterjet" ? "cutEdge" : "shearedEdge")),
    deduction: mm(bends > 0 ? rates.get("deductionSpread") : 0),
    angle: (bends > 0 ? rates.get("angleSpread") : 0) as Degrees,
  }));
  // The shop has not said how well it holds a size: that is not the part's fault.
  if (spread instanceof Refusal)
    return {
      verdict: undefined,
      worst: undefined,
      finding: { about: "tolerance", status: "check", kind: "not judged", words: spread.message },
    };
  const stack = toleranceStack(bends, swinging(main), spread, work);
  const verdict = judgeStack(stack, tolerance);
  if (verdict === "holds") return { verdict, worst: stack.worst, finding: undefined };
  const finding: Finding = {
    about: "tolerance",
    // Usually within: the first pieces are measured and the stops corrected anyway (common practice).
    status: verdict === "at risk" ? "note" : "stop",
    kind: verdict,
    figure: stack.expected,
    beside: stack.worst,
    limit: tolerance,
    quantity: "length",
  };
  return { verdict, worst: stack.worst, finding };
}

/**
 * The leg that an angle off by a little swings furthest: the part is measured lying on its longest flange, so that it is
 * the longest of the others (geometry). Of a flat part it does not matter.
 */
function swinging({ flanges }: Strip): Millimeters {
  const longest = [...flanges].sort((a, b) => b - a);
  return longest[1] ?? firstOf(longest);
}
