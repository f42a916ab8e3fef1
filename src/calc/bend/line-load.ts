import { LOADED_SHARE } from "../../data/bend-rules.ts";
import { cite } from "../../data/fact.ts";
import { type NewtonsPerMillimeter, newtonsPerMillimeter } from "../../units/quantity.ts";
import { step, type Working } from "../../units/working.ts";
import type { Brake } from "./tooling.ts";

/**
 * Highest force per length that the brake's beam takes: its rating spread over 60 % of the distance between the
 * housings, so that a short bend has a lower limit (common practice; the plate or manual rules).
 */
export const lineLoadLimit = ({ ratedForce, betweenHousings }: Brake, work?: Working): NewtonsPerMillimeter =>
  step(
    work,
    "w max",
    "highest force per length on the beam",
    newtonsPerMillimeter(ratedForce / (LOADED_SHARE.value * betweenHousings)),
    "N/mm",
    cite(LOADED_SHARE),
  );
