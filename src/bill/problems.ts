/** Findings as a view needs them: what there is to say about a line, the worst first. */
import { type Finding, SEVERITIES, STATUSES, type Status, SUBJECTS, worstFirst } from "../calc/finding.ts";

export { type Finding, SEVERITIES, STATUSES, type Status, SUBJECTS };

/** Checks and stops, the worst first; what only informs is no problem. */
export const problemsOf = (findings: readonly Finding[]): Finding[] =>
  worstFirst(findings.filter(({ status }) => status !== "note"));
