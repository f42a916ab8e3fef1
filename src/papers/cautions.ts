/**
 * What is said about hands and guards on a set-up sheet: the same for every part, and what its own sizes add. Common
 * practice of the trade; guarding 29 CFR 1910.212(a)(3)(ii) and ANSI B11.3, lockout 29 CFR 1910.147 (named, not quoted).
 */

import { LOAD_CONSTANT } from "../data/niosh.ts";
import type { LineWork } from "../job/line-report.ts";
import { show } from "../units/show.ts";
import type { UnitSystem } from "../units/system.ts";
import { KG_PER_POUND } from "../units/system.ts";

const SMALL_MM = 100; // about a hand's width, common practice
const LONG_RISE_MM = 300; // reaches a person's face or arms, common practice

export function cautions({ line, check }: LineWork, system: UnitSystem): string[] {
  const { blank } = check;
  const length = (value: number) => show(value, "length", system, 3);
  const found = [
    "Guards, light curtain or two-hand control in place and tried before the first stroke.",
    "Energy off and locked before tools are set; the ram on its blocks.",
    "Hands off the point of operation: nothing between punch and die, nothing between sheet and punch, no reaching past the bend line to the gauge.",
    "Tonnage set no higher than the force above; the plates of machine, punch and die decide.",
  ];
  const longest = Math.max(...line.main.flanges);
  if (longest > LONG_RISE_MM)
    found.push(
      `A flange of ${length(longest)} swings up as it is bent: stand beside it, follow the sheet, keep face and arms clear.`,
    );
  const shortest = Math.min(blank.length, blank.width);
  if (shortest < SMALL_MM)
    found.push(
      `The blank is only ${length(shortest)} across: hold it with a tool or a support, never with fingers at the die.`,
    );
  const most = LOAD_CONSTANT.value * KG_PER_POUND;
  if (blank.weight > most)
    found.push(
      `A blank weighs ${show(blank.weight, "mass", system, 3)}, more than ${show(most, "mass", system, 3)}: two persons, or a hoist.`,
    );
  if (check.problems.some(({ severity }) => severity === "stop"))
    found.push("The checks say STOP: do not bend before it is settled.");
  return found;
}
