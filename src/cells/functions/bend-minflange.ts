import { safeFlange, shortestFlange } from "../../calc/bend/minimum-flange.ts";
import { degrees, type Millimeters } from "../../units/quantity.ts";
import { bendAngle } from "../parameters/angle.ts";
import { choice } from "../parameters/choice.ts";
import { length, thickness } from "../parameters/length.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

const SQUARE = degrees(90); // an ordinary bracket

export const bendMinflange = defineFunction({
  name: "BEND.MINFLANGE",
  question: "How short may a flange be over this die?",
  parameters: {
    thickness: thickness("Sheet thickness"),
    dieOpening: length({ description: "Opening of the V die" }),
    bendAngle: bendAngle(SQUARE),
    shoulder: length({
      description: "Shoulder radius of the die; blank adds none",
      zero: true,
      fallback: undefined as Millimeters | undefined,
    }),
    kind: choice({
      description:
        '"safe": with shoulder and half a thickness, up to the next 1/16 in or mm; "shortest": where it falls into the die',
      words: ["safe", "shortest"] as const,
      fallback: "safe",
    }),
    units: units(),
  },
  result: { kind: "length" },
  example: { formula: "=SHOP.BEND.MINFLANGE(0.25,2)", answer: 1.5625 },
  source: "V / (2 sin(included / 2)) (derived); margin and rounding common practice",
  calculate: ({ thickness, dieOpening, bendAngle, shoulder, kind }, { system, work }) =>
    kind === "safe"
      ? safeFlange({ thickness, dieOpening, bendAngle, shoulder }, system, work)
      : shortestFlange(dieOpening, bendAngle, work),
});
