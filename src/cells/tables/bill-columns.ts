/** The columns of a bill: what each is called, how it is read, and the rule its cells must keep. */
import { CUTTERS } from "../../bill/nouns/line.ts";
import { between, type Columns, notNegative, oneOf, positive, whole } from "../parameters/read-table.ts";

/** A closed hem is read as an angle, to be told what to do instead of a bend. */
const ANGLE = between(-180, 180, " degrees");

export const BILL_COLUMNS = {
  part: { headers: ["Part", "Line", "Mark", "Item", "Blank"], kind: "text" },
  description: { headers: ["Description"], kind: "text", optional: true },
  revision: { headers: ["Revision", "Rev"], kind: "text", optional: true },
  material: { headers: ["Material"], kind: "text" },
  thickness: { headers: ["Thickness"], kind: "thickness" },
  actual: { headers: ["Actual thickness"], kind: "thickness", optional: true },
  quantity: { headers: ["Quantity", "Qty"], kind: "number", rule: whole(1, 1_000_000) },
  width: { headers: ["Width", "Bend length"], kind: "length", optional: true, rule: positive },
  flanges: { headers: ["Flanges", "Length"], kind: "lengths", rule: positive },
  bendAngles: { headers: ["Bend angles", "Angles"], kind: "angles", optional: true, rule: ANGLE },
  crossFlanges: { headers: ["Cross flanges"], kind: "lengths", optional: true, rule: positive },
  crossAngles: { headers: ["Cross angles"], kind: "angles", optional: true, rule: ANGLE },
  radius: { headers: ["Drawing radius"], kind: "length", optional: true, rule: notNegative },
  radiusTolerance: { headers: ["Radius tolerance"], kind: "length", optional: true, rule: notNegative },
  tolerance: { headers: ["Tolerance"], kind: "length", optional: true, rule: positive },
  grain: {
    headers: ["Grain"],
    kind: "text",
    optional: true,
    rule: oneOf("across", "along", "length", "width", "free"),
  },
  holes: { headers: ["Holes"], kind: "number", optional: true, rule: whole(0, 10_000) },
  holeDiameter: { headers: ["Hole diameter"], kind: "length", optional: true, rule: positive },
  holeDistance: { headers: ["Hole distance"], kind: "length", optional: true, rule: notNegative },
  offCenter: { headers: ["Off center"], kind: "length", optional: true, rule: notNegative },
  notches: { headers: ["Notches"], kind: "number", optional: true, rule: whole(0, 10_000) },
  notchPath: { headers: ["Notch path"], kind: "length", optional: true, rule: positive },
  die: { headers: ["Die"], kind: "text", optional: true },
  punch: { headers: ["Punch"], kind: "text", optional: true },
  brake: { headers: ["Brake"], kind: "text", optional: true },
  shear: { headers: ["Shear"], kind: "text", optional: true },
  route: { headers: ["Route"], kind: "text", optional: true, rule: oneOf(...CUTTERS) },
  operations: { headers: ["Operations"], kind: "text", optional: true },
  instruction: { headers: ["Instruction", "Instructions"], kind: "text", optional: true },
  finish: { headers: ["Finish"], kind: "text", optional: true },
  spares: { headers: ["Spares"], kind: "number", optional: true, rule: whole(0, 1_000_000) },
  area: { headers: ["Area"], kind: "text", optional: true },
  due: { headers: ["Due"], kind: "cell", optional: true },
  certificate: { headers: ["Certificate"], kind: "text", optional: true, rule: oneOf("yes", "no") },
  newPart: { headers: ["New part"], kind: "text", optional: true, rule: oneOf("yes", "no") },
  firstArticle: { headers: ["First article"], kind: "text", optional: true, rule: oneOf("yes", "no") },
  accepted: { headers: ["Accepted"], kind: "text", optional: true },
} as const satisfies Columns;

/** What these columns are called first. */
export const billTitles = (...keys: (keyof typeof BILL_COLUMNS)[]): string[] =>
  keys.map((key) => BILL_COLUMNS[key].headers[0]);
