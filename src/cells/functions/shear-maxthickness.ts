import { highShearStrength, ratedShearStrength } from "../../calc/material/strength.ts";
import { maximumShearThickness, sameMaterial } from "../../calc/shear/maximum-thickness.ts";
import type { Material } from "../../data/materials/material.ts";
import { isBlank } from "../../units/cell.ts";
import { length } from "../parameters/length.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { type CellParameter, defineFunction } from "../record/record.ts";

const RATED = "A36"; // guillotines are rated in mild steel, common practice

const ratedMaterial: CellParameter<Material> = {
  ...material("Material the rating on the plate is stated in"),
  optional: true,
  default: RATED,
  read: (given, name, { materials }) => materials.find(isBlank(given) ? RATED : given, name),
};

export const shearMaxthickness = defineFunction({
  name: "SHEAR.MAXTHICKNESS",
  question: "How thick may a sheet of this material be on a shear with this rating?",
  parameters: {
    material: material(),
    ratedThickness: length({ description: "Thickness on the shear's plate" }),
    ratedMaterial,
    ...unitsAndData(),
  },
  result: { kind: "length" },
  example: { formula: '=ROUND(SHOP.SHEAR.MAXTHICKNESS("304",0.25),3)', answer: 0.167 },
  source:
    "equal shearing force, the smaller of t1 sqrt(S1/S2) and t1 S1/S2 (derived), S1 of the strongest sheet the rating covers (capacity booklet, read; stainless memory); never above the rating; the plate decides",
  contract: true,
  calculate: ({ material, ratedThickness, ratedMaterial }, { work }) =>
    material.name === ratedMaterial.name
      ? sameMaterial(ratedThickness, work)
      : maximumShearThickness(
          ratedThickness,
          ratedShearStrength(ratedMaterial, work),
          highShearStrength(material, work),
          work,
        ),
});
