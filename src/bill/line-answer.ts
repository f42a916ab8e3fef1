/** What a line of the bill has come to: its status, what is found about it, and whether it is quoted. */
import { type Finding, type Status, statusOf, worstOfEach } from "../calc/finding.ts";
import { isPlanned, type LinePlan, type UnreadPlan } from "./lines/plan-line.ts";
import type { PlannedLine } from "./lines/plan-lines.ts";
import type { Cutter } from "./nouns/line.ts";

/** What one line has come to. */
export interface LineAnswer {
  readonly row: number;
  readonly part: string;
  /** undefined where it could not be read. */
  readonly plan: LinePlan | undefined;
  readonly status: Status;
  /** All findings about it, including those about the machine that cuts it. */
  readonly findings: readonly Finding[];
  /** The machine that cuts it; undefined where none does. */
  readonly cutter: Cutter | undefined;
  /** Not stopped, cut by some machine, and in Stock. */
  readonly isQuoted: boolean;
}
export type QuotedLine = LineAnswer & { readonly plan: LinePlan; readonly cutter: Cutter; readonly isQuoted: true };
export const isQuoted = (line: LineAnswer): line is QuotedLine => line.isQuoted;

export const shortFinding = ({ line }: LinePlan, count: number, reason: string | undefined): Finding =>
  reason === undefined
    ? { about: "stock", status: "check", kind: "runs out", figure: count, name: line.material.name }
    : { about: "stock", status: "stop", kind: "no layout", words: reason };

export const canBeQuoted = (plan: LinePlan): boolean =>
  statusOf(plan.findings) !== "stop" &&
  (plan.cutting.shear !== undefined || plan.cutting.waterjet !== undefined) &&
  plan.sheets?.length !== 0;

/** @param cutterOf the lines that are quoted, with the machine that cuts each. */
export function answerOf(
  plan: PlannedLine,
  cutterOf: ReadonlyMap<LinePlan, Cutter>,
  short: ReadonlyMap<LinePlan, Finding>,
): LineAnswer {
  if (!isPlanned(plan)) return unread(plan);
  const cutter = cutterOf.get(plan);
  // A line without a chosen route is judged as if the shear cut it, where it can.
  const onShear = cutter === "shear" || (cutter === undefined && plan.cutting.shear !== undefined);
  const runsOut = short.get(plan);
  const findings = worstOfEach([
    ...plan.findings,
    ...(onShear ? plan.cutting.onShear : plan.cutting.onWaterjet),
    ...(runsOut ? [runsOut] : []),
  ]);
  const { row, part } = plan.line;
  return { row, part, plan, status: statusOf(findings), findings, cutter, isQuoted: cutter !== undefined };
}

const unread = ({ row, part, findings }: UnreadPlan): LineAnswer => ({
  row,
  part,
  plan: undefined,
  status: "stop",
  findings,
  cutter: undefined,
  isQuoted: false,
});
