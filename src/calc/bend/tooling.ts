/** The shop's machines and tools as the calculations need them; all figures come from the workbook. */
import type { Degrees, Millimeters, Newtons, NewtonsPerMillimeter } from "../../units/quantity.ts";

export interface Brake {
  readonly name: string;
  readonly ratedForce: Newtons;
  readonly bedLength: Millimeters;
  readonly betweenHousings: Millimeters;
  /** undefined: hydraulic or servo, where a valve or the drive gives way. */
  readonly drive?: Drive | undefined;
  /** From the middle of the V back to the housings. */
  readonly throat?: Millimeters | undefined;
  /** Ram to bed without tools: ram fully up, and fully down. */
  readonly daylight?: Millimeters | undefined;
  readonly shutHeight?: Millimeters | undefined;
  readonly stroke?: Millimeters | undefined;
  /** Nearest and furthest setting of the back gauge, from the middle of the V. */
  readonly nearestGauge?: Millimeters | undefined;
  readonly furthestGauge?: Millimeters | undefined;
}

export const DRIVES = ["hydraulic", "servo", "mechanical"] as const;
export type Drive = (typeof DRIVES)[number];

export interface Die {
  readonly name: string;
  readonly opening: Millimeters;
  readonly angle: Degrees;
  readonly shoulder?: Millimeters | undefined;
  readonly rating?: NewtonsPerMillimeter | undefined;
  readonly length?: Millimeters | undefined;
  /** The block that the V is cut in; its height with whatever it stands on. */
  readonly blockWidth?: Millimeters | undefined;
  readonly blockHeight?: Millimeters | undefined;
  /** The pieces the shop owns of it. */
  readonly sections?: readonly Millimeters[] | undefined;
}

export interface Punch {
  readonly name: string;
  readonly nose?: Millimeters | undefined;
  readonly angle: Degrees;
  readonly rating?: NewtonsPerMillimeter | undefined;
  readonly length?: Millimeters | undefined;
  /** From the tip to where the ram's holder begins. */
  readonly height?: Millimeters | undefined;
  readonly bodyWidth?: Millimeters | undefined;
  /** Of a gooseneck: how far its throat is cut in from the front of the body, and how high the throat's mouth is. */
  readonly reliefDepth?: Millimeters | undefined;
  readonly reliefWidth?: Millimeters | undefined;
  /** The pieces the shop owns of it. */
  readonly sections?: readonly Millimeters[] | undefined;
}
