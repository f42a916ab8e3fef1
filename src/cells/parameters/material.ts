/** The material of a row, and the materials to choose from. */

import type { MaterialTable } from "../../bill/nouns/material-table.ts";
import type { Material } from "../../data/materials/material.ts";
import { isBlank } from "../../units/cell.ts";
import type { CellParameter, ReadContext, TableParameter } from "../record/record.ts";
import { readData } from "./read-data.ts";
import { units } from "./units.ts";

const DESCRIPTION = 'Material by name, such as "A36", "304" or "5052-H32"; MATERIAL.LIST shows all';

/** Reads the material and lets the thickness of the same row be a gauge of it. */
export const material = (description = DESCRIPTION): CellParameter<Material> => ({
  shape: "cell",
  type: "material",
  description,
  optional: false,
  default: null,
  read: (given, name, context) => {
    const found = context.materials.find(given, name);
    context.material = found;
    return found;
  },
});

/** A material that may be left blank when a later argument gives the figure it would have supplied. */
export const materialUnlessGiven = (description: string): CellParameter<Material | undefined> => ({
  ...material(description),
  read: (given, name, context: ReadContext) => {
    const found = isBlank(given) ? undefined : context.materials.find(given, name);
    context.material = found;
    return found;
  },
});

export const data = (): TableParameter<MaterialTable> => ({
  shape: "data",
  type: "edition or range",
  description:
    'Materials: blank for the current edition, an edition such as "2026.1", or a range with a header row (Name, properties with their unit, Source, Materials edition)',
  optional: true,
  default: null,
  read: (given, name, context) => readData(given, name, context.system),
});

/** The last arguments of a function that reads materials. */
export const unitsAndData = () => ({ units: units(), data: data() });
