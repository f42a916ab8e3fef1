import { bedEvenness, PLAIN_BRACKET } from "../../calc/strip/bed-evenness.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { itemAt } from "../../units/certain.ts";
import { mm } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { fromInternal, unitName } from "../../units/system.ts";
import { dieOpening } from "../parameters/air.ts";
import { angle } from "../parameters/angle.ts";
import { bendAngles, positions } from "../parameters/list.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Answer", "Value", "Unit", "Remark"] as const;

export const stripEvenness = defineFunction({
  name: "STRIP.EVENNESS",
  question: "Is the brake true along its bed, and if not, how must ram or crowning change?",
  parameters: {
    along: positions("Places along the bed where the strips were bent, from one end"),
    bendAngles: bendAngles("Bend angle read at each place"),
    dieOpening: dieOpening(),
    tolerance: angle({
      description: "What the parts need, plus and minus",
      rule: { from: 0, above: true, to: 30 },
      fallback: PLAIN_BRACKET,
    }),
    units: units(),
  },
  long: true,
  result: { kind: "table", columns: COLUMNS },
  example: { formula: '=INDEX(SHOP.STRIP.EVENNESS("0;60;120","90;91;90",2),2,2)', answer: 1 },
  source:
    "ram travel V / (4 sin^2(included / 2)) per radian, least squares along the bed (derived); a plain bracket needs about 1 degree (memory)",
  calculate: ({ along, bendAngles, dieOpening, tolerance }, { system, work }): CellMatrix => {
    if (along.length !== bendAngles.length)
      throw wrong("along and bend_angles", "equally many", `${along.length} and ${bendAngles.length}`);
    const readings = along.map((place, i) => ({ along: mm(place), bendAngle: itemAt(bendAngles, i) }));
    const even = bedEvenness(readings, dieOpening, tolerance, work);
    const length = (value: number) => fromInternal(value, "length", system);
    const unit = unitName("length", system);
    return [
      [...COLUMNS],
      ["spread", even.spread, "deg", "greatest less least angle"],
      ["mean", even.mean, "deg", ""],
      [
        "worst at",
        length(even.worstAt),
        unit,
        even.worstBy > 0 ? "bent more than the mean" : "bent less than the mean",
      ],
      ["off by", even.worstBy, "deg", "against the mean"],
      ["ram per degree", length(even.ramPerDegree), unit, "travel that changes the angle by one degree in this die"],
      ["tilt", length(even.tilt), unit, "lower the far end of the ram by this much (negative: raise it)"],
      [
        "crown",
        even.crown === undefined ? "" : length(even.crown),
        unit,
        even.crown === undefined ? "needs three places" : "crown the middle up by this much (negative: less)",
      ],
      ["verdict", even.even ? "true enough" : "not true", "", `parts need plus and minus ${tolerance} deg`],
    ];
  },
});
