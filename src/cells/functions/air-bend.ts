import type { AirTools } from "../../calc/bend/air-bend.ts";
import { airRadiusByRule, type RadiusBand } from "../../calc/bend/air-radius.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import { faceRoom } from "../../calc/bend/loaded-faces.ts";
import { type AirBendBand, airBendBand } from "../../calc/bend/mechanics/air-bend-band.ts";
import { withModelError } from "../../calc/bend/mechanics/model-error.ts";
import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { deviationsOf, USUAL } from "../../calc/bend/mechanics/usual-deviations.ts";
import { feasibleAirBend, nearestWords } from "../../calc/bend/solved-air-bend.ts";
import { FACE_CLEARANCE, K_DEFAULT } from "../../data/bend-rules.ts";
import type { Material } from "../../data/materials/material.ts";
import type { CellMatrix } from "../../units/cell.ts";
import type { Degrees, Millimetres } from "../../units/quantity.ts";
import { fromInternal, type QuantityKind, unitName } from "../../units/system.ts";
import { step } from "../../units/working.ts";
import { mechanicsParameters, punchAngle } from "../parameters/air.ts";
import { data } from "../parameters/material.ts";
import { number } from "../parameters/number.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Answer", "Value", "Low", "High", "Unit", "Remark"] as const;

const band = (what: string, fallback: number) =>
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

/** The letters of these figures in the working, and the units calc works in. */
const SYMBOLS: Partial<Record<keyof AirBendBand, string>> = {
  tangentRadius: "R",
  centreRadius: "Rc",
  bendDeduction: "BD",
  stroke: "s",
  peakForce: "F",
};
const INTERNAL_UNITS: Partial<Record<QuantityKind, string>> = { length: "mm", angle: "deg", lineLoad: "N/mm" };

export const airBend = defineFunction({
  name: "AIR.BEND",
  question: "What comes out of this bend: radius, deduction, springback, depth and force, each with its band?",
  parameters: {
    ...mechanicsParameters(),
    thicknessBand: band("Thickness", USUAL.thickness),
    strengthBand: band("Strength", USUAL.strength),
    hardeningBand: band("Hardening exponent", USUAL.hardening),
    openingBand: band("Die opening", USUAL.opening),
    punchAngle: punchAngle(),
    units: units(),
    data: data(),
  },
  long: true,
  result: { kind: "table", columns: COLUMNS },
  example: {
    formula: '=INDEX(SHOP.AIR.BEND("A36",0.25,90,2,0.0625),2,1)',
    answer: "inside radius, tangent to both flanges",
  },
  source: `${MECHANICS}; 90 % band of stock and die by propagation, with the model's own error against finite elements (derived)`,
  calculate: (
    { material, thickness, bendAngle, thicknessBand, strengthBand, hardeningBand, openingBand, ...tools },
    { system, work },
  ): CellMatrix => {
    const { input, bend, nearest } = feasibleAirBend({ material, thickness, bendAngle, tools }, work);
    const percent = {
      thickness: thicknessBand,
      strength: strengthBand,
      hardening: hardeningBand,
      opening: openingBand,
    };
    const deviations = deviationsOf(input, percent);
    const ofStock = airBendBand(input, { finalAngle: bendAngle }, deviations, bend);
    const widened = withModelError(ofStock, input, nearest.distance);
    const room = faceRoom(bend.loadedAngle, tools);
    const length = unitName("length", system);
    const byRule = ruleFigures(material, thickness, bendAngle, tools);
    return [
      [...COLUMNS],
      ...ROWS.map(([key, words, kind]) => {
        const { value, lower, upper } = widened[key];
        const unit = unitName(kind, system);
        const symbol = SYMBOLS[key]; // springback and loaded angle stand in the working already
        if (symbol) step(work, symbol, words, value, INTERNAL_UNITS[kind]!, MECHANICS);
        return [words, ...[value, lower, upper].map((figure) => fromInternal(figure, kind, system)), unit, ""];
      }),
      [
        "contact under the punch",
        bend.regime,
        "",
        "",
        "",
        bend.regime === "wrapped" ? "the sheet folds round the nose" : "the opening makes the radius",
      ],
      ["compared", nearest.inside ? "inside" : "outside", "", "", "", nearestWords(nearest)],
      ["short of the faces", room ?? "", "", "", room === undefined ? "" : "deg", faceWords(room, bend.loadedAngle)],
      ...byRule.map(([words, band]) => [
        words,
        ...(band === undefined
          ? ["", "", ""]
          : [band.expected, band.low, band.high].map((figure) => fromInternal(figure, "length", system))),
        length,
        band === undefined ? "no share of the opening is known" : "common practice, to compare",
      ]),
    ];
  },
});

const faceWords = (room: number | undefined, loadedAngle: number): string =>
  room === undefined
    ? `die and punch angle not given; they need at most ${Math.floor(180 - loadedAngle - FACE_CLEARANCE.value)} deg`
    : room < FACE_CLEARANCE.value
      ? "too little: a stronger sheet bottoms"
      : "clear of die and punch";

/** Radius and deduction by rule with what its two shares span, to lay beside the mechanics. */
function ruleFigures(
  material: Material,
  thickness: Millimetres,
  bendAngle: Degrees,
  { dieOpening, punchNose }: AirTools,
): readonly (readonly [string, RadiusBand | undefined])[] {
  const known = material.airRadiusLow && material.airRadiusHigh;
  const radius = known && airRadiusByRule(material, dieOpening, punchNose);
  const at = (inside: Millimetres) => bendDeduction(thickness, inside, bendAngle, K_DEFAULT.value, "outside");
  return [
    ["inside radius by rule", radius],
    ["bend deduction by rule", radius && { low: at(radius.low), expected: at(radius.expected), high: at(radius.high) }],
  ];
}
