import { maximumThickness } from "../../calc/bend/maximum-thickness.ts";
import { chosenTensile, isSteel } from "../../calc/material/strength.ts";
import { firstOf } from "../../units/certain.ts";
import { cautiousMethod, cautiousTensile } from "../parameters/brake-work.ts";
import { length } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { defineFunction } from "../record/record.ts";
import { brakes } from "../tables/shop-tables.ts";

export const bendMaxthickness = defineFunction({
  name: "BEND.MAXTHICKNESS",
  question: "How thick may the sheet be for this bend length on this brake and die?",
  parameters: {
    material: material(),
    bendLength: length({ description: "Length of the bend line" }),
    dieOpening: length({ description: "Opening of the V die" }),
    brake: brakes(),
    method: cautiousMethod(),
    tensile: cautiousTensile(),
    ...unitsAndData(),
  },
  result: { kind: "length" },
  example: {
    formula:
      '=ROUND(SHOP.BEND.MAXTHICKNESS("A36",120,2,VSTACK({"Brake","Rated force (US ton)","Bed length (in)","Between housings (in)"},{"B",150,120,100}),"Groover",58),4)',
    answer: 0.2546,
  },
  source:
    "force formulas solved for the thickness (derived), opening at least 6 thicknesses (common practice); the plate decides",
  calculate: ({ material, bendLength, dieOpening, brake, method, tensile }, { work }) =>
    maximumThickness(
      { bendLength, dieOpening, tensile: chosenTensile(material, tensile, work), isSteel: isSteel(material) },
      firstOf(brake),
      method,
      work,
    ),
});
