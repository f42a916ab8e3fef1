import { maximumLength } from "../../calc/bend/maximum-length.ts";
import { chosenTensile, isSteel } from "../../calc/material/strength.ts";
import { firstOf } from "../../units/certain.ts";
import { cautiousMethod, cautiousTensile } from "../parameters/brake-work.ts";
import { length, thickness } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";
import { brakes } from "../tables/shop-tables.ts";

export const bendMaxlength = defineFunction({
  name: "BEND.MAXLENGTH",
  question: "How long may a bend in this sheet be on this brake and die?",
  parameters: {
    material: material(),
    thickness: thickness(),
    dieOpening: length({ description: "Opening of the V die" }),
    brake: brakes(),
    method: cautiousMethod(),
    tensile: cautiousTensile(),
    ...unitsAndData(),
  },
  result: { kind: "length" },
  example: {
    formula:
      '=ROUND(SHOP.BEND.MAXLENGTH("A36",0.25,2,VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)"},{"B",150,120,100}),"US shop",60),1)',
    answer: 100.2,
  },
  source:
    "rating over force per length (derived), load per length within rating / (0.6 x housings) (common practice); the plate decides",
  calculate: ({ material, thickness, dieOpening, brake, method, tensile }, { work }) =>
    maximumLength(
      { thickness, dieOpening, tensile: chosenTensile(material, tensile, work), isSteel: isSteel(material) },
      firstOf(brake),
      method,
      work,
    ),
});
