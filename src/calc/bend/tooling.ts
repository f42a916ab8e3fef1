/** The shop's machines and tools as the calculations need them; all figures come from the workbook. */
import type { Degrees, Millimetres, Newtons, NewtonsPerMillimetre } from "../../units/quantity.ts";

export interface Brake {
  readonly name: string;
  readonly ratedForce: Newtons;
  readonly bedLength: Millimetres;
  readonly betweenHousings: Millimetres;
  /** undefined: hydraulic or servo, where a valve or the drive gives way. */
  readonly drive?: Drive | undefined;
  /** From the middle of the V back to the housings. */
  readonly throat?: Millimetres | undefined;
  /** Ram to bed without tools: ram fully up, and fully down. */
  readonly daylight?: Millimetres | undefined;
  readonly shutHeight?: Millimetres | undefined;
  readonly stroke?: Millimetres | undefined;
  /** Nearest and furthest setting of the back gauge, from the middle of the V. */
  readonly nearestGauge?: Millimetres | undefined;
  readonly furthestGauge?: Millimetres | undefined;
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
  /** The block that the V is cut in; its height with whatever it stands on. */
  readonly blockWidth?: Millimetres | undefined;
  readonly blockHeight?: Millimetres | undefined;
  /** The pieces the shop owns of it. */
  readonly sections?: readonly Millimetres[] | undefined;
}

export interface Punch {
  readonly name: string;
  readonly nose?: Millimetres | undefined;
  readonly angle: Degrees;
  readonly rating?: NewtonsPerMillimetre | undefined;
  readonly length?: Millimetres | undefined;
  /** From the tip to where the ram's holder begins. */
  readonly height?: Millimetres | undefined;
  readonly bodyWidth?: Millimetres | undefined;
  /** Of a gooseneck: how far its throat is cut in from the front of the body, and how high the throat's mouth is. */
  readonly reliefDepth?: Millimetres | undefined;
  readonly reliefWidth?: Millimetres | undefined;
  /** The pieces the shop owns of it. */
  readonly sections?: readonly Millimetres[] | undefined;
}
