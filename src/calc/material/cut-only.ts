import type { Material } from "../../data/materials/material.ts";
import { noAnswer } from "../../units/refusal.ts";

/** #N/A for goods that are cut but never bent on a brake: panel, expanded metal, plywood, acrylic. */
export function refuseCutOnly(material: Material): void {
  if (material.cutOnly)
    throw noAnswer("material", "one that is bent on a brake", material.name, "it is cut only: time a cut of your own");
}
