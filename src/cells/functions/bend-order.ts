import { bendDeduction } from "../../calc/bend/deduction.ts";
import { type BendOrder, bendOrder as findOrder, type OrderedHit } from "../../calc/bend/order/order.ts";
import { legInWords } from "../../calc/bend/order/watch.ts";
import type { CellMatrix, CellValue } from "../../units/cell.ts";
import { degrees } from "../../units/quantity.ts";
import { show } from "../../units/show.ts";
import { fromInternal, type UnitSystem } from "../../units/system.ts";
import { angle } from "../parameters/angle.ts";
import { radius, thickness } from "../parameters/length.ts";
import { anglePerBend, lengths, signedBendAngles } from "../parameters/list.ts";
import { k } from "../parameters/neutral-axis.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { outlines, pressSettings } from "../tables/press-tables.ts";

const COLUMNS = ["Hit", "Bend", "Gauged end", "Handling", "Stop", "Datum", "Verdict", "Gap", "What"] as const;
const NO_OVERBEND = degrees(0);
/** A flat plate is cut only. */
const NO_BENDS: CellValue[] = ["", "", "", "", "", "", "no bends", "", "cut only"];

export const bendOrder = defineFunction({
  name: "BEND.ORDER",
  question: "In which order can this part be bent on these tools, or what is in the way?",
  parameters: {
    flanges: lengths('Outside flanges in order along the strip: a range, or text such as "1; 2; 1"'),
    bendAngles: signedBendAngles("Bend angles between them, negative where the bend goes down; one stands for all"),
    thickness: thickness(),
    radius: radius(),
    outlines: outlines(),
    press: pressSettings(),
    springback: angle({
      description: "Degrees by which every bend must be overbent, as AIR.SPRINGBACK gives them",
      rule: { from: 0, to: 60 },
      fallback: NO_OVERBEND,
    }),
    k: k(),
    units: units(),
  },
  result: { kind: "table", columns: COLUMNS },
  long: true,
  example: {
    formula:
      '=INDEX(SHOP.BEND.ORDER("40;60;40",90,2,3,{"Tool","X","Y";"punch",0,0;"punch",10,17.32;"punch",10,120;"punch",-10,120;"punch",-10,17.32;"ram",-40,120;"ram",40,120;"ram",40,600;"ram",-40,600;"die",-20,0;"die",-8,0;"die",0,-9.53;"die",8,0;"die",20,0;"die",20,-60;"die",-20,-60;"bed",-50,-60;"bed",50,-60;"bed",50,-700;"bed",-50,-700;"finger",0,0;"finger",60,0;"finger",60,25;"finger",0,25},{"Opening","Shoulder radius","Die angle","Finger from","Finger to","Nearest stop","Furthest stop","Finger draws back","Open height","Stroke","Clearance","Off the end";16,0,80,0,25,5,700,"yes",150,200,1,"no"},2,,"mm"),2,7)',
    answer: "clear",
  },
  source:
    "plane geometry of sheet and tool outlines, dynamic programming over sets of finished bends (derived); box ends and split tools are not seen",
  calculate: (
    { flanges, bendAngles, thickness, radius, outlines, press, springback, k },
    { system, work },
  ): CellMatrix => {
    const bends = anglePerBend(flanges, bendAngles).map((angle) => ({
      angle,
      insideRadius: radius,
      deduction: bendDeduction({ thickness, radius, bendAngle: degrees(Math.abs(angle)), k, legs: "outside" }),
    }));
    if (bends.length === 0) return [[...COLUMNS], NO_BENDS];
    const found = findOrder(
      { thickness, flanges, bends },
      bends.map(() => springback),
      { ...outlines, ...press },
      work,
    );
    return [[...COLUMNS], ...rowsOf(found, system)];
  },
});

function rowsOf(found: BendOrder, system: UnitSystem): CellValue[][] {
  const length = (value: number) => fromInternal(value, "length", system);
  const made = (hit: OrderedHit, i: number): CellValue[] => [
    i + 1,
    hit.bend,
    hit.gaugedEnd,
    [hit.turned ? "turn" : "", hit.flipped ? "flip" : ""].filter(Boolean).join(" and ") || "as it lies",
    length(hit.stop),
    `${hit.datum.on} of flange ${hit.datum.flange}`,
    hit.verdict,
    hit.gap === undefined ? "" : length(hit.gap),
    hit.slidesOff
      ? "comes off over the end of the punch"
      : hit.nearest
        ? `flange ${hit.nearest.leg} passes ${hit.nearest.tool} (${hit.nearest.phase})`
        : "",
  ];
  if (found.feasible) return found.hits.map(made);
  return [
    ...found.finished.map(made),
    ...found.blocked.map(({ bend, gaugedEnd, obstacle }): CellValue[] => [
      "",
      bend,
      gaugedEnd,
      "",
      "",
      "",
      "collides",
      -length(obstacle.by),
      `${legInWords(obstacle)} meets ${obstacle.tool} (${obstacle.phase}) by ${show(obstacle.by, "length", system)}`,
    ]),
  ];
}
