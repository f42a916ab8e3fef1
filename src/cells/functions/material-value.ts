import { factValue } from "../../calc/material/fact-value.ts";
import { cite } from "../../data/fact.ts";
import { foundIn } from "../../units/certain.ts";
import { noAnswer } from "../../units/refusal.ts";
import { fromInternal, RESULT_UNITS, type ResultUnit, unitName } from "../../units/system.ts";
import { step } from "../../units/working.ts";
import { choice } from "../parameters/choice.ts";
import { material, unitsAndData } from "../parameters/material.ts";
import { PROPERTIES } from "../parameters/property.ts";
import { defineFunction } from "../record/record.ts";

export const materialValue = defineFunction({
  name: "MATERIAL.VALUE",
  question: "What is this property of this material?",
  parameters: {
    material: material(),
    property: choice({ description: "Property, as MATERIAL.LIST names it", words: PROPERTIES.map(({ name }) => name) }),
    ...unitsAndData(),
  },
  result: { kind: "any" },
  example: { formula: '=SHOP.MATERIAL.VALUE("A36","tensile high")', answer: 80 },
  source: "each value's own source, shown by MATERIAL.LIST",
  calculate: ({ material, property }, { system, work }) => {
    const { key, quantity } = foundIn(PROPERTIES, ({ name }) => name === property);
    const fact = material[key];
    if (!fact)
      throw noAnswer(
        "property",
        `one that is known for ${material.name}`,
        `"${property}"`,
        "MATERIAL.LIST shows what there is",
      );
    const unit = quantity && unitName(quantity, system);
    // A figure asked for in the unit it was published in comes back as published, without a conversion to and fro.
    const value =
      quantity && unit !== fact.unit ? fromInternal(factValue(fact, quantity), quantity, system) : fact.value;
    step(work, key, property, value, unit ?? "", cite(fact));
    return { value, unit: (RESULT_UNITS as readonly string[]).includes(unit ?? "") ? (unit as ResultUnit) : null };
  },
});
