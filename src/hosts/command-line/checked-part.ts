/** One part of `shop check` as it is written: as JSON, or as a line for people and spreadsheets. */
import { type Problem, statusOf, worstFirst } from "../../calc/problem.ts";
import { isAnswered, type Outcome } from "../../cells/bill/rows.ts";
import { fromInternal, type UnitSystem, unitName } from "../../units/system.ts";

/** Plain numbers without a unit in the header are inches, as in a cell. */
export const SYSTEM: UnitSystem = "in";
export type Verdict = "clear" | "check" | "stop" | "unreadable";

export interface PartJson {
  readonly row: number;
  readonly part: string;
  readonly verdict: Verdict;
  readonly problems: readonly ProblemJson[];
}
interface ProblemJson {
  readonly check: string;
  readonly severity: "check" | "stop";
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string | null;
  readonly message: string;
  readonly remedy: string | null;
}

export function partOf(outcome: Outcome<readonly Problem[]>): PartJson {
  if (isAnswered(outcome)) {
    const { line, answer } = outcome;
    const problems = worstFirst(answer).flatMap((problem) =>
      problem.severity === "note" ? [] : [problemJson(problem)],
    );
    return { row: line.row, part: line.part, verdict: statusOf(answer), problems };
  }
  return {
    row: outcome.row,
    part: outcome.part,
    verdict: "unreadable",
    problems: [
      {
        check: "reading",
        severity: "stop",
        value: null,
        limit: null,
        unit: null,
        message: outcome.message,
        remedy: null,
      },
    ],
  };
}

function problemJson({ check: name, severity, value, limit, quantity, message, remedy }: Problem): ProblemJson {
  const figure = (internal: number | undefined): number | null => {
    if (internal === undefined) return null;
    const shown = quantity ? fromInternal(internal, quantity, SYSTEM) : internal;
    return Number.isFinite(shown) ? shown : null;
  };
  return {
    check: name,
    severity: severity as "check" | "stop",
    value: figure(value),
    limit: figure(limit),
    unit: quantity ? unitName(quantity, SYSTEM) : null,
    message,
    remedy: remedy ?? null,
  };
}

/** Tab-separated for people and spreadsheets; a text that a spreadsheet would take for a formula is quoted as text. */
export const inWords = ({ row, part, verdict, problems }: PartJson): string => {
  const said = problems.map(({ message, remedy }) => (remedy ? `${message} ${remedy}` : message)).join(" ");
  return `${[String(row), part, verdict, said].map(asText).join("\t")}\n`;
};
const asText = (text: string): string => (/^[=+\-@]/.test(text) ? `'${text}` : text).replace(/[\t\r\n]+/g, " ");
