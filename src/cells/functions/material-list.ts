import { factValue } from "../../calc/material/fact-value.ts";
import type { Material } from "../../data/materials/material.ts";
import type { CellMatrix } from "../../units/cell.ts";
import { fromInternal, type UnitSystem, unitName } from "../../units/system.ts";
import { unitsAndData } from "../parameters/material.ts";
import { PROPERTIES } from "../parameters/property.ts";
import { defineFunction } from "../record/record.ts";

const COLUMNS = ["Name", "Property", "Value", "Unit", "Kind", "Mark", "Source"] as const;

export const materialList = defineFunction({
  name: "MATERIAL.LIST",
  question: "Which materials are known, with which values, and where does each value come from?",
  parameters: { ...unitsAndData() },
  result: { kind: "table", columns: COLUMNS },
  example: { formula: "=INDEX(SHOP.MATERIAL.LIST(),2,1)", answer: "A36" },
  source: "each row's own source and mark",
  calculate: ({ data }, { system }): CellMatrix => [
    [...COLUMNS],
    ...data.materials.flatMap((material) => rows(material, system)),
  ],
});

const rows = (material: Material, system: UnitSystem): CellMatrix =>
  PROPERTIES.flatMap(({ key, name, quantity, kind }) => {
    const fact = material[key];
    if (!fact) return [];
    const unit = quantity && unitName(quantity, system);
    const value =
      quantity && unit !== fact.unit ? fromInternal(factValue(fact, quantity), quantity, system) : fact.value;
    const which = key === "tensileHigh" ? (material.tensileHighIs ?? kind) : kind;
    return [[material.name, name, value, unit ?? "", which, fact.mark, fact.source]];
  });
