/** BILL.SETUPS: in which order to set up the brake, and how, with the fewest changes of die and punch. */

import { estimateAirBend } from "../../calc/bend/air-estimate.ts";
import { sharpest } from "../../calc/bend/check/line.ts";
import { bendStops } from "../../calc/bend/order/stops.ts";
import { type Problem, sentences } from "../../calc/problem.ts";
import { handlePiece } from "../../calc/time/handling.ts";
import { orderSets } from "../../calc/time/order-sets.ts";
import { punchTravel } from "../../calc/time/punch-travel.ts";
import { usualOrder } from "../../calc/time/usual-order.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { type Degrees, degrees } from "../../units/quantity.ts";
import { showNumber } from "../../units/show.ts";
import { fromInternal, type UnitSystem } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../spill-columns.ts";
import type { BillLine, BillRow } from "../tables/bill.ts";
import type { Rates } from "../tables/rates.ts";
import { type Blank, bentPart, blankOf } from "./blank.ts";
import { largestForce } from "./check.ts";
import { isAnswered, type Outcome, outcomes, rowsOf } from "./rows.ts";
import { handlingRules } from "./shop.ts";
import { type BendTools, type Chosen, chooseTools, toolsKey } from "./tools.ts";

interface SetUp {
  readonly chosen: Chosen | undefined;
  readonly row: SpillRow;
}

export function billSetups(tools: BendTools, rates: Rates, system: UnitSystem, work?: Working): CellMatrix {
  const found = outcomes(tools.bill, (line): SetUp => {
    const chosen = chooseTools(line, tools, system);
    return { chosen, row: chosen ? setUpRow(line, chosen, rates, system) : flatRow(line) };
  });
  const sets = new Map<string, Chosen>();
  for (const { answer } of found.filter(isAnswered))
    if (answer.chosen && !sets.has(toolsKey(answer.chosen))) sets.set(toolsKey(answer.chosen), answer.chosen);
  const order = orderSets(
    [...sets].map(([key, { setup }]) => ({ key, die: setup.die.name, punch: setup.punch?.name ?? "" })),
  );
  step(work, "changes", "sets of die and punch", order.length, "count", "each set once (derived)");
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

function setUpRow(line: BillLine, chosen: Chosen, rates: Rates, system: UnitSystem): SpillRow {
  const { die, punch } = chosen.setup;
  const blank = blankOf(line, chosen, system);
  const strips = [line.main, ...(line.cross ? [line.cross] : [])].filter(({ angles }) => angles.length > 0);
  const orders = strips.map(({ angles }) => usualOrder(angles.length));
  const stops = strips.map((strip, i) => bendStops(bentPart(line, strip, blank.radius!), orders[i]!));
  const number = (value: number) => showNumber(fromInternal(value, "length", system), 4);
  const sharpestAngle = Math.max(...chosen.bends.map(sharpest)) as Degrees;
  const springback =
    estimateAirBend(line.material, line.thickness, sharpestAngle, die, punch?.nose).springback ?? degrees(0);
  return {
    Part: line.part,
    Die: die.name,
    Punch: punch?.name,
    Depth: punchTravel(die.opening, degrees(Math.min(sharpestAngle + springback, STEEPEST))),
    Stops: stops.map((list) => list.map(({ stop }) => number(stop)).join("; ")).join(" | "),
    Order: orders.map((list) => list.map(({ bend }) => bend).join("; ")).join(" | "),
    Force: largestForce(chosen).expected,
    Caution: caution(line, chosen.problems, blank, rates),
  };
}
const STEEPEST = 179; // a bend angle that reaches 180 under load has no depth

function caution(line: BillLine, problems: readonly Problem[], blank: Blank, rates: Rates): string {
  const angles = [...new Set([...line.main.angles, ...(line.cross?.angles ?? [])].map(Math.abs))];
  const { how } = handlePiece(blank.weight, blank.longest, handlingRules(rates));
  return [
    problems.length === 0 ? "" : sentences(problems),
    angles.length > 1 ? `Angles differ (${angles.join(", ")} degrees): the depth is for the sharpest.` : "",
    line.cross ? "Bent both ways: the first direction's flanges must clear the tools." : "",
    how === "one person" ? "" : `Lift: ${how}.`,
  ]
    .filter((text) => text !== "")
    .join(" ");
}
