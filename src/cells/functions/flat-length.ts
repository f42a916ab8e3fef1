import { flatLength as flat } from "../../calc/flat/flat-length.ts";
import { legs } from "../parameters/legs.ts";
import { radius, thickness } from "../parameters/length.ts";
import { lengths, signedBendAngles, turnPerBend } from "../parameters/list.ts";
import { k } from "../parameters/neutral-axis.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

export const flatLength = defineFunction({
  name: "FLAT.LENGTH",
  question: "How long is the flat blank for a known radius?",
  parameters: {
    flanges: lengths('Flanges in order along the strip: a range, or text such as "2; 3.5; 2"'),
    bendAngles: signedBendAngles(
      "Bend angles between them, one fewer than flanges, or one for all; a minus (a bend down) changes no length",
    ),
    thickness: thickness(),
    radius: radius(),
    k: k(),
    legs: legs(),
    units: units(),
  },
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.FLAT.LENGTH("38;25",60,3.2,4.75,"Groover","tangent","mm"),2)', answer: 69.08 },
  source: "sum of flanges less bend deductions (derived); Groover 5e example 19.2 (read)",
  contract: true,
  calculate: (strip, { work }) => flat({ ...strip, bendAngles: turnPerBend(strip.flanges, strip.bendAngles) }, work),
});
