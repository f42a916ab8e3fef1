/**
 * Why a line is not quoted, as the customer reads it: by the kind of what is found, without the shop's machines, tools,
 * ratings and tables.
 */
import { type Finding, type Subject, worstFirst } from "../calc/finding.ts";
import type { LineAnswer } from "./line-answer.ts";

const CANNOT_BEND = "cannot be bent as drawn";
const CANNOT_CUT = "cannot be cut as drawn";
const TOO_HEAVY = "too heavy for us to handle";
const QUESTION = "we have a question about this line";

const REASONS: Readonly<Partial<Record<Subject, string>>> = {
  "brake force": CANNOT_BEND,
  "bend ends": CANNOT_BEND,
  beam: CANNOT_BEND,
  punch: CANNOT_BEND,
  die: CANNOT_BEND,
  room: CANNOT_BEND,
  "loaded angle": CANNOT_BEND,
  radius: CANNOT_BEND,
  opening: CANNOT_BEND,
  flange: CANNOT_BEND,
  "bend order": CANNOT_BEND,
  cutting: CANNOT_CUT,
  "narrow strip": CANNOT_CUT,
  "hold-down": CANNOT_CUT,
  "blade gap": CANNOT_CUT,
  lifting: TOO_HEAVY,
  tolerance: "the tolerance will not hold",
};
const OF_STOCK: Readonly<Record<string, string>> = {
  larger: "larger than the sheets we have",
  "no layout": CANNOT_CUT,
};

/** @param line one without a price; a quoted one has none where the rates lack something, which is the shop's affair. */
export function customerSays({ isQuoted, findings }: Pick<LineAnswer, "isQuoted" | "findings">): string {
  const [worst] = worstFirst(findings).filter(({ about, status }) => status === "stop" || about === "stock");
  // A line that nothing stops and no machine cuts is a matter of cutting.
  return `no quote: ${isQuoted ? QUESTION : worst ? reasonOf(worst) : CANNOT_CUT}`;
}

/** How a cell must be typed is the shop's affair too. */
const reasonOf = ({ about, kind }: Finding): string =>
  about === "stock" ? (OF_STOCK[kind] ?? "we have no sheet for it") : (REASONS[about] ?? QUESTION);
