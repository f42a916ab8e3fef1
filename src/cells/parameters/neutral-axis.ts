/** `k`: a number, or a published rule by name. */
import { K_RULES, type KChoice } from "../../calc/bend/neutral-axis.ts";
import { K_DEFAULT, K_LARGEST } from "../../data/bend-rules.ts";
import { isBlank } from "../../units/cell.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { wrong } from "../../units/refusal.ts";
import type { CellParameter } from "../record/record.ts";
import { keepsRule } from "./number.ts";

const RULE = `a number from 0 to ${K_LARGEST.value} or one of ${K_RULES.map((rule) => `"${rule}"`).join(", ")}`;

export const k = (): CellParameter<KChoice> => ({
  shape: "cell",
  type: `number | ${K_RULES.map((rule) => `"${rule}"`).join(" | ")}`,
  description: "Neutral axis as a share of the thickness from the inside face: a number, or a published rule by name",
  optional: true,
  default: K_DEFAULT.value,
  read: (given, name) => {
    if (isBlank(given)) return K_DEFAULT.value;
    const folded = typeof given === "string" ? given.trim().replace(/\s+/g, " ").toLowerCase() : undefined;
    const named = K_RULES.find((rule) => rule.toLowerCase() === folded);
    if (named) return named;
    const value = typeof given === "string" ? parseNumber(given) : given;
    if (typeof value !== "number" || !keepsRule(value, { from: 0, to: K_LARGEST.value }))
      throw wrong(
        name,
        RULE,
        given,
        typeof value === "number" && value > K_LARGEST.value ? "the k of DIN 6935 is twice this one" : undefined,
      );
    return value;
  },
});
