import { mechanicsInput } from "../../calc/bend/air-bend.ts";
import { type AirBendBand, airBendBand } from "../../calc/bend/mechanics/air-bend-band.ts";
import { airBendToAngle } from "../../calc/bend/mechanics/air-bend-to-angle.ts";
import { checkedAgainstFiniteElements } from "../../calc/bend/mechanics/checked-range.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { megapascals, mm } from "../../units/quantity.ts";
import { showNumber } from "../../units/show.ts";
import { fromInternal, type QuantityKind, unitName } from "../../units/system.ts";
import { mechanicsParameters } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { number } from "../parameters/number.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Answer", "Value", "Low", "High", "Unit", "Remark"] as const;

/** Half the width that holds 90 % of sheets and dies. Memory, unverified: mill certificates and calipers do better. */
const USUAL = { thickness: 3, strength: 10, hardening: 10, opening: 1 };

const percent = (what: string, fallback: number) =>
  number({
    description: `${what}: plus and minus so many per cent holds 9 of 10`,
    rule: { from: 0, to: 30 },
    fallback,
  });

const ROWS: readonly (readonly [keyof AirBendBand, string, QuantityKind])[] = [
  ["tangentRadius", "inside radius, tangent to both flanges", "length"],
  ["centreRadius", "tightest inside radius, at the centre", "length"],
  ["bendDeduction", "bend deduction", "length"],
  ["springback", "springback", "angle"],
  ["loadedAngle", "bend angle under load", "angle"],
  ["stroke", "punch travel from pinching the sheet; first hit short", "length"],
  ["peakForce", "largest force per length", "lineLoad"],
];

export const airBend = defineFunction({
  name: "AIR.BEND",
  question: "What comes out of this bend: radius, deduction, springback, depth and force, each with its band?",
  parameters: {
    ...mechanicsParameters(),
    thicknessBand: percent("Thickness", USUAL.thickness),
    strengthBand: percent("Strength", USUAL.strength),
    hardeningBand: percent("Hardening exponent", USUAL.hardening),
    openingBand: percent("Die opening", USUAL.opening),
    units: units(),
    data: data(),
  },
  long: true,
  result: { kind: "table", columns: COLUMNS },
  example: {
    formula: '=INDEX(SHOP.AIR.BEND("A36",0.25,90,2,0.0625),2,1)',
    answer: "inside radius, tangent to both flanges",
  },
  source:
    "air-bend mechanics with a 90 % band by propagation (derived; compared with finite elements, not with measured bends)",
  calculate: (
    { material, thickness, bendAngle, thicknessBand, strengthBand, hardeningBand, openingBand, ...tools },
    { system },
  ): CellMatrix => {
    const input = mechanicsInput(material, thickness, tools);
    const bend = airBendToAngle(input, bendAngle);
    const { strength, exponent } = input.hardening;
    const band = airBendBand(
      input,
      { finalAngle: bendAngle },
      {
        thickness: mm(thickness * (thicknessBand / 100)),
        strength: megapascals(strength * (strengthBand / 100)),
        exponent: exponent * (hardeningBand / 100),
        dieOpening: mm(tools.dieOpening * (openingBand / 100)),
      },
    );
    const outside = checkedAgainstFiniteElements(input, bend).filter(({ inside }) => !inside);
    return [
      [...COLUMNS],
      ...ROWS.map(([key, words, kind]) => {
        const { value, lower, upper } = band[key];
        return [
          words,
          ...[value, lower, upper].map((figure) => fromInternal(figure, kind, system)),
          unitName(kind, system),
          "",
        ];
      }),
      [
        "contact under the punch",
        bend.regime,
        "",
        "",
        "",
        bend.regime === "wrapped" ? "the sheet folds round the nose" : "the opening makes the radius",
      ],
      ["checked", outside.length === 0 ? "inside" : "outside", "", "", "", checkedWords(outside)],
    ];
  },
});

const checkedWords = (outside: ReturnType<typeof checkedAgainstFiniteElements>): string =>
  outside.length === 0
    ? "all inputs lie inside what was compared with finite elements; a test strip decides"
    : `${outside.map(({ quantity, value, least, most }) => `${quantity} ${showNumber(value, 3)} (checked ${showNumber(least, 3)} to ${showNumber(most, 3)})`).join(", ")}; bend a test strip`;
