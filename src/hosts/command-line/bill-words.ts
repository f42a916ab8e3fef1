/** A plan in words, at most 100 columns wide: what the job comes to, then one line a problem, or with `all` every line. */

import { causeKey, questionSays, SAME_FROM } from "../../bill/causes.ts";
import { mendSays, mendSentence, NO_FIX } from "../../bill/fix-says.ts";
import { lineName } from "../../bill/line-name.ts";
import type { BillPlan, LineAnswer } from "../../bill/plan.ts";
import { problemsOf } from "../../bill/problems.ts";
import { notesSay, problemsSay } from "../../bill/says.ts";
import { firstOf } from "../../units/certain.ts";
import { totalsWords } from "./totals-words.ts";
import { WIDTH, wrapped } from "./wrapped.ts";

const PART_WIDTH = 10;
const STATUS_WIDTH = "CHECK".length;

export const billWords = (plan: BillPlan, all: boolean): string =>
  [...totalsWords(plan, all), "", ...(all ? everyLine(plan) : problems(plan))].join("\n");

function problems(plan: BillPlan): string[] {
  const causes = new Map<string, LineAnswer[]>();
  for (const status of ["stop", "check"] as const)
    for (const line of plan.lines.filter((each) => each.status === status)) {
      const cause = causeOf(line, plan);
      causes.set(cause, [...(causes.get(cause) ?? []), line]);
    }
  const said = [...causes.values()].flatMap((lines) =>
    lines.length < SAME_FROM ? lines.flatMap((line) => problem(line, plan)) : sameProblem(lines, plan),
  );
  const stuck = plan.lines.filter((line) => isStuck(line, plan)).map(lineName);
  if (stuck.length > 0) said.push("", ...wrapped(`No fix, ${NO_FIX}: ${stuck.join(", ")}.`, WIDTH, 0));
  const question = questionSays(plan.lines, plan.shop.system);
  if (question !== "") said.push("", ...wrapped(`Ask the customer: ${question}`, WIDTH, 0));
  if (said.length === 0) said.push("No problem found against the tables given; the machine's plate decides.");
  return said;
}

/** The same cause and the same fix: only the figures may differ. */
function causeOf(line: LineAnswer, plan: BillPlan): string {
  const finding = firstOf(problemsOf(line.findings));
  const own = finding.about === "input" ? lineName(line) + line.row : "";
  return [causeKey(finding), fixOf(line, plan), own].join(" | ");
}

const problem = (line: LineAnswer, plan: BillPlan): string[] =>
  entry(line, [worstOf(line, plan), fixOf(line, plan), acceptedOf(line)]);

function sameProblem(lines: readonly LineAnswer[], plan: BillPlan): string[] {
  const [first, ...others] = lines as [LineAnswer, ...LineAnswer[]];
  const isSame = others.every((line) => worstOf(line, plan) === worstOf(first, plan));
  const named = others.map((line) => lineName(line) + (acceptedOf(line) === "" ? "" : " (accepted)"));
  const also = `${isSame ? "The same on" : "Likewise, with figures of their own,"} ${named.join(", ")}.`;
  return entry(first, [worstOf(first, plan), fixOf(first, plan), acceptedOf(first), also]);
}

const everyLine = (plan: BillPlan): string[] =>
  plan.lines.flatMap((line) =>
    entry(line, [
      ...problemsSay(line.findings, plan.shop.system),
      fixOf(line, plan),
      acceptedOf(line),
      ...notesSay(line.findings, plan.shop.system).map((note) => `Note: ${note}`),
    ]),
  );

/** "DF-03       STOP   Needs about 220 tons ..." */
function entry(line: LineAnswer, sentences: readonly string[]): string[] {
  const head = `${lineName(line).padEnd(PART_WIDTH)}  ${line.status.toUpperCase().padEnd(STATUS_WIDTH)}  `;
  const said = sentences.filter((text) => text !== "").join(" ");
  return wrapped(head + said, WIDTH, PART_WIDTH + STATUS_WIDTH + 4);
}

const worstOf = (line: LineAnswer, plan: BillPlan): string => problemsSay(line.findings, plan.shop.system)[0] ?? "";

const fixOf = (line: LineAnswer, plan: BillPlan): string => {
  const fix = plan.fix(line);
  return fix ? mendSentence(line.findings, fix, plan.shop.system) : "";
};
/** What no tool of the shop can do is said once, at the end. */
const isStuck = (line: LineAnswer, plan: BillPlan): boolean =>
  mendSays(line.findings, plan.fix(line), plan.shop.system) === NO_FIX;

/** A stop cannot be accepted. */
const acceptedOf = ({ plan, status }: LineAnswer): string =>
  plan && status === "check" && plan.line.accepted !== "" ? `Accepted: ${plan.line.accepted}.` : "";
