/** The shop's own tables: which columns each has, and how a row becomes a machine or a tool. */
import type { Brake, Die, Punch } from "../../calc/bend/tooling.ts";
import type { Shear } from "../../calc/shear/check.ts";
import { type CellMatrix, isBlank } from "../../units/cell.ts";
import { degrees, type Millimetres, mm, type Newtons, type NewtonsPerMillimetre } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import type { TableParameter } from "../record.ts";
import { between, type Columns, positive, type Row, readTable } from "./read-table.ts";

export const BRAKE_COLUMNS = {
  name: { headers: ["Brake", "Name"], kind: "text" },
  ratedForce: { headers: ["Rated force"], kind: "force", rule: positive },
  bedLength: { headers: ["Bed length"], kind: "length", rule: positive },
  betweenHousings: { headers: ["Between housings"], kind: "length", rule: positive },
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
} as const satisfies Columns;

const asBrake = (row: Row<typeof BRAKE_COLUMNS>): Brake => ({
  name: row.name,
  ratedForce: row.ratedForce as Newtons,
  bedLength: mm(row.bedLength),
  betweenHousings: mm(row.betweenHousings),
});

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

const asShear = (row: Row<typeof SHEAR_COLUMNS>): Shear => ({
  name: row.name,
  ratedThickness: mm(row.ratedThickness),
  ratedMaterial: row.ratedMaterial,
  cutLength: mm(row.cutLength),
  leastHold: optionalLength(row.leastHold),
  knifeGap: optionalLength(row.knifeGap),
});

function table<C extends Columns, T>(
  type: string,
  description: string,
  columns: C,
  convert: (row: Row<C>) => T,
): TableParameter<T[]> {
  const headers = Object.values(columns).map(({ headers: [first], optional }) => (optional ? `[${first}]` : first));
  return {
    shape: "table",
    type,
    description: `${description}: a range with a header row (${headers.join(", ")}), units in brackets in the header`,
    optional: false,
    default: null,
    read: (given: CellMatrix, name, { system }) => {
      if (given.every((row) => row.every(isBlank))) throw wrong(name, "given", null);
      const rows = readTable(given, columns, name, system).map(convert);
      if (rows.length === 0) throw wrong(name, "a range with at least one row below its header", null);
      return rows;
    },
  };
}

export const brakes = () =>
  table("brake table", "Press brakes of the shop; the first row is used", BRAKE_COLUMNS, asBrake);
export const dies = () => table("die table", "V dies of the shop", DIE_COLUMNS, asDie);
export const punches = () => table("punch table", "Punches of the shop", PUNCH_COLUMNS, asPunch);
export const shears = () =>
  table("shear table", "Shears of the shop; the first row is used unless one is named", SHEAR_COLUMNS, asShear);
