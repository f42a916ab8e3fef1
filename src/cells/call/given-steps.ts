/** What goes into a calculation, first in its working: every argument as it was read, by the letter the formulas use. */
import { MaterialTable } from "../../bill/nouns/material-table.ts";
import { isBlank } from "../../units/cell.ts";
import { fromInternal, unitName } from "../../units/system.ts";
import type { Step } from "../../units/working.ts";
import type { Slot } from "./arguments.ts";
import type { OnRead } from "./row-reader.ts";

/** The letters of formulas.md of the trade; an argument that no formula calls by a letter keeps its own name. */
const LETTERS: Readonly<Record<string, string>> = {
  thickness: "t",
  radius: "R",
  bendAngle: "A",
  bendAngles: "A",
  dieOpening: "V",
  punchNose: "rp",
  dieShoulder: "rd",
  dieAngle: "die angle",
  punchAngle: "punch angle",
  bendLength: "L",
  cutLength: "L",
  length: "L",
  width: "B",
  k: "K",
  rakeAngle: "rake",
  ratedThickness: "t1",
  quality: "q",
  pressure: "P",
  orifice: "do",
  abrasiveRate: "Ma",
  nozzleDiameter: "Dm",
  horizontal: "H",
  vertical: "V",
  travel: "D",
  asymmetry: "A",
  endHorizontal: "H end",
  endVertical: "V end",
  endAsymmetry: "A end",
};

export const givenSteps = (...[slots, inputs, system]: Parameters<OnRead>): Step[] =>
  slots.flatMap(({ key, name, parameter, matrix }, i) => {
    const value = key === "units" ? undefined : shown(inputs[key], parameter.quantity, system);
    if (value === undefined) return [];
    const blank = matrix.every((row) => row.every(isBlank));
    return {
      symbol: LETTERS[key] ?? name,
      meaning: parameter.shape === "data" ? "edition of the materials" : meaningOf(parameter.description, value),
      value,
      unit: parameter.quantity && typeof inputs[key] !== "string" ? unitName(parameter.quantity, system) : "",
      source: `${blank ? "left blank: default of" : "given as"} argument ${i + 1}`,
    };
  });

/** What a chosen word means where the description says that of each; else what the argument is, to its first clause. */
function meaningOf(description: string, value: Step["value"]): string {
  const chosen = description.split(/;\s*/).find((clause) => clause.startsWith(`"${value}": `));
  return chosen === undefined ? description.replace(/[;:].*/s, "") : chosen.slice(chosen.indexOf(": ") + 2);
}

/** undefined: left out, or a table, which the steps themselves look into. */
function shown(
  value: unknown,
  quantity: Slot["parameter"]["quantity"],
  system: Parameters<OnRead>[2],
): Step["value"] | undefined {
  if (typeof value === "string") return value;
  if (typeof value === "number")
    return quantity ? Number(fromInternal(value, quantity, system).toPrecision(15)) : value;
  if (value instanceof MaterialTable) {
    const own = value.overrides.map(({ name }) => name).join(", ");
    return own === "" ? value.edition.name : `${value.edition.name} with own rows: ${own}`;
  }
  if (Array.isArray(value)) {
    const items = value.map((item) => shown(item, quantity, system));
    return items.every((item) => typeof item !== "object" && item !== undefined) ? items.join("; ") : undefined;
  }
  return isNamed(value) ? value.name : undefined;
}

/** A material; functions have names too and are no argument to show. */
const isNamed = (value: unknown): value is { readonly name: string } =>
  typeof value === "object" && value !== null && "name" in value && typeof value.name === "string";

/** An argument, and not a step of the calculation. */
export const isGiven = ({ source }: Step): boolean => / argument \d+$/.test(source);
