/**
 * What is said about hands and guards: of a set-up the same for all its parts, of a part what its own sizes add. Common
 * practice of the trade; guarding 29 CFR 1910.212(a)(3)(ii) and ANSI B11.3, lockout 29 CFR 1910.147 (named, not quoted).
 */
import type { LinePlan } from "../bill/lines/plan-line.ts";
import { onePersonLimit } from "../bill/nouns/rates.ts";
import type { Shop } from "../bill/nouns/shop.ts";
import type { LineAnswer } from "../bill/plan.ts";
import type { Finding } from "../bill/problems.ts";
import { says } from "../bill/says.ts";
import { LOAD_CONSTANT } from "../data/niosh.ts";
import { show } from "../units/show.ts";
import { KG_PER_POUND } from "../units/system.ts";

const SMALL_MM = 100; // about a hand's width, common practice
const LONG_RISE_MM = 300; // reaches a person's face or arms, common practice

export function cautionsOfLine({ line, blank, strips }: LinePlan, { findings }: LineAnswer, shop: Shop): string[] {
  const { system } = shop;
  const length = (value: number) => show(value, "length", system, 3);
  const longest = Math.max(...strips.flatMap(({ part }) => part.flanges));
  const rises =
    longest > LONG_RISE_MM && !findings.some(({ about }) => about === "swing")
      ? [
          `A flange of ${length(longest)} swings up as it is bent: stand beside it, follow the sheet, keep face and arms clear.`,
        ]
      : [];
  const shortest = Math.min(blank.length, blank.width);
  const small =
    strips.length === 0 && shortest < SMALL_MM
      ? [
          `The blank is only ${length(shortest)} across: hold it with a tool or a support, never with fingers at the blade.`,
        ]
      : [];
  const handling = findings.filter(isCaution).map((finding) => says(finding, system));
  // A shop that states no limit of its own is told what the published one is.
  const most = LOAD_CONSTANT.value * KG_PER_POUND;
  const heavy =
    onePersonLimit(shop.rates) === undefined && blank.weight > most
      ? [
          `A blank of ${line.part} weighs ${show(blank.weight, "mass", system, 3)}, more than ${show(most, "mass", system, 3)}: two people, or a hoist.`,
        ]
      : [];
  return [...(strips.length > 0 ? [TRY] : []), ...rises, ...small, ...handling, ...heavy];
}

/** A finding about people is a box to tick on the sheet; a check or a stop is at its head already. */
export const isCaution = ({ about, status }: Finding): boolean =>
  about === "lifting" || (status === "note" && (about === "hands" || about === "swing"));

const TRY = "Guards tried, hands out of the bend, force no higher than stated; the plates decide.";

export const cautionsOfSetUp: readonly string[] = [
  "Guards, light curtain or two-hand control in place and tried before the first stroke.",
  "To set tools: motor off, ram down on tools or blocks; lock out before reaching behind.",
  "Hands off the point of operation: nothing between punch and die, nothing between sheet and punch, no reaching past the bend line to the gauge.",
  "Force set no higher than each line states (tons of 2,000 lb); the plates of machine, punch and die decide.",
];
