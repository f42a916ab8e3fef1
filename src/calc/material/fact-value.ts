import type { Fact } from "../../data/fact.ts";
import type { QuantityKind } from "../../units/system.ts";
import { unitSize } from "../../units/unit-words.ts";

/** A published figure in the internal unit of its kind. A fact whose unit is not of that kind is a mistake in data. */
export function factValue(fact: Fact, kind: QuantityKind | undefined): number {
  if (kind === undefined) return fact.value;
  const size = unitSize(fact.unit, kind);
  if (size === undefined) throw new Error(`data: "${fact.unit}" is no unit of ${kind} (${fact.source})`);
  return fact.value * size;
}
