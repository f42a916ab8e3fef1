/** Test strips as the shop measured them, and what the mechanics had predicted for each. */
import { mechanicsInput } from "../../calc/bend/air-bend.ts";
import { airBendToAngle } from "../../calc/bend/mechanics/air-bend-to-angle.ts";
import type { StripRecord } from "../../calc/strip/shop-correction.ts";
import { READING, stripDeduction } from "../../calc/strip/strip-deduction.ts";
import { degrees, type Millimeters, mm } from "../../units/quantity.ts";
import { Refusal, wrong } from "../../units/refusal.ts";
import { between, type Columns, notNegative, positive, type Row } from "../parameters/read-table.ts";
import { shopTable } from "../parameters/shop-table.ts";
import { unreadColumns } from "../parameters/unread-columns.ts";
import type { ReadContext, TableParameter } from "../record/record.ts";
import { thicknessOf } from "../tables/stock.ts";

const STRIP_COLUMNS = {
  material: { headers: ["Material"], kind: "text" },
  thickness: { headers: ["Thickness"], kind: "thickness" },
  blank: { headers: ["Blank"], kind: "length", rule: positive },
  flange1: { headers: ["Flange 1"], kind: "length", rule: positive },
  flange2: { headers: ["Flange 2"], kind: "length", rule: positive },
  bendAngle: { headers: ["Bend angle"], kind: "angle", rule: between(10, 170, " degrees") },
  opening: { headers: ["Opening"], kind: "length", rule: positive },
  nose: { headers: ["Punch nose", "Nose radius"], kind: "length", optional: true, rule: notNegative },
  dieAngle: { headers: ["Die angle"], kind: "angle", optional: true, rule: between(20, 150, " degrees") },
  shoulder: { headers: ["Shoulder radius"], kind: "length", optional: true, rule: notNegative },
  width: { headers: ["Strip width"], kind: "length", optional: true, rule: positive },
  force: { headers: ["Peak force", "Force"], kind: "force", optional: true, rule: positive },
  loadedAngle: { headers: ["Loaded angle"], kind: "angle", optional: true, rule: between(10, 175, " degrees") },
} as const satisfies Columns;

function asRecord(row: Row<typeof STRIP_COLUMNS>, name: string, context: ReadContext): StripRecord {
  const label = (column: string) => `${name} row ${row.row} column "${column}"`;
  const material = context.materials.find(row.material, label("Material"));
  const thickness = thicknessOf(row.thickness, material, label("Thickness"), context);
  const optional = (value: number | undefined): Millimeters | undefined =>
    value === undefined ? undefined : mm(value);
  const bendAngle = degrees(row.bendAngle);
  const tools = {
    dieOpening: mm(row.opening),
    punchNose: optional(row.nose),
    dieShoulder: optional(row.shoulder),
    dieAngle: row.dieAngle === undefined ? undefined : degrees(row.dieAngle),
  };
  const { predicted, measured } = ofRow(`${name} row ${row.row}`, () => {
    const predicted = airBendToAngle(mechanicsInput(material, thickness, tools), bendAngle);
    const flanges = [mm(row.flange1), mm(row.flange2)] as const;
    const { tangentRadius } = predicted;
    const measured = stripDeduction({ thickness, blank: mm(row.blank), flanges, bendAngle, tangentRadius }, READING);
    return { predicted, measured };
  });
  if (row.force !== undefined && row.width === undefined)
    throw wrong(label("Strip width"), "given where there is a peak force", null);
  const perLength = row.force === undefined || row.width === undefined ? undefined : row.force / row.width;
  const opened = row.loadedAngle === undefined ? undefined : row.loadedAngle - row.bendAngle;
  return {
    material: material.name,
    regime: predicted.regime,
    thickness,
    dieOpening: tools.dieOpening,
    tangentRadius: predicted.tangentRadius,
    measuredFraction: measured.neutralFraction,
    predictedFraction: predicted.neutralFraction,
    deviation: measured.deviation,
    ...(perLength === undefined ? {} : { forceRatio: perLength / predicted.peakForce }),
    ...(opened === undefined ? {} : { springbackRatio: opened / predicted.springback }),
  };
}

/** What the arithmetic refuses is a fault of this row. */
function ofRow<T>(where: string, action: () => T): T {
  try {
    return action();
  } catch (problem) {
    if (problem instanceof Refusal) throw new Refusal(problem.code, `${where}: ${problem.message}`);
    throw problem;
  }
}

export interface Strips {
  readonly records: readonly StripRecord[];
  /** Headers that are not the table's, each with the nearest one that is. */
  readonly unread: readonly string[];
}

const RECORDS = shopTable(
  "strip table",
  "Measured test strips, one a row; force needs the strip's width",
  STRIP_COLUMNS,
  asRecord,
);

export const strips = (): TableParameter<Strips> => ({
  ...RECORDS,
  read: (given, name, context) => ({
    records: RECORDS.read(given, name, context),
    unread: unreadColumns(given, STRIP_COLUMNS),
  }),
});
