import { bendDeduction } from "../../calc/bend/deduction.ts";
import { bendStops as stops } from "../../calc/bend/order/stops.ts";
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { firstOf } from "../../units/certain.ts";
import { degrees } from "../../units/quantity.ts";
import { fromInternal } from "../../units/system.ts";
import { radius, thickness } from "../parameters/length.ts";
import { anglePerBend, bendSequence, gaugedEnds, lengths, signedBendAngles } from "../parameters/list.ts";
import { k } from "../parameters/neutral-axis.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Hit", "Bend", "Stop", "Gauged end", "Datum", "Datum flange points"] as const;

/** A flat plate is cut only. */
const NO_BENDS: CellValue[] = ["", "", "", "", "no bends: cut only", ""];

export const bendStops = defineFunction({
  name: "BEND.STOPS",
  question: "Where does the back gauge stand for each bend, in this order?",
  parameters: {
    flanges: lengths('Outside flanges in order along the strip: a range, or text such as "1; 2; 1"'),
    bendAngles: signedBendAngles("Bend angles between them, negative where the bend goes down; one stands for all"),
    order: bendSequence('Bends in the order they are made, counted from the first flange: "1; 3; 2"'),
    thickness: thickness(),
    radius: radius(),
    k: k(),
    gaugedEnds: gaugedEnds('Which end is at the gauge for each hit, "first" or "last"; one stands for all'),
    units: units(),
  },
  result: { kind: "table", columns: COLUMNS },
  example: { formula: '=ROUND(INDEX(SHOP.BEND.STOPS("1;2;1",90,"1;2",0.125,0.125),2,3),4)', answer: 0.8894 },
  source: "flat sums to the bend line; past a finished bend its outside, BD / 2 beyond its line (derived)",
  calculate: ({ flanges, bendAngles, order, thickness, radius, k, gaugedEnds }, { system, work }): CellMatrix => {
    const bends = anglePerBend(flanges, bendAngles).map((angle) => ({
      angle,
      insideRadius: radius,
      deduction: bendDeduction({ thickness, radius, bendAngle: degrees(Math.abs(angle)), k, legs: "outside" }),
    }));
    if (bends.length === 0) return [[...COLUMNS], NO_BENDS];
    const hits = order.map((bend, i) => ({ bend, gaugedEnd: gaugedEnds[i] ?? firstOf(gaugedEnds) }));
    return [
      [...COLUMNS],
      ...stops({ thickness, flanges, bends }, hits, work).map(({ bend, stop, gaugedEnd, datum, points }, i) => [
        i + 1,
        bend,
        fromInternal(stop, "length", system),
        gaugedEnd,
        `${datum.on} of flange ${datum.flange}`,
        points,
      ]),
    ];
  },
});
