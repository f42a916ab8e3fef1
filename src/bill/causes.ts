/** The same cause on several lines is one cause: it is said once, with the lines it is about. */

import type { UnitSystem } from "../units/system.ts";
import { lineName } from "./line-name.ts";
import type { LineAnswer } from "./plan.ts";
import { type Finding, problemsOf, SEVERITIES } from "./problems.ts";
import { figureSays, says } from "./says.ts";

interface Cause {
  /** The first line's; the others may have figures of their own. */
  readonly finding: Finding;
  readonly lines: readonly LineAnswer[];
}

/** From this many lines on a cause is said once. */
export const SAME_FROM = 3;

/** Same kind of finding on the same tool: only the figures may differ. */
export const causeKey = ({ about, status, kind, name = "" }: Finding): string =>
  `${about} | ${status} | ${kind} | ${name}`;

/** Causes of checks and stops that several lines share, the worst first, then those of most lines. What is not understood is each line's own. */
export function sharedCauses(lines: readonly LineAnswer[]): Cause[] {
  const found = new Map<string, { finding: Finding; lines: LineAnswer[] }>();
  for (const line of lines)
    for (const finding of problemsOf(line.findings)) {
      if (finding.about === "input" || isQuestion(finding)) continue;
      const key = causeKey(finding);
      const known = found.get(key) ?? { finding, lines: [] };
      if (!known.lines.includes(line)) known.lines.push(line);
      found.set(key, known);
    }
  const rank = ({ finding }: Cause) => SEVERITIES.indexOf(finding.status);
  return [...found.values()]
    .filter((cause) => cause.lines.length >= SAME_FROM)
    .sort((a, b) => rank(b) - rank(a) || b.lines.length - a.lines.length);
}

/** "Die V 1 is rated ... The same on B, C." */
export function causeSays({ finding, lines }: Cause, system: UnitSystem): string {
  const [first, ...others] = lines as [LineAnswer, ...LineAnswer[]];
  const sentence = says(finding, system);
  const isSame = others.every((line) => problemsOf(line.findings).some((each) => says(each, system) === sentence));
  const named = others.map(lineName).join(", ");
  return `${lineName(first)}: ${sentence} ${isSame ? "The same on" : "Likewise, with figures of their own,"} ${named}.`;
}

/** What only the customer can answer. */
const isQuestion = ({ about, kind }: Finding): boolean => about === "drawing radius" && kind === "ask";

/** The one question of the job to the customer; "" where there is none. */
export function questionSays(lines: readonly LineAnswer[], system: UnitSystem): string {
  const radii = lines.flatMap((line) => {
    const finding = line.findings.find(isQuestion);
    return finding ? [`${lineName(line)} ${radiusSays(finding, system)}`] : [];
  });
  return radii.length === 0 ? "" : `Are these inside radii acceptable in place of the drawing's? ${radii.join("; ")}.`;
}

/** "0.237 in for 0.187 in" */
const radiusSays = ({ figure = 0, limit = 0 }: Finding, system: UnitSystem): string =>
  `${figureSays(figure, "length", system)} for ${figureSays(limit, "length", system)}`;
