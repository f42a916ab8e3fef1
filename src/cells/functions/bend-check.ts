import { checkBend } from "../../calc/bend/check/check.ts";
import { GRAINS } from "../../calc/bend/minimum-radius.ts";
import { sentences, statusOf } from "../../calc/problem.ts";
import type { Millimetres } from "../../units/quantity.ts";
import { choice } from "../parameters/choice.ts";
import { length, thickness } from "../parameters/length.ts";
import { anglePerBend, bendAngles, lengths } from "../parameters/list.ts";
import { data, material } from "../parameters/material.ts";
import { optionalToolName, toolName } from "../parameters/tool-name.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { findDie, findPunch } from "../tables/find-tool.ts";
import { brakes, dies, punches } from "../tables/shop-tables.ts";

export const bendCheck = defineFunction({
  name: "BEND.CHECK",
  question: "Does this part bend on this brake, die and punch, and if not, what is nearest that does?",
  parameters: {
    material: material(),
    thickness: thickness(),
    bendLength: length({ description: "Length of the bend line" }),
    flanges: lengths('Outside flanges in order along the strip: a range, or text such as "2; 3.5; 2"'),
    bendAngles: bendAngles("Bend angles between them, one fewer than flanges, or one for all"),
    die: toolName("Die by its name in the table, or by its opening"),
    brake: brakes(),
    dies: dies(),
    punches: punches(),
    punch: optionalToolName("Punch by its name in the table; blank means not known"),
    grain: choice({
      description: 'Bend line "across" or "along" the rolling direction; blank means not known and is judged along',
      words: GRAINS,
      fallback: undefined,
    }),
    holeDistance: length({
      description: "From the other flange's inside face to the nearest hole's edge; blank for no hole",
      zero: true,
      fallback: undefined as Millimetres | undefined,
    }),
    units: units(),
    data: data(),
  },
  long: true,
  result: { kind: "row", columns: ["Status", "Sentence"] },
  example: {
    formula:
      '=INDEX(SHOP.BEND.CHECK("A36",0.25,24,"1;3",90,"D2",VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)"},{"B",150,120,100}),VSTACK({"Die","Opening (in)","Angle (deg)"},{"D2",2,80}),VSTACK({"Punch","Nose radius (in)","Angle (deg)"},{"P1",0.0625,78}),"P1"),1,1)',
    answer: "stop",
  },
  source:
    "force, flange, radius, overbend, opening and hole rules, each with its source in WORKING and DEVELOPERS.md; the plate decides",
  calculate: (inputs, { system, work }) => {
    const { material, thickness, bendLength, flanges, bendAngles, brake, dies, punches, grain, holeDistance } = inputs;
    const setup = { brake: brake[0]!, die: findDie(inputs.die, dies, system), punch: findPunch(inputs.punch, punches) };
    const line = {
      material,
      thickness,
      bendLength,
      flanges,
      bendAngles: anglePerBend(flanges, bendAngles),
      grain,
      holeDistance,
    };
    const problems = checkBend(line, setup, { brakes: brake, dies, punches }, system, work);
    return [statusOf(problems), sentences(problems)];
  },
});
