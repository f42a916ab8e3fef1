/** What a line is bent with, and everything found against it. */

import { airRadiusByRule } from "../../calc/bend/air-radius.ts";
import { bendOutcome } from "../../calc/bend/check/bottoming.ts";
import { checkBend, findingsOfBend, findingsOfTools } from "../../calc/bend/check/check.ts";
import type { BendLine, Setup } from "../../calc/bend/check/line.ts";
import { cracks } from "../../calc/bend/cracks.ts";
import type { Grain } from "../../calc/bend/minimum-radius.ts";
import { fromUsual } from "../../calc/bend/tools/die-choice.ts";
import { type Finding, rankOf, statusOf, worstOfEach } from "../../calc/finding.ts";
import type { OwnThresholds } from "../../calc/limit-of.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr, remember } from "../../units/remember.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { Working } from "../../units/working.ts";
import { findDie, findMachine, findPunch } from "../nouns/find-tool.ts";
import { BESIDE_BENDS, type BillLine, bentStrips } from "../nouns/line.ts";
import type { Brake, Die, Punch } from "../nouns/machines.ts";
import type { Shop } from "../nouns/shop.ts";
import { drawingRadiusFinding } from "./drawing-radius.ts";

export interface Tools {
  readonly brake: Brake;
  readonly die: Die;
  /** undefined: the shop's table has none. */
  readonly punch: Punch | undefined;
}
interface ToolShop extends Pick<Shop, "brakes" | "dies" | "punches" | "system"> {
  readonly own: OwnThresholds;
}

/** Lines with the same key stand on the same set of tools. */
export const setKey = ({ brake, die, punch }: Tools): string => `${brake.name} | ${die.name} | ${punch?.name ?? ""}`;

/** Strips with bends; the bill's grain is that of the main strip's bend lines, the cross strip's lie the other way. */
export function bendLines(line: BillLine): BendLine[] {
  const strips = bentStrips(line);
  // A temper that cracks cannot lie across for both directions of a tray, however it is turned.
  const grain = line.grain ?? (strips.length > 1 && cracks(line.material) ? "across" : undefined);
  const turned: Grain | undefined = grain === undefined ? undefined : grain === "across" ? "along" : "across";
  return strips.map((strip) => {
    const isMain = strip === line.main;
    return {
      material: line.material,
      thickness: line.thickness,
      bendLength: strip.bendLength,
      flanges: strip.flanges,
      bendAngles: strip.angles,
      grain: isMain ? grain : turned,
      holeDistance: isMain ? line.holeDistance : undefined,
      offCenter: line.offCenter,
    };
  });
}

/** Share of the springback that the faces press out of the sharpest bend: 0 where the line is bent in air. */
export const pressedIn = (line: BillLine, tools: Setup): number =>
  Math.max(0, ...bendLines(line).map((bend) => bendOutcome(bend, tools).pressed));

/** Everything that bends, tools and the drawing's radius say; of both directions of a tray the worse. */
export const toolFindings = (line: BillLine, tools: Setup, system: UnitSystem, work?: Working): Finding[] =>
  worstOfEach([
    ...bendLines(line).flatMap((bend) => checkBend(bend, tools, system, work)),
    ...drawingRadiusFinding(line, tools, line.radius === undefined ? 0 : pressedIn(line, tools)),
  ]);

/**
 * The sets a part can be bent with, the one liked best first: those that come out best, on the brake of the lowest
 * rating on which they do. Dies are liked by how near their opening is to 8 thicknesses (common practice), punches by
 * what they may be loaded with; names decide between equals, never the order of a table. Empty for a flat part and
 * where the shop has no tools. Throws the Refusal of a tool that is not in the tables.
 */
export function toolOptions(line: BillLine, { brakes, dies, punches, system, own }: ToolShop): readonly Tools[] {
  const bends = bendLines(line);
  if (bends.length === 0) return [];
  const named = {
    brakes: line.brake === undefined ? brakes : [findMachine(line.brake, brakes, "brake")],
    dies: line.die === undefined ? dies : [findDie(line.die, dies, system)],
    punches: line.punch === undefined ? (punches.length > 0 ? punches : [undefined]) : [findPunch(line.punch, punches)],
  };
  const dieOrder = [...named.dies].sort(
    (a, b) => fromUsual(a, line.thickness) - fromUsual(b, line.thickness) || byName(a, b),
  );
  const punchOrder = [...named.punches].sort((a, b) => (b?.rating ?? 0) - (a?.rating ?? 0) || byName(a, b));
  let best: { readonly score: number; readonly sets: Tools[] } = { score: Infinity, sets: [] };
  for (const brake of [...named.brakes].sort((a, b) => a.ratedForce - b.ratedForce || byName(a, b))) {
    if (best.score === 0) break;
    const onBrake = bestSets({ line, bends, brake, dies: dieOrder, punches: punchOrder, system, own }, best.score);
    // Where no brake can do it the largest says by how little it fails.
    const asBad = onBrake.score === best.score && onBrake.score >= STOPPED;
    if (onBrake.score < best.score || asBad) best = onBrake;
  }
  return withOwnRadius(line, best.sets);
}

/**
 * A nose wider than the radius that the die gives by itself makes another part, to save a change of punches: it is taken
 * where the bill asks for it, or where nothing else is as good.
 */
function withOwnRadius(line: BillLine, sets: readonly Tools[]): readonly Tools[] {
  if (line.radius !== undefined || line.punch !== undefined) return sets;
  const own = sets.filter(({ die, punch }) => {
    const free = refusalOr(() => airRadiusByRule(line.material, die.opening, undefined).expected);
    return free instanceof Refusal || (punch?.nose ?? 0) <= free;
  });
  return own.length > 0 ? own : sets;
}

interface ToTry {
  readonly line: BillLine;
  readonly bends: readonly BendLine[];
  readonly brake: Brake;
  readonly dies: readonly Die[];
  readonly punches: readonly (Punch | undefined)[];
  readonly system: UnitSystem;
  readonly own: OwnThresholds;
}

function bestSets(
  { line, bends, brake, dies, punches, system, own }: ToTry,
  toBeat: number,
): { readonly score: number; readonly sets: Tools[] } {
  let [score, sets]: [number, Tools[]] = [toBeat, []];
  for (const die of dies)
    for (const punch of punches) {
      const tools = { brake, die, punch };
      const setup = { ...tools, own };
      // A set with a problem is not worth solving the bend for while there is one that is no worse.
      const cheap = worstOfEach(bends.flatMap((bend) => findingsOfTools(bend, setup, system)));
      const least = scoreOf(cheap);
      // Nor one that is as good as what a lower brake does.
      if (least > score || (least === toBeat && toBeat < STOPPED)) continue;
      const all = [
        ...cheap,
        ...bends.flatMap((bend) => findingsOfBend(bend, setup)),
        ...drawingRadiusFinding(line, setup, line.radius === undefined ? 0 : pressedIn(line, setup)),
      ];
      const found = scoreOf(worstOfEach(all));
      if (found < score) [score, sets] = [found, [tools]];
      else if (found === score) sets.push(tools);
    }
  return { score: sets.length > 0 ? score : Infinity, sets };
}

/** The worst status first, then how much stands against the set at that status. */
function scoreOf(findings: readonly Finding[]): number {
  const status = statusOf(findings);
  if (status === "clear") return 0;
  return rankOf(status) * MOST_FINDINGS + findings.filter((finding) => finding.status === status).length;
}
const MOST_FINDINGS = 100; // more than one part can have
const STOPPED = rankOf("stop") * MOST_FINDINGS;

const byName = (a: { readonly name: string } | undefined, b: { readonly name: string } | undefined): number =>
  (a?.name ?? "") < (b?.name ?? "") ? -1 : (a?.name ?? "") > (b?.name ?? "") ? 1 : 0;

/** Line after line asks about the same sheet and bends: what a part is called and how many are wanted does not matter. */
const optionsKnown = remember(8192, (bare: BillLine, shop: ToolShop) => toolOptions(bare, shop));

export function optionsOf(
  line: BillLine,
  { brakes, dies, punches, system, rates }: Pick<Shop, "brakes" | "dies" | "punches" | "system" | "rates">,
): readonly Tools[] {
  return optionsKnown(bareOf(line), { brakes, dies, punches, system, own: rates.own });
}

/** What of a line decides about its bends. */
export const bareOf = (line: BillLine): BillLine => ({ ...line, ...BESIDE_BENDS });
