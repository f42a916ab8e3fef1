/** The shop's own tables: which columns each has, and how a row becomes a machine or a tool. */
import type { Brake, Die, Punch } from "../../calc/bend/tooling.ts";
import type { Shear } from "../../calc/shear/check.ts";
import type { BrakeMotion } from "../../calc/time/brake-time.ts";
import type { ShearPace } from "../../calc/time/shear-time.ts";
import {
  degrees,
  type Millimetres,
  type MillimetresPerMinute,
  mm,
  type Newtons,
  type NewtonsPerMillimetre,
} from "../../units/quantity.ts";
import { between, type Columns, positive, type Row } from "../parameters/read-table.ts";
import { remembered } from "../parameters/remembered.ts";
import { anyTable, shopTable } from "../parameters/shop-table.ts";
import type { TableParameter } from "../record/record.ts";

export const BRAKE_COLUMNS = {
  name: { headers: ["Brake", "Name"], kind: "text" },
  ratedForce: { headers: ["Rated force"], kind: "force", rule: positive },
  bedLength: { headers: ["Bed length"], kind: "length", rule: positive },
  betweenHousings: { headers: ["Between housings"], kind: "length", rule: positive },
  openStroke: { headers: ["Open stroke"], kind: "length", optional: true, rule: positive },
  approachSpeed: { headers: ["Approach speed"], kind: "feed", optional: true, rule: positive },
  bendSpeed: { headers: ["Bend speed"], kind: "feed", optional: true, rule: positive },
  returnSpeed: { headers: ["Return speed"], kind: "feed", optional: true, rule: positive },
  gaugeSpeed: { headers: ["Gauge speed"], kind: "feed", optional: true, rule: positive },
} as const satisfies Columns;

export const DIE_COLUMNS = {
  name: { headers: ["Die", "Name"], kind: "text" },
  opening: { headers: ["Opening"], kind: "length", rule: positive },
  angle: { headers: ["Angle"], kind: "angle", rule: between(20, 150, " degrees") },
  shoulder: { headers: ["Shoulder radius"], kind: "length", optional: true, rule: positive },
  rating: { headers: ["Rating"], kind: "lineLoad", optional: true, rule: positive },
  length: { headers: ["Length"], kind: "length", optional: true, rule: positive },
} as const satisfies Columns;

export const PUNCH_COLUMNS = {
  name: { headers: ["Punch", "Name"], kind: "text" },
  nose: { headers: ["Nose radius"], kind: "length", optional: true, rule: positive },
  angle: { headers: ["Angle"], kind: "angle", rule: between(20, 150, " degrees") },
  rating: { headers: ["Rating"], kind: "lineLoad", optional: true, rule: positive },
  length: { headers: ["Length"], kind: "length", optional: true, rule: positive },
} as const satisfies Columns;

export const SHEAR_COLUMNS = {
  name: { headers: ["Shear", "Name"], kind: "text" },
  ratedThickness: { headers: ["Rated thickness"], kind: "length", rule: positive },
  ratedMaterial: { headers: ["Rated material"], kind: "text", optional: true },
  cutLength: { headers: ["Cut length"], kind: "length", rule: positive },
  leastHold: { headers: ["Least hold-down"], kind: "length", optional: true, rule: positive },
  knifeGap: { headers: ["Knife gap"], kind: "length", optional: true, rule: positive },
  strokesPerMinute: { headers: ["Strokes per minute"], kind: "number", optional: true, rule: positive },
  cutsPerBlank: { headers: ["Cuts per blank"], kind: "number", optional: true, rule: positive },
} as const satisfies Columns;

/** A machine with what its table says about speed; what is missing there is asked for when a time is wanted. */
export type TimedBrake = Brake & { readonly motion: Partial<BrakeMotion> };
export type TimedShear = Shear & { readonly pace: Partial<ShearPace> };

const optionalFeed = (value: number | undefined): MillimetresPerMinute | undefined =>
  value as MillimetresPerMinute | undefined;

const asBrake = (row: Row<typeof BRAKE_COLUMNS>): TimedBrake => ({
  name: row.name,
  ratedForce: row.ratedForce as Newtons,
  bedLength: mm(row.bedLength),
  betweenHousings: mm(row.betweenHousings),
  motion: given({
    openStroke: optionalLength(row.openStroke),
    approachSpeed: optionalFeed(row.approachSpeed),
    bendSpeed: optionalFeed(row.bendSpeed),
    returnSpeed: optionalFeed(row.returnSpeed),
    gaugeSpeed: optionalFeed(row.gaugeSpeed),
  }),
});

/** Without the keys that hold nothing. */
const given = <T extends object>(values: { [K in keyof T]: T[K] | undefined }): Partial<T> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Partial<T>;

const optionalLength = (value: number | undefined): Millimetres | undefined =>
  value === undefined ? undefined : mm(value);

const asDie = (row: Row<typeof DIE_COLUMNS>): Die => ({
  name: row.name,
  opening: mm(row.opening),
  angle: degrees(row.angle),
  shoulder: optionalLength(row.shoulder),
  rating: row.rating as NewtonsPerMillimetre | undefined,
  length: optionalLength(row.length),
});

const asPunch = (row: Row<typeof PUNCH_COLUMNS>): Punch => ({
  name: row.name,
  nose: optionalLength(row.nose),
  angle: degrees(row.angle),
  rating: row.rating as NewtonsPerMillimetre | undefined,
  length: optionalLength(row.length),
});

const asShear = (row: Row<typeof SHEAR_COLUMNS>): TimedShear => ({
  name: row.name,
  ratedThickness: mm(row.ratedThickness),
  ratedMaterial: row.ratedMaterial,
  cutLength: mm(row.cutLength),
  leastHold: optionalLength(row.leastHold),
  knifeGap: optionalLength(row.knifeGap),
  pace: given({ strokesPerMinute: row.strokesPerMinute, cutsPerBlank: row.cutsPerBlank }),
});

/** Each table is read once for all functions that take it. */
const once = <T>(parameter: TableParameter<T>): TableParameter<T> => ({
  ...parameter,
  read: remembered(parameter.read),
});

const BRAKES = once(
  shopTable("brake table", "Press brakes of the shop; the first row is used", BRAKE_COLUMNS, asBrake),
);
const DIES = once(shopTable("die table", "V dies of the shop", DIE_COLUMNS, asDie));
const PUNCHES = once(shopTable("punch table", "Punches of the shop", PUNCH_COLUMNS, asPunch));
const SHEARS = once(
  shopTable("shear table", "Shears of the shop; the first row is used unless one is named", SHEAR_COLUMNS, asShear),
);

export const brakes = () => BRAKES;
export const dies = () => DIES;
export const punches = () => PUNCHES;
export const shears = () => SHEARS;
/** For callers that also answer for a shop without a shear. */
export const anyShears = () =>
  anyTable("shear table", "Shears of the shop, the first row is used; blank for none", SHEAR_COLUMNS, asShear);
