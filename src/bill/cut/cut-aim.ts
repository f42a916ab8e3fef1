/** What the shop wants of a cut plan, and how long its shear takes, from its tables. */
import { DEFAULT_PACE } from "../../calc/cutting/floor-time.ts";
import type { FloorPace, PlanOptions } from "../../calc/cutting/types.ts";
import { onePersonLimit, type Rates } from "../nouns/rates.ts";
import type { Shop } from "../nouns/shop.ts";
import { findStation } from "../nouns/station.ts";

export type CutShop = Pick<Shop, "rates" | "stations" | "system">;

export interface CutAim extends Pick<PlanOptions, "pace"> {
  readonly perMinute: number;
  readonly isSheets: boolean;
}

const MINUTES_PER_HOUR = 60; // by definition
/** Small enough to decide only between plans with equal sheets. */
export const BETWEEN_EQUALS = 1e-6;

/** A minute counts what the shear's station costs; where its rate is not known, only between equal plans. */
export function cutAim({ rates, stations }: CutShop): CutAim {
  const rate = findStation("Shear", stations)?.rate ?? 0;
  const perMinute = {
    money: Math.max(BETWEEN_EQUALS, rate / MINUTES_PER_HOUR),
    "fewest sheets": BETWEEN_EQUALS,
    "least time": Number.POSITIVE_INFINITY,
  }[rates.cutFor];
  return { perMinute, isSheets: rates.cutFor === "fewest sheets", pace: floorPace(rates) };
}

/** The shop's own seconds, and common practice where a row is missing. */
function floorPace(rates: Rates): FloorPace {
  return {
    setting: rates.find("gaugeSetting") ?? DEFAULT_PACE.setting,
    liftPerKilogram: rates.find("handlingPerMass") ?? DEFAULT_PACE.liftPerKilogram,
    turn: rates.find("shearTurn") ?? DEFAULT_PACE.turn,
    stroke: rates.find("shearStroke") ?? DEFAULT_PACE.stroke,
    mark: rates.find("scribeLine") ?? DEFAULT_PACE.mark,
    heavy: onePersonLimit(rates) ?? DEFAULT_PACE.heavy,
  };
}
