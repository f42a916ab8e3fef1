/** What the shear can do, as far as a cut plan must know. The shop's shear table may be given: it has these columns. */
import type { Limits } from "../../calc/cutting/types.ts";
import { type Millimetres, mm } from "../../units/quantity.ts";
import { between, type Columns, notNegative, positive, type Row, whole } from "../parameters/read-table.ts";
import { shopTable } from "../parameters/shop-table.ts";
import type { TableParameter } from "../record/record.ts";

const LIMIT_COLUMNS = {
  longestCut: { headers: ["Cut length", "Longest cut"], kind: "length", rule: positive },
  reach: { headers: ["Gauge reach"], kind: "length", optional: true, rule: positive },
  nearestGauge: { headers: ["Nearest gauge"], kind: "length", optional: true, rule: notNegative },
  leastDrop: { headers: ["Least drop"], kind: "length", optional: true, rule: notNegative },
  leastHold: { headers: ["Least hold-down"], kind: "length", optional: true, rule: notNegative },
  trim: { headers: ["Edge trim"], kind: "length", optional: true, rule: notNegative },
  leastRemnant: { headers: ["Least remnant"], kind: "length", optional: true, rule: notNegative },
  remnantWorth: { headers: ["Remnant worth"], kind: "number", optional: true, rule: between(0, 1) },
  stages: { headers: ["Stages"], kind: "number", optional: true, rule: whole(2, 6) },
} as const satisfies Columns;

export interface CutLimits {
  readonly limits: Limits;
  readonly trim: Millimetres;
}

const STAGES = 3; // strips, crosscuts and one more level: what a person follows at the machine, common practice

const asLimits = (row: Row<typeof LIMIT_COLUMNS>): CutLimits => ({
  limits: {
    longestCut: mm(row.longestCut),
    reach: mm(row.reach ?? Number.POSITIVE_INFINITY),
    nearestGauge: mm(row.nearestGauge ?? 0),
    leastDrop: mm(row.leastDrop ?? 0),
    leastHold: mm(row.leastHold ?? 0),
    leastRemnant: mm(row.leastRemnant ?? 0),
    remnantWorth: row.remnantWorth ?? 0,
    stages: row.stages ?? STAGES,
  },
  trim: mm(row.trim ?? 0),
});

export const cutLimits = (): TableParameter<CutLimits[]> =>
  shopTable(
    "limit table",
    "What the shear can do; the first row is used, and the shop's shear table may be given",
    LIMIT_COLUMNS,
    asLimits,
  );
