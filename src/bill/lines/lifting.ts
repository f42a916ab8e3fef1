import type { Finding } from "../../calc/finding.ts";
import { TWO_PEOPLE_FROM_IN, TWO_PEOPLE_SHARE } from "../../data/thresholds.ts";
import { atMost } from "../../units/nearly.ts";
import type { Kilograms, Millimeters } from "../../units/quantity.ts";
import { onePersonLimit, type Rates } from "../nouns/rates.ts";
import { fitsOn, type StockSheet } from "../nouns/stock.ts";
import type { Blank } from "./blank.ts";

export type Lift = "one person" | "two people" | "hoist" | "too heavy";

/** Who lifts a piece: one person, two who together lift two thirds of what they lift one by one, or the shop's hoist. */
export function liftOf(weight: Kilograms, rates: Rates): Lift {
  const alone = onePersonLimit(rates);
  const hoistLimit = rates.find("hoistLimit");
  if (hoistLimit !== undefined && !atMost(weight, hoistLimit)) return "too heavy";
  const hoistAbove = rates.find("hoistAbove");
  if (hoistAbove !== undefined && !atMost(weight, hoistAbove)) return "hoist";
  if (alone === undefined || atMost(weight, alone)) return "one person";
  const together = 2 * alone * rates.limit(TWO_PEOPLE_SHARE);
  if (atMost(weight, together)) return "two people";
  return hoistAbove === undefined ? "too heavy" : "two people";
}

/** @param bendLength of its longest bend; undefined for a flat part. */
export function liftingFinding(
  weight: Kilograms,
  bendLength: Millimeters | undefined,
  rates: Rates,
): Finding | undefined {
  const lift = liftOf(weight, rates);
  const found = (status: Finding["status"], kind: string): Finding => ({
    about: "lifting",
    status,
    kind,
    figure: weight,
    quantity: "mass",
  });
  if (lift === "too heavy") return found("stop", tooHeavy(rates));
  if (lift === "hoist") return found("check", "hoist");
  if (lift === "two people") return found("note", "two people");
  const long = bendLength !== undefined && !atMost(bendLength, rates.limit(TWO_PEOPLE_FROM_IN));
  return long
    ? { about: "lifting", status: "note", kind: "long bend", figure: bendLength, quantity: "length" }
    : undefined;
}

const tooHeavy = (rates: Rates): string => (rates.find("hoistLimit") === undefined ? "too heavy" : "over hoist");

/**
 * The lightest sheet that it may be cut from, since no lighter one will be pulled. A full plate on the hoist is how every
 * shop works, and the list of sheets says it; two people who slide what they cannot lift deserve a look (common practice).
 */
export function sheetLiftingFinding(
  sheets: readonly StockSheet[],
  blank: Pick<Blank, "length" | "width">,
  rates: Rates,
): Finding | undefined {
  const fitting = sheets.filter((sheet) => fitsOn(sheet, blank));
  if (fitting.length === 0) return undefined;
  const { name, weight } = fitting.reduce((a, b) => (b.weight < a.weight ? b : a));
  const found = (status: Finding["status"], kind: string): Finding => ({
    about: "lifting",
    status,
    kind: `sheet ${kind}`,
    figure: weight,
    quantity: "mass",
    name,
  });
  if (liftOf(weight, rates) !== "too heavy") return undefined;
  const kind = tooHeavy(rates);
  return found(kind === "over hoist" ? "stop" : "check", kind);
}
