import { holeLimits } from "../../calc/bend/hole-distance.ts";
import { K_DEFAULT } from "../../data/bend-rules.ts";
import { degrees } from "../../units/quantity.ts";
import type { Working } from "../../units/working.ts";
import { bendAngle } from "../parameters/angle.ts";
import { choice } from "../parameters/choice.ts";
import { length, radius, thickness } from "../parameters/length.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

const SQUARE = degrees(90); // an ordinary bracket

export const bendHoledistance = defineFunction({
  name: "BEND.HOLEDISTANCE",
  question: "How far from the other flange's inside face must a hole's edge stay?",
  parameters: {
    thickness: thickness("Sheet thickness"),
    radius: radius(),
    dieOpening: length({ description: "Opening of the V die" }),
    bendAngle: bendAngle(SQUARE),
    kind: choice({
      description:
        '"fine": the hole keeps its shape; "drill after": below this it must be drilled after bending; between, it distorts',
      words: ["fine", "drill after"] as const,
      fallback: "fine",
    }),
    units: units(),
  },
  result: { kind: "length" },
  example: { formula: '=SHOP.BEND.HOLEDISTANCE(0.25,0.3125,2,90,"drill after")', answer: 0.8125 },
  source: "2t + R beyond the inside face, and half the opening from the bend line (common practice)",
  calculate: ({ thickness, radius, dieOpening, bendAngle, kind }, { work }) => {
    const steps: Working = [];
    const limits = holeLimits({ thickness, radius, dieOpening, bendAngle, k: K_DEFAULT.value }, work && steps);
    // The first step is the answer of "drill after"; the others belong to "fine".
    work?.push(...(kind === "fine" ? steps : steps.slice(0, 1)));
    return kind === "fine" ? limits.fine : limits.drillAfter;
  },
});
