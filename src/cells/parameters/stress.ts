/** Stresses, and the tensile strength that is either a level of the material or a number. */
import { TENSILE_LEVELS, type TensileLevel } from "../../calc/material/strength.ts";
import { type CellValue, isBlank } from "../../units/cell.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { type Megapascals, megapascals } from "../../units/quantity.ts";
import { wrong } from "../../units/refusal.ts";
import { fromInternal, type QuantityKind, toInternal, type UnitSystem, unitName } from "../../units/system.ts";
import type { CellParameter } from "../record/record.ts";
import { readNumber } from "./number.ts";

/** No metal is stronger than this; a larger figure is psi typed as ksi, or a slip. */
const STRONGEST = megapascals(10_000);

const readStress = (given: CellValue, name: string, system: UnitSystem): Megapascals => {
  const limit = fromInternal(STRONGEST, "stress", system);
  const value = readNumber(
    given,
    name,
    { from: 0, above: true, to: limit },
    `strength in ${unitName("stress", system)}`,
    system === "in" ? "65000 psi is 65 ksi" : undefined,
  );
  return toInternal<"MPa">(value, "stress", system);
};

export const tensile = (fallback: TensileLevel = "typical"): CellParameter<TensileLevel | Megapascals> => ({
  shape: "cell",
  type: `number | ${TENSILE_LEVELS.map((level) => `"${level}"`).join(" | ")}`,
  quantity: "stress",
  description: "Tensile strength: a level of the material, or a number (then the material may be blank)",
  optional: true,
  default: fallback,
  read: (given, name, context) => {
    if (isBlank(given)) return fallback;
    const folded = typeof given === "string" ? given.trim().toLowerCase() : undefined;
    const level = TENSILE_LEVELS.find((word) => word === folded);
    if (level) return level;
    if (typeof given === "string" && parseNumber(given) === undefined)
      throw wrong(
        name,
        `a strength in ${unitName("stress", context.system)} or one of ${TENSILE_LEVELS.map((word) => `"${word}"`).join(", ")}`,
        given,
      );
    return readStress(given, name, context.system);
  },
});

interface QuantityOptions<D> {
  readonly description: string;
  readonly quantity: QuantityKind;
  readonly noun: string;
  readonly fallback?: D;
}

/** A quantity of any kind that is more than 0: stress, flow, force. Internal unit. */
export function quantity<Q extends number>(options: QuantityOptions<never>): CellParameter<Q>;
export function quantity<Q extends number, D extends Q | undefined>(
  options: QuantityOptions<D> & { fallback: D },
): CellParameter<Q | D>;
export function quantity<Q extends number, D>(options: QuantityOptions<D>): CellParameter<Q | D> {
  const optional = "fallback" in options;
  return {
    shape: "cell",
    type: options.noun,
    quantity: options.quantity,
    description: options.description,
    optional,
    default: (options.fallback ?? null) as CellValue,
    read: (given, name, context) => {
      if (optional && isBlank(given)) return options.fallback as D;
      if (options.quantity === "stress") return readStress(given, name, context.system) as number as Q;
      const unit = unitName(options.quantity, context.system);
      const value = readNumber(given, name, { from: 0, above: true, to: 1e9 }, `${options.noun} in ${unit}`);
      return toInternal(value, options.quantity, context.system) as number as Q;
    },
  };
}
