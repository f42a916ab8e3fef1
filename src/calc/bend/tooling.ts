/** The shop's machines and tools as the calculations need them; all figures come from the workbook. */
import type { Degrees, Millimetres, Newtons, NewtonsPerMillimetre } from "../../units/quantity.ts";

export interface Brake {
  readonly name: string;
  readonly ratedForce: Newtons;
  readonly bedLength: Millimetres;
  readonly betweenHousings: Millimetres;
  /** undefined: hydraulic or servo, where a valve or the drive gives way. */
  readonly drive?: Drive | undefined;
}

export const DRIVES = ["hydraulic", "servo", "mechanical"] as const;
export type Drive = (typeof DRIVES)[number];

export interface Die {
  readonly name: string;
  readonly opening: Millimetres;
  readonly angle: Degrees;
  readonly shoulder?: Millimetres | undefined;
  readonly rating?: NewtonsPerMillimetre | undefined;
  readonly length?: Millimetres | undefined;
}

export interface Punch {
  readonly name: string;
  readonly nose?: Millimetres | undefined;
  readonly angle: Degrees;
  readonly rating?: NewtonsPerMillimetre | undefined;
  readonly length?: Millimetres | undefined;
}
