import type { Material } from "../../data/materials/material.ts";
import { noAnswer } from "../../units/refusal.ts";

/** #N/A for goods that are cut but never bent or sheared: panel, expanded metal, plywood, acrylic. */
export function refuseCutOnly(material: Material): void {
  if (material.cutOnly) throw noAnswer("material", "a metal that is bent or sheared", material.name, "it is cut only");
}
