/** What a check finds. One sentence each, with figure, limit and the nearest remedy that has been tried. */
import type { QuantityKind } from "../units/system.ts";

/** "note" informs and leaves the status clear; "check" wants a look before cutting; "stop" scraps sheet or hurts a machine. */
export type Severity = "note" | "check" | "stop";
export const STATUSES = ["clear", "check", "stop"] as const;
export type Status = (typeof STATUSES)[number];

export interface Problem {
  /** Which check found it, e.g. "force". */
  readonly check: string;
  readonly severity: Severity;
  /** Internal unit of `quantity`; undefined where the problem is no figure. */
  readonly value?: number | undefined;
  readonly limit?: number | undefined;
  readonly quantity?: QuantityKind | undefined;
  readonly message: string;
  readonly remedy?: string | undefined;
}

const RANK: Record<Severity, number> = { note: 0, check: 1, stop: 2 };

export const statusOf = (problems: readonly Problem[]): Status =>
  STATUSES[Math.max(0, ...problems.map(({ severity }) => RANK[severity]))]!;

/** Worst first; within a severity in the order the checks ran. */
export const worstFirst = (problems: readonly Problem[]): Problem[] =>
  [...problems].sort((a, b) => RANK[b.severity] - RANK[a.severity]);

/** One cell's text: every sentence with its remedy. */
export const sentences = (problems: readonly Problem[]): string =>
  problems.length === 0
    ? "No problem found against the tables given; the machine's plate decides."
    : worstFirst(problems)
        .map(({ message, remedy }) => (remedy ? `${message} ${remedy}` : message))
        .join(" ");
