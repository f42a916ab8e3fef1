/** What is said about a line wherever it is shown: what is wrong with what would mend it, and what only informs. */

import { mendSentence } from "../bill/fix-says.ts";
import { lineName } from "../bill/line-name.ts";
import type { Subject } from "../bill/pictures.ts";
import type { BillPlan, LineAnswer } from "../bill/plan.ts";
import type { Finding } from "../bill/problems.ts";
import { notesSay, problemsSay, says } from "../bill/says.ts";
import type { UnitSystem } from "../units/system.ts";

/** A part with the revision of its drawing, where the bill has one: "DF-01 rev B". */
export function partSays(line: Pick<LineAnswer, "part" | "row" | "plan">): string {
  const revision = line.plan?.line.revision?.replace(/^rev(?:ision)?\b\.?\s*/i, "");
  return revision === undefined ? lineName(line) : `${lineName(line)} rev ${revision}`;
}

/** Checks and stops, the worst first, then the fix; none for a clear line. */
export function lineProblems(line: LineAnswer, plan: BillPlan): string[] {
  const { system } = plan.shop;
  const fix = plan.fix(line);
  return [...problemsSay(line.findings, system), mendSentence(line.findings, fix, system)].filter(
    (text) => text !== "",
  );
}

export const lineNotes = ({ findings }: LineAnswer, { shop: { system } }: BillPlan): string[] =>
  notesSay(findings, system);

/** What the person who cuts must know of a piece. */
export const AT_THE_CUT: readonly Subject[] = ["cutting", "hold-down", "blade gap", "narrow strip"];

/** One sentence a cause, with the parts it is about. */
export function sayOnce(
  lines: readonly LineAnswer[],
  system: UnitSystem,
  isMeant: (finding: Finding) => boolean,
): string[] {
  const partsOf = new Map<string, string[]>();
  for (const line of lines)
    for (const finding of line.findings.filter(isMeant)) {
      const sentence = says(finding, system);
      partsOf.set(sentence, [...(partsOf.get(sentence) ?? []), lineName(line)]);
    }
  return [...partsOf].map(([sentence, parts]) => `${sentence} ${parts.join(", ")}`);
}
