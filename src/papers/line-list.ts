/** The bill as a list of lines: what each is, its status, and the worst that is found about it beside it. */
import { lineName } from "../bill/line-name.ts";
import type { BillPlan, LineAnswer } from "../bill/plan.ts";
import { problemsOf } from "../bill/problems.ts";
import { notMadeSays, says } from "../bill/says.ts";
import { showNumber, showThickness } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { shapePath } from "./drawing/shape.ts";

export interface ListedLine {
  /** Of the bill, its header being row 1. */
  readonly row: number;
  readonly part: string;
  readonly description: string;
  readonly quantity: string;
  /** Path data of the folded shape; "" where the line could not be read. */
  readonly shape: string;
  readonly sheet: string;
  readonly tools: string;
  readonly status: LineAnswer["status"];
  /** One sentence; "" of a line without a problem. */
  readonly reason: string;
  readonly isQuoted: boolean;
}

export const lineList = ({ lines, shop: { system } }: BillPlan): ListedLine[] =>
  lines.map((line) => listed(line, system));

function listed(line: LineAnswer, system: UnitSystem): ListedLine {
  const { row, status, plan, isQuoted, findings } = line;
  const [worst] = problemsOf(findings);
  const { main, description = "", quantity, material, thickness } = plan?.line ?? {};
  const { die, punch } = plan?.tools ?? {};
  return {
    row,
    part: lineName(line),
    description,
    quantity: quantity === undefined ? "" : showNumber(quantity, 7),
    shape: main ? shapePath(main.flanges, main.angles) : "",
    sheet: material && thickness !== undefined ? `${material.name} ${showThickness(thickness, system)}` : "",
    tools: [die?.name, punch?.name].filter((name) => name !== undefined).join(", "),
    status,
    reason: worst ? says(worst, system) : isQuoted ? "" : notMadeSays(findings, system),
    isQuoted,
  };
}
