import { mendSentence } from "../../bill/fix-says.ts";
import { fixOf, statusAlone } from "../../bill/lines/fix.ts";
import { isPlanned, planLine } from "../../bill/lines/plan-line.ts";
import { planAlone } from "../../bill/lines/plan-lines.ts";
import { BESIDE_BENDS, type BillLine } from "../../bill/nouns/line.ts";
import { emptyShop } from "../../bill/nouns/shop.ts";
import { problemsSay } from "../../bill/says.ts";
import { GRAINS } from "../../calc/bend/minimum-radius.ts";
import { statusOf } from "../../calc/finding.ts";
import { RATED_MATERIAL } from "../../data/shear-rules.ts";
import type { Millimeters } from "../../units/quantity.ts";
import { choice } from "../parameters/choice.ts";
import { length, thickness } from "../parameters/length.ts";
import { anglePerBend, lengths, signedBendAngles } from "../parameters/list.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { optionalToolName, toolName } from "../parameters/tool-name.ts";
import { defineFunction } from "../record/record.ts";
import { brakes, dies, punches } from "../tables/shop-tables.ts";

export const bendCheck = defineFunction({
  name: "BEND.CHECK",
  question: "Does this part bend on this brake, die and punch, and if not, what is nearest that does?",
  parameters: {
    material: material(),
    thickness: thickness(),
    bendLength: length({ description: "Length of the bend line" }),
    flanges: lengths('Outside flanges in order along the strip: a range, or text such as "2; 3.5; 2"'),
    bendAngles: signedBendAngles("Bend angles between them, one fewer than flanges, or one for all"),
    die: toolName("Die by its name in the table, or by its opening"),
    brake: brakes(),
    dies: dies(),
    punches: punches(),
    punch: optionalToolName("Punch by its name in the table; blank: the best one is chosen"),
    grain: choice({
      description: 'Bend line "across" or "along" the rolling direction; blank means not known, judged as along',
      words: GRAINS,
      fallback: undefined,
    }),
    holeDistance: length({
      description: "From the other flange's inside face to the nearest hole's edge; blank for no hole",
      zero: true,
      fallback: undefined as Millimeters | undefined,
    }),
    ...unitsAndData(),
  },
  long: true,
  result: { kind: "row", columns: ["Status", "Sentence"] },
  example: {
    formula:
      '=INDEX(SHOP.BEND.CHECK("A36",0.25,24,"1;3",90,"V 2",VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)"},{"Brake 1",150,120,92}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"V 2",2,78}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"Plain",0.0625,75}),"Plain"),1,1)',
    answer: "stop",
  },
  source:
    "force by Lange as BEND.TONNAGE, raised where the sheet wraps a nose that nearly fills the die (derived; AIR.TONNAGE solves the bend: usually lower, 6061-T6 over wide dies to 11 % higher), flange, radius, loaded angle, opening, hole and bend order as the plan of a bill checks them, each with its source in WORKING; every fix tried; the plate decides",
  calculate: (inputs, { system, materials, work }) => {
    const { flanges, bendLength, brake, dies, punches, punch, die, grain, holeDistance } = inputs;
    const { material, thickness } = inputs;
    const main = { flanges, angles: anglePerBend(flanges, inputs.bendAngles), bendLength };
    const line = { ...PLAIN, material, thickness, nominal: thickness, main, width: bendLength, grain, holeDistance };
    const named: BillLine = { ...line, die: String(die), punch: punch === undefined ? undefined : String(punch) };
    const none = emptyShop(materials.find(RATED_MATERIAL, "rated material"), system);
    const shop = { ...none, brakes: brake, dies, punches, given: ["brakes", "dies", "punches"] as const };
    const plan = planAlone(named, shop);
    if (!isPlanned(plan)) throw plan.refusal;
    if (work) planLine(plan.line, plan.tools, shop, work);
    const status = statusOf(plan.findings);
    const fix = fixOf(named, plan, status, shop, (changed) => statusAlone(changed, shop));
    const said = problemsSay(plan.findings, system);
    const then = mendSentence(plan.findings, fix, system);
    return [status, status === "clear" ? CLEAR : [...said, then].join(" ").trim()];
  },
});

const CLEAR = "No problem found against the tables given; the machine's plate decides.";

/** The fields of a bill's line that a single bend does not have. */
const PLAIN = {
  ...BESIDE_BENDS,
  row: 2,
  cross: undefined,
  offCenter: undefined,
  radius: undefined,
  radiusTolerance: undefined,
  tolerance: undefined,
  die: undefined,
  punch: undefined,
  brake: undefined,
} as const;
