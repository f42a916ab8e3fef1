import { findPunch } from "../../bill/nouns/find-tool.ts";
import { problemsSay } from "../../bill/says.ts";
import { GRAINS } from "../../calc/bend/minimum-radius.ts";
import { rankDies } from "../../calc/bend/tools/die-choice.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { firstOf } from "../../units/certain.ts";
import { degrees, type Millimeters } from "../../units/quantity.ts";
import { fromInternal } from "../../units/system.ts";
import { bendAngle } from "../parameters/angle.ts";
import { choice } from "../parameters/choice.ts";
import { length, thickness } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { optionalToolName } from "../parameters/tool-name.ts";
import { defineFunction } from "../record/record.ts";
import { brakes, dies, punches } from "../tables/shop-tables.ts";

const SQUARE = degrees(90); // an ordinary bracket
const COLUMNS = [
  "Die",
  "Status",
  "Opening",
  "Radius",
  "Least flange",
  "Force",
  "Worst force",
  "Springback",
  "Room to die faces",
  "Why",
] as const;

export const bendDie = defineFunction({
  name: "BEND.DIE",
  question: "Which of the shop's dies suits this bend, best first?",
  parameters: {
    material: material(),
    thickness: thickness(),
    bendLength: length({ description: "Length of the bend line" }),
    brake: brakes(),
    dies: dies(),
    punches: punches(),
    flange: length({
      description: "Shortest outside flange; blank where it does not matter",
      fallback: undefined as Millimeters | undefined,
    }),
    bendAngle: bendAngle(SQUARE),
    punch: optionalToolName("Punch by its name in the table; blank means not known"),
    grain: choice({
      description: 'Bend line "across" or "along" the rolling direction; blank means not known',
      words: GRAINS,
      fallback: undefined,
    }),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "table", columns: COLUMNS },
  example: {
    formula:
      '=INDEX(SHOP.BEND.DIE("A36",0.25,24,VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)"},{"Brake 1",150,120,92}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D1",1,80},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78})),2,1)',
    answer: "D2",
  },
  source: "opening nearest to 8 thicknesses among the dies that pass BEND.CHECK (common practice)",
  calculate: (inputs, { system }): CellMatrix => {
    const { material, thickness, bendLength, flange, bendAngle, brake, dies, punches, grain } = inputs;
    const flanges = flange === undefined ? [LONG, LONG] : [flange, LONG];
    const line = { material, thickness, bendLength, flanges, bendAngles: [bendAngle], grain };
    const ranked = rankDies(line, dies, firstOf(brake), findPunch(inputs.punch, punches), system);
    const size = (value: number | undefined) => (value === undefined ? "" : fromInternal(value, "length", system));
    return [
      [...COLUMNS],
      ...ranked.map(({ die, status, estimate, leastFlange, force, faceRoom, findings }) => [
        die.name,
        status,
        size(die.opening),
        size(estimate.radius),
        size(leastFlange),
        fromInternal(force.expected, "force", system),
        fromInternal(force.worst, "force", system),
        estimate.springback ?? "",
        faceRoom ?? "",
        problemsSay(findings, system).join(" "),
      ]),
    ];
  },
});

/** A flange long enough for any die. */
const LONG = 10_000 as Millimeters;
