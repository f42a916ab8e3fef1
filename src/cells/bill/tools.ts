/** Die and punch of a line: the ones it names, else the shop's own that come out best. */
import type { BendLine } from "../../calc/bend/check/line.ts";
import { chooseTools as best, type Chosen } from "../../calc/bend/choose-tools.ts";
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import type { Die, Punch } from "../../calc/bend/tooling.ts";
import { degrees } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { BillLine, Strip } from "../tables/bill.ts";
import { findDie, findPunch } from "../tables/find-tool.ts";
import type { TimedBrake } from "../tables/shop-tables.ts";

export type { Chosen };

export interface BendTools {
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

/** The tools the line names, or the best of the table. undefined for a flat part. */
export function chooseTools(line: BillLine, tools: BendTools, system: UnitSystem): Chosen | undefined {
  const known = chosenBefore.get(line);
  // The same line on the same tables has the same tools, whichever function asks.
  if (known && known.system === system && isSame(known.tools, tools)) return known.chosen;
  const chosen = choose(line, tools, system);
  chosenBefore.set(line, { tools, system, chosen });
  return chosen;
}

interface Remembered {
  readonly tools: BendTools;
  readonly system: UnitSystem;
  readonly chosen: Chosen | undefined;
}
const chosenBefore = new WeakMap<BillLine, Remembered>();
const isSame = (a: BendTools, b: BendTools): boolean =>
  a.brakes === b.brakes && a.dies === b.dies && a.punches === b.punches;

function choose(line: BillLine, tools: BendTools, system: UnitSystem): Chosen | undefined {
  const dies = line.die === undefined ? tools.dies : [findDie(line.die, tools.dies, system)];
  const punches = line.punch === undefined ? tools.punches : [findPunch(line.punch, tools.punches)!];
  return best(bendLines(line), tools.brakes[0]!, dies, punches, system);
}

/** Lines with the same key stand on the same tools. */
export const toolsKey = ({ setup: { die, punch } }: Chosen): string => `${die.name} | ${punch?.name ?? ""}`;
