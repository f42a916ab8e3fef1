/** What a check finds, as figures. How it is said stands in bill/says. */
import type { QuantityKind } from "../units/system.ts";

/** "note" leaves the status clear; "check" needs a look before cutting; "stop" scraps sheet or hurts a machine. */
export const SEVERITIES = ["note", "check", "stop"] as const;
export type Severity = (typeof SEVERITIES)[number];
export const STATUSES = ["clear", "check", "stop"] as const;
export type Status = (typeof STATUSES)[number];

/** What a finding is about: one row of the shop's table of findings. */
export const SUBJECTS = [
  "input",
  "brake force",
  "bend ends",
  "punch",
  "die",
  "beam",
  "off center",
  "room",
  "loaded angle",
  "springback",
  "flat",
  "drawing radius",
  "radius",
  "opening",
  "flange",
  "hole",
  "tolerance",
  "bend order",
  "cutting",
  "hold-down",
  "blade gap",
  "narrow strip",
  "lifting",
  "swing",
  "hands",
  "edges",
  "galvanized",
  "finish",
  "stock",
  "instruction",
] as const;
export type Subject = (typeof SUBJECTS)[number];

export interface Finding {
  readonly about: Subject;
  readonly status: Severity;
  /** Which sentence of its subject it is. */
  readonly kind: string;
  /** What was found and what it is held against, in the internal unit of `quantity`; a bare number without one. */
  readonly figure?: number | undefined;
  readonly limit?: number | undefined;
  readonly quantity?: QuantityKind | undefined;
  /** A second figure of the sentence: the worst case, the thickness, the least there is. */
  readonly beside?: number | undefined;
  /** Tool, machine, material or sheet it speaks of. */
  readonly name?: string | undefined;
  /** Words that are quoted: a refusal, what is in the way. */
  readonly words?: string | undefined;
}

export const rankOf = (status: Severity): number => SEVERITIES.indexOf(status);

export const statusOf = (findings: readonly Finding[]): Status =>
  STATUSES[findings.reduce((worst, { status }) => Math.max(worst, rankOf(status)), 0)] as Status;

/** Worst first; within a severity in the order the checks ran. */
export const worstFirst = (findings: readonly Finding[]): Finding[] =>
  [...findings].sort((a, b) => rankOf(b.status) - rankOf(a.status));

/** Of findings about the same thing the worst: both directions of a tray may find it. */
export function worstOfEach(findings: readonly Finding[]): Finding[] {
  const kept = new Map<string, Finding>();
  for (const finding of findings) {
    const key = `${finding.about} ${finding.name ?? ""}`;
    const known = kept.get(key);
    if (!known || rankOf(finding.status) > rankOf(known.status)) kept.set(key, finding);
  }
  return [...kept.values()];
}
