/** The shop's machines and tools: which columns each table has, and how a row becomes a machine or a tool. */
import type { Brake, Die, Punch, Shear } from "../../bill/nouns/machines.ts";
import { DRIVES, type Drive } from "../../calc/bend/tooling.ts";
import { LEAST_REMNANT_IN } from "../../data/remnants.ts";
import { RATED_MATERIAL } from "../../data/shear-rules.ts";
import {
  degrees,
  type Millimeters,
  type MillimetersPerMinute,
  mm,
  type Newtons,
  type NewtonsPerMillimeter,
} from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { MM_PER_INCH } from "../../units/system.ts";
import { between, type Columns, notNegative, oneOf, positive, type Row, whole } from "../parameters/read-table.ts";
import { remembered } from "../parameters/remembered.ts";
import { shopTable } from "../parameters/shop-table.ts";
import type { ReadContext, TableParameter } from "../record/record.ts";

const PLATE = { headers: ["From the plate"], kind: "text", optional: true } as const;

/** Every piece of the tool that the shop owns: "20; 10; 5; 3; 2; 1; 1". */
const SECTIONS = { headers: ["Sections"], kind: "lengths", optional: true, rule: positive } as const;

export const BRAKE_COLUMNS = {
  name: { headers: ["Brake", "Name"], kind: "text" },
  ratedForce: { headers: ["Rated force"], kind: "force", rule: positive },
  bedLength: { headers: ["Bed length"], kind: "length", rule: positive },
  betweenHousings: { headers: ["Between housings"], kind: "length", rule: positive },
  drive: { headers: ["Drive"], kind: "text", optional: true, rule: oneOf(...DRIVES) },
  openStroke: { headers: ["Open stroke"], kind: "length", optional: true, rule: positive },
  approachSpeed: { headers: ["Approach speed"], kind: "feed", optional: true, rule: positive },
  bendSpeed: { headers: ["Bend speed"], kind: "feed", optional: true, rule: positive },
  returnSpeed: { headers: ["Return speed"], kind: "feed", optional: true, rule: positive },
  gaugeSpeed: { headers: ["Gauge speed"], kind: "feed", optional: true, rule: positive },
  throat: { headers: ["Throat"], kind: "length", optional: true, rule: positive },
  daylight: { headers: ["Daylight"], kind: "length", optional: true, rule: positive },
  shutHeight: { headers: ["Shut height"], kind: "length", optional: true, rule: positive },
  stroke: { headers: ["Stroke"], kind: "length", optional: true, rule: positive },
  nearestGauge: { headers: ["Nearest gauge"], kind: "length", optional: true, rule: notNegative },
  furthestGauge: { headers: ["Furthest gauge"], kind: "length", optional: true, rule: positive },
  plate: PLATE,
} as const satisfies Columns;

export const DIE_COLUMNS = {
  name: { headers: ["Die", "Name"], kind: "text" },
  opening: { headers: ["Opening"], kind: "length", rule: positive },
  angle: { headers: ["Angle"], kind: "angle", rule: between(20, 150, " degrees") },
  shoulder: { headers: ["Shoulder radius"], kind: "length", optional: true, rule: positive },
  rating: { headers: ["Rating"], kind: "lineLoad", optional: true, rule: positive },
  length: { headers: ["Length"], kind: "length", optional: true, rule: positive },
  blockWidth: { headers: ["Block width"], kind: "length", optional: true, rule: positive },
  blockHeight: { headers: ["Block height"], kind: "length", optional: true, rule: positive },
  sections: SECTIONS,
  plate: PLATE,
} as const satisfies Columns;

export const PUNCH_COLUMNS = {
  name: { headers: ["Punch", "Name"], kind: "text" },
  nose: { headers: ["Nose radius"], kind: "length", optional: true, rule: positive },
  angle: { headers: ["Angle"], kind: "angle", rule: between(20, 150, " degrees") },
  rating: { headers: ["Rating"], kind: "lineLoad", optional: true, rule: positive },
  length: { headers: ["Length"], kind: "length", optional: true, rule: positive },
  height: { headers: ["Height"], kind: "length", optional: true, rule: positive },
  bodyWidth: { headers: ["Body width"], kind: "length", optional: true, rule: positive },
  reliefDepth: { headers: ["Relief depth"], kind: "length", optional: true, rule: notNegative },
  reliefWidth: { headers: ["Relief width"], kind: "length", optional: true, rule: positive },
  sections: SECTIONS,
  plate: PLATE,
} as const satisfies Columns;

export const SHEAR_COLUMNS = {
  name: { headers: ["Shear", "Name"], kind: "text" },
  ratedThickness: { headers: ["Rated thickness"], kind: "length", rule: positive },
  ratedMaterial: { headers: ["Rated material"], kind: "text", optional: true },
  cutLength: { headers: ["Cut length", "Longest cut"], kind: "length", rule: positive },
  leastHold: { headers: ["Least hold-down"], kind: "length", optional: true, rule: positive },
  bladeGap: { headers: ["Blade gap", "Knife gap"], kind: "length", optional: true, rule: positive },
  strokesPerMinute: { headers: ["Strokes per minute"], kind: "number", optional: true, rule: positive },
  cutsPerBlank: { headers: ["Cuts per blank"], kind: "number", optional: true, rule: positive },
  reach: { headers: ["Gauge reach"], kind: "length", optional: true, rule: positive },
  nearestGauge: { headers: ["Nearest gauge"], kind: "length", optional: true, rule: notNegative },
  frontReach: { headers: ["Front stop reach"], kind: "length", optional: true, rule: notNegative },
  cutToMark: { headers: ["Cut to mark"], kind: "text", optional: true, rule: oneOf("yes", "no") },
  leastDrop: { headers: ["Least drop"], kind: "length", optional: true, rule: notNegative },
  leastTrim: { headers: ["Least trim"], kind: "length", optional: true, rule: notNegative },
  twistWidth: { headers: ["Twist width"], kind: "number", optional: true, rule: notNegative },
  twistLength: { headers: ["Twist length"], kind: "number", optional: true, rule: notNegative },
  heaviestLift: { headers: ["Heaviest lift"], kind: "mass", optional: true, rule: positive },
  stacks: { headers: ["Stacks"], kind: "number", optional: true, rule: whole(1, 100) },
  longStacks: { headers: ["Long stacks"], kind: "number", optional: true, rule: whole(0, 100) },
  trim: { headers: ["Edge trim"], kind: "length", optional: true, rule: notNegative },
  leastRemnant: { headers: ["Least remnant"], kind: "length", optional: true, rule: notNegative },
  stages: { headers: ["Stages"], kind: "number", optional: true, rule: whole(2, 6) },
  plate: PLATE,
} as const satisfies Columns;

const optionalFeed = (value: number | undefined): MillimetersPerMinute | undefined =>
  value as MillimetersPerMinute | undefined;

const asBrake = (row: Row<typeof BRAKE_COLUMNS>): Brake => ({
  name: row.name,
  ratedForce: row.ratedForce as Newtons,
  bedLength: mm(row.bedLength),
  betweenHousings: mm(row.betweenHousings),
  drive: row.drive?.toLowerCase() as Drive | undefined,
  motion: given({
    openStroke: optionalLength(row.openStroke),
    approachSpeed: optionalFeed(row.approachSpeed),
    bendSpeed: optionalFeed(row.bendSpeed),
    returnSpeed: optionalFeed(row.returnSpeed),
    gaugeSpeed: optionalFeed(row.gaugeSpeed),
  }),
  throat: optionalLength(row.throat),
  daylight: optionalLength(row.daylight),
  shutHeight: optionalLength(row.shutHeight),
  stroke: optionalLength(row.stroke),
  nearestGauge: optionalLength(row.nearestGauge),
  furthestGauge: optionalLength(row.furthestGauge),
  plate: row.plate ?? "",
});

/** Without the keys that hold nothing. */
const given = <T extends object>(values: { [K in keyof T]: T[K] | undefined }): Partial<T> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Partial<T>;

const optionalLength = (value: number | undefined): Millimeters | undefined =>
  value === undefined ? undefined : mm(value);

const asDie = (row: Row<typeof DIE_COLUMNS>): Die => ({
  name: row.name,
  opening: mm(row.opening),
  angle: degrees(row.angle),
  shoulder: optionalLength(row.shoulder),
  rating: row.rating as NewtonsPerMillimeter | undefined,
  length: optionalLength(row.length),
  blockWidth: optionalLength(row.blockWidth),
  blockHeight: optionalLength(row.blockHeight),
  sections: row.sections?.map(mm),
  plate: row.plate ?? "",
});

const asPunch = (row: Row<typeof PUNCH_COLUMNS>): Punch => ({
  name: row.name,
  nose: optionalLength(row.nose),
  angle: degrees(row.angle),
  rating: row.rating as NewtonsPerMillimeter | undefined,
  length: optionalLength(row.length),
  height: optionalLength(row.height),
  bodyWidth: optionalLength(row.bodyWidth),
  reliefDepth: optionalLength(row.reliefDepth),
  reliefWidth: optionalLength(row.reliefWidth),
  sections: row.sections?.map(mm),
  plate: row.plate ?? "",
});

const STAGES = 3; // strips, crosscuts and one more level: what a person follows at the machine, common practice

const asShear = (row: Row<typeof SHEAR_COLUMNS>, name: string, { materials }: ReadContext): Shear => ({
  name: row.name,
  ratedThickness: mm(row.ratedThickness),
  ratedIn: materials.find(row.ratedMaterial ?? RATED_MATERIAL, `${name} row ${row.row} column "Rated material"`),
  cutLength: mm(row.cutLength),
  leastHold: optionalLength(row.leastHold),
  bladeGap: optionalLength(row.bladeGap),
  pace: given({ strokesPerMinute: row.strokesPerMinute, cutsPerBlank: row.cutsPerBlank }),
  limits: {
    longestCut: mm(row.cutLength),
    reach: mm(row.reach ?? Number.POSITIVE_INFINITY),
    nearestGauge: mm(row.nearestGauge ?? 0),
    leastDrop: mm(row.leastDrop ?? 0),
    leastHold: mm(row.leastHold ?? 0),
    leastRemnant: mm(row.leastRemnant ?? LEAST_REMNANT_IN.value * MM_PER_INCH),
    remnantWorth: 0, // every row of Stock has its own
    stages: row.stages ?? STAGES,
    ...given({
      frontReach: optionalLength(row.frontReach),
      cutToMark: row.cutToMark === undefined ? undefined : row.cutToMark.toLowerCase() === "yes",
      leastTrim: optionalLength(row.leastTrim),
      twistWidth: row.twistWidth,
      twistLength: row.twistLength,
      heaviestLift: row.heaviestLift,
      stacks: row.stacks,
      longStacks: row.longStacks,
    }),
  },
  trim: mm(row.trim ?? 0),
  plate: row.plate ?? "",
});

/** Read once for all functions that take the table. A name that appears twice does not say which row is meant. */
const named = <T extends { readonly name: string }>(
  table: TableParameter<T[]>,
  column: string,
): TableParameter<T[]> => ({
  ...table,
  read: remembered((matrix, name, context) => {
    const rows = table.read(matrix, name, context);
    const seen = new Set<string>();
    for (const { name: own } of rows) {
      if (seen.has(own.toLowerCase())) throw wrong(`${name} column "${column}"`, "a different name in every row", own);
      seen.add(own.toLowerCase());
    }
    return rows;
  }),
});

const BRAKES = named(shopTable("brake table", "Press brakes of the shop", BRAKE_COLUMNS, asBrake), "Brake");
const DIES = named(shopTable("die table", "V dies of the shop", DIE_COLUMNS, asDie), "Die");
const PUNCHES = named(shopTable("punch table", "Punches of the shop", PUNCH_COLUMNS, asPunch), "Punch");
const SHEARS = named(shopTable("shear table", "Shears of the shop", SHEAR_COLUMNS, asShear), "Shear");

export const brakes = () => BRAKES;
export const dies = () => DIES;
export const punches = () => PUNCHES;
export const shears = () => SHEARS;
