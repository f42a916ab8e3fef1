import { findMachine } from "../../bill/nouns/find-tool.ts";
import { problemsSay } from "../../bill/says.ts";
import { statusOf } from "../../calc/finding.ts";
import { checkShear } from "../../calc/shear/check.ts";
import { firstOf } from "../../units/certain.ts";
import { length, thickness } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { optionalToolName } from "../parameters/tool-name.ts";
import { defineFunction } from "../record/record.ts";
import { shears } from "../tables/shop-tables.ts";

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
    ...unitsAndData(),
  },
  result: { kind: "row", columns: ["Status", "Sentence"] },
  long: true, // the sentences of all findings come with it
  example: {
    formula:
      '=INDEX(SHOP.SHEAR.CHECK("304",0.25,48,12,VSTACK({"Shear","Rated thickness (in)","Cut length (in)"},{"Shear 1",0.3125,98})),1,1)',
    answer: "check",
  },
  source:
    "SHEAR.MAXTHICKNESS against the plate's rating (derived); strips, hold-down and gap common practice; the plate decides",
  calculate: ({ material, thickness, cutLength, stripWidth, shears, shear: wanted }, { system, work }) => {
    const shear = wanted === undefined ? firstOf(shears) : findMachine(String(wanted), shears, "shear");
    const blank = { material, thickness, cutLength, stripWidth };
    const found = checkShear(blank, shear, undefined, work);
    const status = statusOf(found);
    if (status !== "stop")
      return [status, [...problemsSay(found, system), ...(status === "clear" ? [CLEAR] : [])].join(" ")];
    const another = shears.find((other) => other !== shear && statusOf(checkShear(blank, other)) !== "stop");
    const fix = another
      ? `Fix: shear it on ${another.name}.`
      : "No shear in the table takes it: waterjet, or buy it cut.";
    return [status, [...problemsSay(found, system), fix].join(" ")];
  },
});

const CLEAR = "No problem found against the tables given; the machine's plate decides.";
