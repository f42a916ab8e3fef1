import { recordNamed } from "../parameters/function-name.ts";
import { defineFunction } from "../record/record.ts";

export const source = defineFunction({
  name: "SOURCE",
  question: "Where do the formula and the figures of this function come from?",
  parameters: { function: recordNamed() },
  result: { kind: "text" },
  example: { formula: '=SHOP.SOURCE("BEND.SETBACK")', answer: "FAA-H-8083-31 vol. 1 ch. 4, U-channel example (read)" },
  source: "the catalogue itself",
  calculate: ({ function: record }) => record().source,
});
