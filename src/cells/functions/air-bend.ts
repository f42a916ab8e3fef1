import type { AirTools } from "../../calc/bend/air-bend.ts";
import { airRadiusByRule, type RadiusBand } from "../../calc/bend/air-radius.ts";
import { feasibleAirShape, shareWords } from "../../calc/bend/air-shape.ts";
import { bendDeduction } from "../../calc/bend/deduction.ts";
import { faceRoom, largestFace } from "../../calc/bend/loaded-faces.ts";
import { type AirBendBand, airBendBand } from "../../calc/bend/mechanics/air-bend-band.ts";
import { withModelError } from "../../calc/bend/mechanics/model-error.ts";
import { MECHANICS } from "../../calc/bend/mechanics/record-bend.ts";
import { deviationsOf, USUAL } from "../../calc/bend/mechanics/usual-deviations.ts";
import { shapeBand } from "../../calc/bend/radius-band.ts";
import { nearestWords, solvedAirBend } from "../../calc/bend/solved-air-bend.ts";
import { FACE_CLEARANCE, K_DEFAULT } from "../../data/bend-rules.ts";
import type { Material } from "../../data/materials/material.ts";
import type { CellMatrix } from "../../units/cell.ts";
import type { Degrees, Millimeters } from "../../units/quantity.ts";
import { fromInternal, type QuantityKind, unitName } from "../../units/system.ts";
import { step } from "../../units/working.ts";
import { mechanicsParameters, punchAngle } from "../parameters/air.ts";
import { unitsAndData } from "../parameters/material.ts";
import { number } from "../parameters/number.ts";
import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Answer", "Value", "Low", "High", "Unit", "Remark"] as const;

const band = (what: string, fallback: number) =>
  number({
    description: `${what}, plus and minus the percent that holds 9 of 10`,
    rule: { from: 0, to: 30 },
    fallback,
  });

/** With the letter of the figure in the working and the unit calc works in; what the solved bend has recorded stands there. */
const ROWS: readonly {
  readonly key: keyof AirBendBand;
  readonly words: string;
  readonly kind: QuantityKind;
  readonly symbol: string;
  readonly unit: string;
  readonly isRecorded?: true;
}[] = [
  { key: "centerRadius", words: "tightest inside radius, at the center", kind: "length", symbol: "Rc", unit: "mm" },
  { key: "springback", words: "springback", kind: "angle", symbol: "dA", unit: "deg", isRecorded: true },
  { key: "loadedAngle", words: "bend angle under load", kind: "angle", symbol: "2a", unit: "deg", isRecorded: true },
  {
    key: "stroke",
    words: "punch travel once it touches the sheet; make the first hit short",
    kind: "length",
    symbol: "s",
    unit: "mm",
  },
  { key: "peakForce", words: "largest force per length", kind: "lineLoad", symbol: "F", unit: "N/mm" },
];
const BAND = "90 % band of stock and die, by squares with the error of the model (derived)";

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
    ...unitsAndData(),
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
    const asked = { material, thickness, bendAngle, tools };
    // Radius and deduction are those that a flat is made with; the rest only the mechanics can say.
    const shape = feasibleAirShape(asked, material.airMethod === "best" ? "best" : "mechanics", work);
    const axis = { thickness, radius: shape.radius, bendAngle, k: shape.neutralAxis, legs: "outside" } as const;
    bendDeduction(axis, work, shape.axisSource);
    const { input, bend, nearest } = solvedAirBend(asked);
    const percent = {
      thickness: thicknessBand,
      strength: strengthBand,
      hardening: hardeningBand,
      opening: openingBand,
    };
    const ofStock = airBendBand(input, { finalAngle: bendAngle }, deviationsOf(input, percent), bend);
    const widened = withModelError(ofStock, input, nearest.distance);
    const { radius, deduction } = shapeBand(asked, shape, widened);
    const recordBand = (symbol: string, words: string, ends: { low: number; high: number }, unit: string) => {
      for (const end of ["low", "high"] as const)
        step(work, `${symbol} ${end}`, `${words}, ${end}`, ends[end], unit, BAND);
    };
    recordBand("R", "inside radius, tangent to both flanges", radius, "mm");
    recordBand("BD", "bend deduction", deduction, "mm");
    const room = faceRoom(bend.loadedAngle, tools);
    const figures = ({ low, expected, high }: RadiusBand) =>
      [expected, low, high].map((figure) => fromInternal(figure, "length", system));
    const length = unitName("length", system);
    const by = shareWords(shape.mechanicsShare);
    const rows = ROWS.map(({ key, words, kind, symbol, unit, isRecorded }) => {
      const { value, lower, upper } = widened[key];
      if (!isRecorded) step(work, symbol, words, value, unit, MECHANICS);
      recordBand(symbol, words, { low: lower, high: upper }, unit);
      const shown = [value, lower, upper].map((figure) => fromInternal(figure, kind, system));
      return [words, ...shown, unitName(kind, system), ""];
    });
    return [
      [...COLUMNS],
      ["inside radius, tangent to both flanges", ...figures(radius), length, by],
      ...rows.slice(0, 1),
      ["bend deduction", ...figures(deduction), length, by],
      ...rows.slice(1),
      [
        "contact under the punch",
        bend.regime,
        "",
        "",
        "",
        bend.regime === "wrapped" ? "the sheet folds around the nose" : "the opening makes the radius",
      ],
      ["compared", nearest.inside ? "inside" : "outside", "", "", "", nearestWords(nearest)],
      ["short of the faces", room ?? "", "", "", room === undefined ? "" : "deg", faceWords(room, bend.loadedAngle)],
      ...ruleFigures(material, thickness, bendAngle, tools).map(([words, band]) => [
        words,
        ...(band === undefined ? ["", "", ""] : figures(band)),
        length,
        band === undefined ? "no share of the opening is known" : "common practice, to compare",
      ]),
      ["inside radius by mechanics", ...figures(asBand(widened.tangentRadius)), length, "to compare"],
      ["bend deduction by mechanics", ...figures(asBand(widened.bendDeduction)), length, "to compare"],
    ];
  },
});

const asBand = ({ value, lower, upper }: AirBendBand["tangentRadius"]): RadiusBand => ({
  low: lower,
  expected: value,
  high: upper,
});

const faceWords = (room: number | undefined, loadedAngle: Degrees): string =>
  room === undefined
    ? `die and punch angle not given; they need at most ${largestFace(loadedAngle)} deg`
    : room < FACE_CLEARANCE.value
      ? "too little: a stronger sheet bottoms"
      : "clear of die and punch";

/** Radius and deduction by rule with what its two shares span, to lay beside the mechanics. */
function ruleFigures(
  material: Material,
  thickness: Millimeters,
  bendAngle: Degrees,
  { dieOpening, punchNose }: AirTools,
): readonly (readonly [string, RadiusBand | undefined])[] {
  const known = material.airRadiusLow && material.airRadiusHigh;
  const radius = known && airRadiusByRule(material, dieOpening, punchNose);
  const bend = { thickness, bendAngle, k: K_DEFAULT.value, legs: "outside" } as const;
  const at = (inside: Millimeters) => bendDeduction({ ...bend, radius: inside });
  return [
    ["inside radius by rule", radius],
    ["bend deduction by rule", radius && { low: at(radius.low), expected: at(radius.expected), high: at(radius.high) }],
  ];
}
