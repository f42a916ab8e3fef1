/** What cutting takes, on the shear or on the waterjet, and what a bench must add to it. */
import { cuttingFeed } from "../../calc/jet/cutting-feed.ts";
import { type Handling, handlePiece } from "../../calc/time/handling.ts";
import { jetTime } from "../../calc/time/jet-time.ts";
import { runTime, type Seconds, seconds } from "../../calc/time/seconds.ts";
import { type ShearPace, shearTime } from "../../calc/time/shear-time.ts";
import { stationTime } from "../../calc/time/station-time.ts";
import { mm } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import { inside } from "../lines/blank.ts";
import { cutKey } from "../lines/cut-key.ts";
import { machineFor } from "../lines/cutting.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import type { Cutter } from "../nouns/line.ts";
import { complete, PACE, type Waterjet } from "../nouns/machines.ts";
import { operationsOf } from "../nouns/operations.ts";
import { handlingRules } from "../nouns/rates.ts";
import type { Shop } from "../nouns/shop.ts";
import { stationNamed } from "../nouns/station.ts";
import { measuresOf, unitsOf } from "./measures.ts";
import { paceOf } from "./pace.ts";
import { sharesOf } from "./shares.ts";
import { type OutsideWork, type StationWork, stationWork } from "./station-work.ts";

export type WorkShop = Pick<Shop, "stations" | "rates" | "finished">;

export const handlingOf = ({ blank }: LinePlan, { rates }: WorkShop, work?: Working): Handling =>
  handlePiece(blank.weight, blank.longest, handlingRules(rates), work);

/**
 * Throws the Refusal of a figure that the tables lack.
 * @param share of the shear's set-up, of `shearShares`; the waterjet has a set-up every line.
 */
export function cuttingWork(
  plan: LinePlan,
  cutter: Cutter,
  share: number,
  shop: WorkShop,
  work?: Working,
): StationWork {
  const { people, how } = handlingOf(plan, shop, work);
  const isSheared = cutter === "shear";
  const each = isSheared ? sheared(plan, shop, work) : onJet(plan, machineFor(plan.cutting, "waterjet"), shop, work);
  const station = stationNamed(isSheared ? "Shear" : "Waterjet", shop.stations);
  const pace = paceOf(station.name, shop, work);
  const machine = machineFor(plan.cutting, cutter).name;
  const given = { station, machine, each, pace, pieces: plan.blanks, people, note: how };
  if (!isSheared) return stationWork({ ...given, setUp: station.setUp });
  const change = station.setUp + (shop.rates.find("bladeGapSetting") ?? 0);
  const setUp = step(
    work,
    "S shear",
    `set-up of ${plan.line.part}, its share of the thickness`,
    share * change,
    "s",
    "stops and blade gap once a material and thickness, shared by shear minutes (common practice)",
  );
  return stationWork({ ...given, setUp, share: setUp, change });
}

/** Of one set-up of a shear for a material and thickness, what each line pays: by minutes at the shear, none for coming first. */
export function shearShares(plans: readonly LinePlan[], shop: WorkShop): Map<LinePlan, number> {
  return sharesOf(
    plans.map((plan) => ({ plan, key: cutKey(plan, "shear"), run: runTime(plan.blanks, sheared(plan, shop)) })),
  );
}

/** A shop that has not timed the handling at its shear has the one of every machine there. */
function sheared(plan: LinePlan, shop: WorkShop, work?: Working): Seconds {
  const { rates } = shop;
  const shear = machineFor(plan.cutting, "shear");
  const perCut = rates.find("shearHandling");
  const handling =
    perCut === undefined
      ? handlingOf(plan, shop).time
      : seconds(perCut + (rates.find("shearHandlingPerLength") ?? 0) * plan.blank.longest);
  return shearTime(complete<ShearPace>(shear.pace, PACE, "shears", shear.name), handling, loading(plan, rates), work);
}

/** A blank's share of laying its sheet on the table, by area. */
function loading({ blank, sheets }: LinePlan, rates: Shop["rates"]): Seconds {
  const sheet = sheets?.[0];
  const time = rates.find("sheetLoading") ?? 0;
  return seconds(sheet ? (time * blank.length * blank.width) / (sheet.length * sheet.width) : 0);
}

/**
 * The outline is taken at its outside sizes, before the bends take their deduction: leads and corners cost about what
 * that leaves out, and a thicker sheet, whose flat is shorter, never seems to be cut sooner.
 */
function onJet(plan: LinePlan, jet: Waterjet, shop: WorkShop, work?: Working): Seconds {
  const { line, blank } = plan;
  const feed = cuttingFeed(line.material, { ...jet.cut, thickness: line.thickness }, jet.speedFactor, work);
  const path = mm(blank.outsideOutline + inside(line));
  const cut = jetTime({ path, pierces: blank.pierces, feed }, jet, work);
  return seconds(cut + handlingOf(plan, shop).time + loading(plan, shop.rates));
}

/** Holes and notches that the shear leaves to a bench, then the operations of the bill. In-house only. */
export function benchWork(plan: LinePlan, cutter: Cutter, shop: WorkShop, work?: Working): StationWork[] {
  const { line, blank, blanks: pieces } = plan;
  const piece = measuresOf(line, blank);
  const made = (["hole", "notch"] as const).flatMap((basis) => {
    const needed = cutter === "shear" && (basis === "hole" ? line.holes : line.notches) > 0;
    const station = needed ? shop.stations.find((each) => each.basis === basis) : undefined;
    return station ? [{ station, amount: undefined }] : [];
  });
  // What the bill says of it by name is the same work: it is done once, by as much as the bill says where it says so.
  const inHouse = operationsOf(line, shop.stations).filter(({ station }) => station.each !== undefined);
  const byCount = made.filter(({ station }) => !inHouse.some((each) => each.station === station));
  const { people } = handlingOf(plan, shop);
  return [...byCount, ...inHouse].map(({ station, amount }) => {
    const each = stationTime(station.name, unitsOf(line, station, piece, amount), station.each ?? seconds(0), work);
    const pace = paceOf(station.name, shop, work);
    return stationWork({ station, machine: "", setUp: station.setUp, each, pace, pieces, people, note: "" });
  });
}

/** Operations that only a vendor does. */
export function outsideWork({ line, blank }: LinePlan, { stations }: WorkShop): OutsideWork[] {
  const piece = measuresOf(line, blank);
  return operationsOf(line, stations)
    .filter(({ station }) => station.each === undefined)
    .map(({ station, amount }) => ({ station, units: unitsOf(line, station, piece, amount) }));
}
