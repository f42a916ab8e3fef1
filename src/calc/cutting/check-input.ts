/** Refuses what no plan can be made from, in the project's one grammar. */
import { Refusal } from "../../units/refusal.ts";
import type { Blank, Limits, Stock } from "./types.ts";

const LARGEST_MM = 100_000;
/** Chosen: far beyond a shop's bill. */
const MOST_PIECES = 20_000;

export function checkInput(blanks: readonly Blank[], stock: readonly Stock[], limits: Limits): void {
  if (blanks.length === 0) refuse("blanks", "at least one line", "none");
  if (stock.length === 0) refuse("stock", "at least one line", "none");

  distinct("stock id", stock);
  let pieces = 0;
  for (const blank of blanks) {
    size(`${blank.id} first size`, blank.w);
    size(`${blank.id} second size`, blank.h);
    if (!(Number.isInteger(blank.quantity) && blank.quantity >= 0)) {
      refuse(`${blank.id} quantity`, "a whole number, 0 or more", blank.quantity);
    }
    pieces += blank.quantity;
  }
  oneSize(blanks);
  if (pieces === 0) refuse("quantities", "above 0 in at least one line", 0);
  if (pieces > MOST_PIECES) refuse("pieces in all", `at most ${MOST_PIECES}`, pieces, "plan the bill in parts");
  for (const sheet of stock) {
    size(`${sheet.id} width`, sheet.w);
    size(`${sheet.id} height`, sheet.h);
    if (!(sheet.quantity === Infinity || (Number.isInteger(sheet.quantity) && sheet.quantity >= 0))) {
      refuse(`${sheet.id} quantity`, "a whole number, 0 or more", sheet.quantity);
    }
    if (!(sheet.trim >= 0 && sheet.trim < Math.min(sheet.w, sheet.h))) {
      refuse(`${sheet.id} trim`, "0 or more and less than the sheet", sheet.trim);
    }
    if (sheet.price !== null && !(sheet.price >= 0 && sheet.price < Infinity)) {
      refuse(`${sheet.id} price`, "0 or more", sheet.price);
    }
  }
  for (const [name, value] of [
    ["longest cut", limits.longestCut],
    ["gauge reach", limits.reach],
  ] as const) {
    if (!(value > 0)) refuse(name, "above 0", value);
  }
  for (const [name, value] of [
    ["nearest gauge", limits.nearestGauge],
    ["least drop", limits.leastDrop],
    ["least hold", limits.leastHold],
    ["least remnant", limits.leastRemnant],
    ["thickness", limits.thickness ?? 0],
    ["least trim", limits.leastTrim ?? 0],
    ["front stop reach", limits.frontReach ?? 0],
    ["twist width", limits.twistWidth ?? 0],
    ["twist length", limits.twistLength ?? 0],
  ] as const) {
    if (!(value >= 0 && value < Infinity)) refuse(name, "0 or more", value);
  }
  for (const [name, value, least] of [
    ["stacks", limits.stacks ?? 1, 1],
    ["long stacks", limits.longStacks ?? 0, 0],
  ] as const) {
    if (!(Number.isInteger(value) && value >= least)) refuse(name, `a whole number, ${least} or more`, value);
  }
  if (!(limits.remnantWorth >= 0 && limits.remnantWorth <= 1)) {
    refuse("remnant worth", "from 0 to 1", limits.remnantWorth);
  }
  if (!(Number.isInteger(limits.stages) && limits.stages >= 2)) {
    refuse("stages", "a whole number, 2 or more", limits.stages);
  }
}

function size(name: string, value: number): void {
  if (!(value > 0 && value <= LARGEST_MM)) refuse(name, `above 0 and at most ${LARGEST_MM} mm`, value);
}

/** A part may stand on several lines, but it is one part. */
function oneSize(blanks: readonly Blank[]): void {
  const seen = new Map<string, Blank>();
  for (const blank of blanks) {
    const { id, w, h, grain } = blank;
    if (id === "") refuse("blank id", "given for every line", "none");
    const before = seen.get(id) ?? blank;
    if (before.w !== w || before.h !== h || before.grain !== grain) {
      refuse(
        `${id} size and grain`,
        "the same in every line of the part",
        `${w} x ${h} ${grain} beside ${before.w} x ${before.h} ${before.grain}`,
      );
    }
    seen.set(id, before);
  }
}

function distinct(name: string, lines: readonly { readonly id: string }[]): void {
  const seen = new Set<string>();
  for (const { id } of lines) {
    if (id === "") refuse(name, "given for every line", "none");
    if (seen.has(id)) refuse(name, "different in every line", `${id} twice`);
    seen.add(id);
  }
}

function refuse(name: string, rule: string, got: unknown, hint?: string): never {
  throw new Refusal("#VALUE!", `${name} must be ${rule}; got ${String(got)}${hint ? `; ${hint}` : ""}`);
}
