import { sentences, statusOf } from "../../calc/problem.ts";
import { checkShear, recordStatus } from "../../calc/shear/check.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import { length, thickness } from "../parameters/length.ts";
import { data, material } from "../parameters/material.ts";
import { optionalToolName } from "../parameters/tool-name.ts";
import { units } from "../parameters/units.ts";
import { defineFunction } from "../record/record.ts";
import { shears } from "../tables/shop-tables.ts";

const RATED = "A36"; // guillotines are rated in mild steel, common practice

export const shearCheck = defineFunction({
  name: "SHEAR.CHECK",
  question: "Will this shear take this cut, and if not, what is nearest that does?",
  parameters: {
    material: material(),
    thickness: thickness(),
    cutLength: length({ description: "Longest cut" }),
    stripWidth: length({ description: "Width of the narrowest piece that falls" }),
    shears: shears(),
    shear: optionalToolName("Shear by its name in the table; blank for the first"),
    units: units(),
    data: data(),
  },
  result: { kind: "row", columns: ["Status", "Sentence"] },
  example: {
    formula:
      '=INDEX(SHOP.SHEAR.CHECK("304",0.25,48,12,VSTACK({"Shear","Rated thickness (in)","Cut length (in)"},{"S",0.25,120})),1,1)',
    answer: "stop",
  },
  source:
    "SHEAR.MAXTHICKNESS against the plate's rating (derived); strips, hold-down and gap common practice; the plate decides",
  calculate: ({ material, thickness, cutLength, stripWidth, shears, shear: wanted }, { system, materials, work }) => {
    const shear =
      wanted === undefined
        ? shears[0]!
        : shears.find(({ name }) => name.toLowerCase() === String(wanted).toLowerCase());
    if (!shear)
      throw noAnswer(
        "shear",
        "a shear of the table",
        showGiven(wanted),
        shears.map(({ name }) => `"${name}"`).join(" or "),
      );
    const problems = checkShear(
      { material, thickness, cutLength, stripWidth },
      shear,
      shears,
      ({ ratedMaterial }) => materials.find(ratedMaterial ?? RATED, "rated material"),
      system,
      work,
    );
    recordStatus(problems, work);
    return [statusOf(problems), sentences(problems)];
  },
});
