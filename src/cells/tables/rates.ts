/**
 * The shop's own figures that belong to no machine: one row each, by name, value and unit. Nothing here has a default in
 * the code; what a question needs and does not find is asked for by its name.
 */
import { CUT_FOR, RATE_WORDS, Rates, type RateWords } from "../../bill/nouns/rates.ts";
import { COUPLINGS } from "../../data/niosh.ts";
import { type CellMatrix, type CellValue, isBlank } from "../../units/cell.ts";
import { nearest } from "../../units/nearest.ts";
import { parseNumber } from "../../units/parse-number.ts";
import { type Refusal, wrong } from "../../units/refusal.ts";
import { type QuantityKind, toInternal, type UnitSystem } from "../../units/system.ts";
import { unitSize, unitWords } from "../../units/unit-words.ts";
import { readChoice } from "../parameters/choice.ts";
import { durationSize } from "../parameters/column.ts";
import { keepsRule, ruleInWords } from "../parameters/number.ts";
import { type Columns, readTable } from "../parameters/read-table.ts";
import { remembered } from "../parameters/remembered.ts";
import { isEmptyRange } from "../parameters/shop-table.ts";
import type { TableParameter } from "../record/record.ts";
import { RATE_ITEMS, type RateItem, type RateKind, THRESHOLD_ITEMS } from "./rate-items.ts";

const RATE_COLUMNS = {
  name: { headers: ["Rate", "Item", "Name"], kind: "text" },
  value: { headers: ["Value"], kind: "cell", optional: true },
  unit: { headers: ["Unit"], kind: "text", optional: true },
} as const satisfies Columns;

const fold = (text: string): string => text.toLowerCase().replace(/[\s\-_]+/g, "");
const byName = new Map([...RATE_ITEMS, ...THRESHOLD_ITEMS].map((known) => [fold(known.name), known]));
const isThreshold = new Set(THRESHOLD_ITEMS);
const isRow = (name: string, word: keyof RateWords): boolean => fold(name) === fold(RATE_WORDS[word]);

function readRates(given: CellMatrix, name: string, system: UnitSystem): Rates {
  const values = new Map<string, number>();
  const own = new Map<string, number>();
  const rowOf = new Map<string, number>();
  let words: RateWords = {};
  for (const row of isEmptyRange(given) ? [] : readTable(given, RATE_COLUMNS, name, system)) {
    if (isBlank(row.value)) continue;
    const label = `${name} row ${row.row} "${row.name}"`;
    const value = row.value as CellValue;
    const before = rowOf.get(fold(row.name));
    if (before !== undefined) throw wrong(label, "the only row of its name", value, `row ${before} says it too`);
    rowOf.set(fold(row.name), row.row);
    if (isRow(row.name, "liftCoupling")) words = { ...words, liftCoupling: readChoice(value, label, COUPLINGS) };
    else if (isRow(row.name, "cutFor")) words = { ...words, cutFor: readChoice(value, label, CUT_FOR) };
    else {
      const known = byName.get(fold(row.name));
      if (!known) throw unknown(row.name, `${name} row ${row.row}`);
      const kept = isThreshold.has(known) ? own : values;
      kept.set(known.name, readRate(value, row.unit, known, label, system));
    }
  }
  return new Rates(name, values, words, own);
}

/** A misspelled row would silently drop the shop's own figure. */
function unknown(given: string, label: string): Refusal {
  const names = [...[...byName.values()].map((known) => known.name), ...Object.values(RATE_WORDS)];
  return wrong(label, "a rate or a threshold by its name", given, `nearest is "${nearest(given, names)}"`);
}

function readRate(
  given: CellValue,
  unit: string | undefined,
  { kind, rule }: RateItem,
  label: string,
  system: UnitSystem,
): number {
  const plain = typeof given === "string" ? parseNumber(given.replace(/\s*%$/, "")) : given;
  if (typeof plain !== "number" || !Number.isFinite(plain)) throw wrong(label, ruleInWords(rule, "number"), given);
  const percent = typeof given === "string" && /%\s*$/.test(given) ? "%" : undefined;
  const size = sizeOf(kind, percent ?? unit, plain, label, system);
  const value = plain * size;
  if (!keepsRule(value, rule)) {
    // In the unit that was written, which is how the reader counts.
    const [from, to] = [rule.from / size, rule.to === undefined ? undefined : rule.to / size];
    const written = { ...rule, from, ...(to === undefined ? {} : { to }) };
    const noun = kind === "share" && size === 1 ? "share" : "number";
    throw wrong(label, ruleInWords(written, noun, kind === "share" && size !== 1 ? " %" : ""), given);
  }
  return value;
}

/** Internal units in one of the unit that stands beside the value. */
function sizeOf(kind: RateKind, unit: string | undefined, value: number, label: string, system: UnitSystem): number {
  const refuse = (words: readonly string[]): never => {
    throw wrong(`${label} column "Unit"`, `one of ${words.join(", ")}`, unit ?? null);
  };
  const perUnit = (quantity: QuantityKind): number => {
    const [time = "", per = ""] = (unit ?? "").split("/").map((word) => word.trim());
    const [top, bottom] = [durationSize(time), unitSize(per, quantity)];
    return top !== undefined && bottom !== undefined
      ? top / bottom
      : refuse(unitWords(quantity).map((word) => `s/${word}`));
  };
  switch (kind) {
    case "share":
      if (unit !== "%") return 1;
      // A cell formatted as a percentage holds 0.02 for "2 %": with the unit beside it nobody knows which was meant.
      if (value > 0 && value < 1)
        throw wrong(label, 'clear: 2 with the unit "%", or 2% with a blank unit', value, "write it one way");
      return 0.01;
    case "number":
      return 1;
    case "seconds":
      return durationSize(unit ?? "") ?? refuse(["s", "min", "h"]);
    case "hours":
      return (durationSize(unit ?? "h") ?? refuse(["h", "min"])) / (durationSize("h") as number);
    case "seconds per mass":
      return perUnit("mass");
    case "seconds per length":
      return perUnit("length");
    default:
      return unit === undefined ? toInternal(1, kind, system) : (unitSize(unit, kind) ?? refuse(unitWords(kind)));
  }
}

const NAMES = [...RATE_ITEMS.map(({ name }) => name), ...Object.values(RATE_WORDS)].join(", ");

export const rates = (): TableParameter<Rates> => ({
  shape: "table",
  type: "rate table",
  description: `The shop's own figures, one a row (Rate, Value, Unit); what is needed is asked for: ${NAMES}. Thresholds of findings too, by their names`,
  optional: false,
  default: null,
  read: remembered((given, name, { system }) => {
    if (isEmptyRange(given)) throw wrong(name, "given", null);
    return readRates(given, name, system);
  }),
});
