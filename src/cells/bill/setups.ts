/** BILL.SETUPS: in which order to set up the brake, and how, with the fewest changes of die and punch. */

import type { Press } from "../../calc/bend/order/press.ts";
import { bendStops, type Stop } from "../../calc/bend/order/stops.ts";
import { obstacleInWords } from "../../calc/bend/order/watch.ts";
import { type Problem, sentences } from "../../calc/problem.ts";
import { handlePiece } from "../../calc/time/handling.ts";
import { orderSets } from "../../calc/time/order-sets.ts";
import { usualOrder } from "../../calc/time/usual-order.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { mm } from "../../units/quantity.ts";
import { showNumber } from "../../units/show.ts";
import { fromInternal, type UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import type { BillLine } from "../tables/bill.ts";
import type { Rates } from "../tables/rates.ts";
import { planBends, type StripPlan } from "./bend-plan.ts";
import { type Blank, blankOf } from "./blank.ts";
import { largestForce } from "./check.ts";
import { isAnswered, type Outcome, outcomes, rowsOf } from "./rows.ts";
import { handlingRules } from "./shop.ts";
import { areSetsProved, type BendTools, type Chosen, chooseTools, toolsKey } from "./tools.ts";

interface SetUp {
  readonly chosen: Chosen | undefined;
  readonly row: SpillRow;
}

export interface SetUps extends BendTools {
  readonly rates: Rates;
  /** Outlines and travels of one set of tools, where they are drawn: over their die an order is tried against them. */
  readonly drawn: Press | undefined;
  readonly system: UnitSystem;
}

export function billSetups(question: SetUps, work?: Working): CellMatrix {
  const { system } = question;
  const found = outcomes(question.bill, (line): SetUp => {
    const chosen = chooseTools(line, question, system);
    return { chosen, row: chosen ? setUpRow(line, chosen, question) : flatRow(line) };
  });
  const sets = new Map<string, Chosen>();
  for (const { answer } of found.filter(isAnswered))
    if (answer.chosen && !sets.has(toolsKey(answer.chosen))) sets.set(toolsKey(answer.chosen), answer.chosen);
  const order = orderSets(
    [...sets].map(([key, { setup }]) => ({ key, die: setup.die.name, punch: setup.punch?.name ?? "" })),
  );
  const fewest = areSetsProved(question, system) ? "fewest there can be (proved)" : "fewest found";
  step(work, "changes", "sets of die and punch", order.length, "count", `${fewest}, each set once (derived)`);
  // Lines in the order of their set-ups, within one in the order of the bill; flat parts and wrong rows last.
  const placed = found
    .map((outcome, i) => ({ outcome, i, set: setOf(outcome, order) }))
    .sort((a, b) => a.set - b.set || a.i - b.i);
  const rows = placed.flatMap(({ outcome, set }, i) =>
    rowsOf([outcome], (_, { row }) => ({ Run: i + 1, ...(Number.isFinite(set) ? { "Set-up": set + 1 } : {}), ...row })),
  );
  return spill("BILL.SETUPS", rows, system);
}

function setOf(outcome: Outcome<SetUp>, order: readonly string[]): number {
  if (!isAnswered(outcome) || !outcome.answer.chosen) return Infinity;
  return order.indexOf(toolsKey(outcome.answer.chosen));
}

const flatRow = (line: BillLine): SpillRow => ({ Part: line.part, Caution: "Flat: not for the brake." });

function setUpRow(line: BillLine, chosen: Chosen, { rates, drawn, system }: SetUps): SpillRow {
  const { die, punch } = chosen.setup;
  const blank = blankOf(line, chosen, system);
  const strips = planBends(line, chosen, blank.radius, drawn).map(hitsOf);
  const number = (value: number) => showNumber(fromInternal(value, "length", system), 4);
  const obstacles = strips.map(({ obstacle }) => obstacle);
  return {
    Part: line.part,
    Die: die.name,
    Punch: punch?.name,
    Depth: mm(Math.max(...strips.flatMap(({ plan }) => plan.depths))),
    Stops: strips.map(({ hits }) => hits.map(({ stop }) => number(stop)).join("; ")).join(" | "),
    Order: strips.map(({ hits }) => hits.map(({ bend }) => bend).join("; ")).join(" | "),
    "Order from": strips.map(({ from }) => from).join(" | "),
    Force: largestForce(chosen).expected,
    Caution: caution(line, chosen.problems, blank, rates, obstacles),
  };
}

interface Hits {
  readonly plan: StripPlan;
  readonly hits: readonly Pick<Stop, "bend" | "stop">[];
  readonly from: "outlines" | "plain tools" | "usual";
  /** A sentence, or "". */
  readonly obstacle: string;
}

/** The order found on the tools; where none is, the usual one with what stands in its way. */
function hitsOf(plan: StripPlan): Hits {
  const { order, plain, part } = plan;
  if (order.feasible) return { plan, hits: order.hits, from: plain ? "plain tools" : "outlines", obstacle: "" };
  const { bend, obstacle } = order.blocked[0]!;
  return {
    plan,
    hits: bendStops(part, usualOrder(part.bends.length)),
    from: "usual",
    obstacle: `No order found on ${plain ? "plain tools" : "the outlines"}: at bend ${bend} ${obstacleInWords(obstacle)}.`,
  };
}

function caution(
  line: BillLine,
  problems: readonly Problem[],
  blank: Blank,
  rates: Rates,
  obstacles: readonly string[],
): string {
  const angles = [...new Set([...line.main.angles, ...(line.cross?.angles ?? [])].map(Math.abs))];
  const { how } = handlePiece(blank.weight, blank.longest, handlingRules(rates));
  return [
    problems.length === 0 ? "" : sentences(problems),
    ...obstacles,
    angles.length > 1 ? `Angles differ (${angles.join(", ")} degrees): the depth is for the sharpest.` : "",
    line.cross ? "Bent both ways: the first direction's flanges must clear the tools." : "",
    how === "one person" ? "" : `Lift: ${how}.`,
  ]
    .filter((text) => text !== "")
    .join(" ");
}
