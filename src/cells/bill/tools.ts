/** Die and punch of a line: the ones it names, else the shop's own that come out best. */
import type { BendLine } from "../../calc/bend/check/line.ts";
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import type { Die, Punch } from "../../calc/bend/tooling.ts";
import { type Chosen, offUsual, toolOptions } from "../../calc/bend/tools/choose-tools.ts";
import { fewestSets } from "../../calc/time/fewest-sets.ts";
import { degrees } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import type { UnitSystem } from "../../units/system.ts";
import { type BillLine, type BillRow, isLine, type Strip } from "../tables/bill.ts";
import { findDie, findPunch } from "../tables/find-tool.ts";
import type { TimedBrake } from "../tables/shop-tables.ts";
import { drawingRadius } from "./drawing-radius.ts";
import { orRefusal } from "./rows.ts";

export type { Chosen };

export interface BendTools {
  /** All lines that are bent in one go: they share tools where they can. */
  readonly bill: readonly BillRow[];
  readonly brakes: readonly TimedBrake[];
  readonly dies: readonly Die[];
  readonly punches: readonly Punch[];
}

/** Strips with bends; the bill's grain is that of the main strip's bend lines, the cross strip's lie the other way. */
export function bendLines(line: BillLine): BendLine[] {
  const turned: Grain | undefined = line.grain === undefined ? undefined : line.grain === "across" ? "along" : "across";
  return [
    ...bent(line, line.main, line.grain, line.holeDistance),
    ...(line.cross ? bent(line, line.cross, turned, undefined) : []),
  ];
}

const bent = (
  { material, thickness }: BillLine,
  { flanges, angles, bendLength }: Strip,
  grain: Grain | undefined,
  holeDistance: BendLine["holeDistance"],
): BendLine[] =>
  angles.length === 0
    ? []
    : [
        {
          material,
          thickness,
          bendLength,
          flanges,
          bendAngles: angles.map((angle) => degrees(Math.abs(angle))),
          grain,
          holeDistance,
        },
      ];

/**
 * Die and punch of a line: those it names, else of the pairs it bends over without a problem the one with which the whole bill
 * needs the fewest sets; of equals the one nearest to the usual opening. undefined for a flat part. Every function about
 * a bill asks here, so that they all speak of the same tools. Throws the Refusal of a tool that is not in the tables.
 */
export function chooseTools(line: BillLine, tools: BendTools, system: UnitSystem): Chosen | undefined {
  const choice = choiceFor(tools, system).get(line) ?? choose([line], tools, system).get(line)!;
  if (choice instanceof Refusal) throw choice;
  return choice[0];
}

/** How many sets of die and punch the bill needs, and whether fewer are proved not to do. */
export const areSetsProved = (tools: BendTools, system: UnitSystem): boolean => choiceFor(tools, system).proved;

type Choice = readonly [Chosen] | readonly [] | Refusal;
interface Choices extends ReadonlyMap<BillLine, Choice> {
  readonly proved: boolean;
}

/** The same bill on the same tables has the same tools, whichever function asks. */
function choiceFor(tools: BendTools, system: UnitSystem): Choices {
  const known = chosenBefore.get(tools.bill);
  if (known && known.system === system && isSame(known.tools, tools)) return known.choices;
  const choices = choose(tools.bill.filter(isLine), tools, system);
  chosenBefore.set(tools.bill, { tools, system, choices });
  return choices;
}

interface Remembered {
  readonly tools: BendTools;
  readonly system: UnitSystem;
  readonly choices: Choices;
}
const chosenBefore = new WeakMap<readonly BillRow[], Remembered>();
const isSame = (a: BendTools, b: BendTools): boolean =>
  a.brakes === b.brakes && a.dies === b.dies && a.punches === b.punches;

function choose(lines: readonly BillLine[], tools: BendTools, system: UnitSystem): Choices {
  const options = lines.map((line) => orRefusal(() => optionsOf(line, tools, system)));
  const { keys, proved } = fewestSets(
    options.map((list) =>
      list instanceof Refusal ? [] : list.map((chosen) => ({ key: toolsKey(chosen), dislike: offUsual(chosen) })),
    ),
  );
  const choices = options.map((list, i): [BillLine, Choice] => {
    const chosen = list instanceof Refusal ? undefined : list.find((option) => keys.has(toolsKey(option)));
    return [lines[i]!, list instanceof Refusal ? list : chosen ? [chosen] : []];
  });
  return Object.assign(new Map(choices), { proved });
}

function optionsOf(line: BillLine, tools: BendTools, system: UnitSystem): readonly Chosen[] {
  const dies = line.die === undefined ? tools.dies : [findDie(line.die, tools.dies, system)];
  const punches = line.punch === undefined ? tools.punches : [findPunch(line.punch, tools.punches)!];
  return toolOptions(bendLines(line), tools.brakes[0]!, dies, punches, system, (setup) => {
    const found = drawingRadius(line, setup, system);
    return found === undefined || found.verdict === "accept";
  });
}

/** Lines with the same key stand on the same tools. */
export const toolsKey = ({ setup: { die, punch } }: Chosen): string => `${die.name} | ${punch?.name ?? ""}`;
