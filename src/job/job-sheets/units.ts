import { type QuantityKind, type UnitSystem, unitName } from "../../units/system.ts";

/** A title written for a shop in inches, for the reader's own: "Force (US ton)" -> "Force (kN)". */
export const inSystem = (title: string, system: UnitSystem): string =>
  KINDS.reduce((words, kind) => words.replace(`(${unitName(kind, "in")})`, `(${unitName(kind, system)})`), title);
const KINDS: readonly QuantityKind[] = ["length", "force", "mass", "lineLoad"];
