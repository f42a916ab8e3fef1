/** The unit of a record's result as the catalogue states it. */
import { type QuantityKind, SCALES } from "../../units/system.ts";
import type { AnyRecord } from "./record.ts";

/** The unit of a record's result as the catalogue states it: "in | mm" where it follows `units`. */
export function resultUnits(record: AnyRecord): string | null {
  const { kind } = record.result;
  if (kind === "table" || kind === "row" || kind === "any") return null;
  return kind in SCALES ? unitChoice(kind as QuantityKind) : kind;
}

/** "US ton | kN", or one name where both systems have the same. */
export function unitChoice(quantity: QuantityKind): string {
  const { in: inch, mm } = SCALES[quantity];
  return (inch.name as string) === mm.name ? inch.name : `${inch.name} | ${mm.name}`;
}
