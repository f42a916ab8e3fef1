import { CURRENT_EDITION } from "../../data/materials/editions.ts";
import { defineFunction } from "../record/record.ts";
import { PRODUCT_VERSION } from "../record/version.generated.ts";

export const version = defineFunction({
  name: "VERSION",
  question: "Which version of the functions and which edition of the materials does this workbook run on?",
  parameters: {},
  result: { kind: "text" },
  example: { formula: "=LEFT(SHOP.VERSION(),12)", answer: "Bracket Bill" },
  source: "the add-in itself",
  calculate: () => `Bracket Bill ${PRODUCT_VERSION}, materials ${CURRENT_EDITION.name}`,
});
