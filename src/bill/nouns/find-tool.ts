/** Finds a tool in its table by name; a die also by its opening, as the shop floor calls it. */
import type { Die, Punch } from "../../calc/bend/tooling.ts";
import { nearest } from "../../units/nearest.ts";
import { parseLength } from "../../units/parse-length.ts";
import { noAnswer } from "../../units/refusal.ts";
import { showGiven } from "../../units/show.ts";
import { toInternal, type UnitSystem } from "../../units/system.ts";

const SAME_OPENING_MM = 0.01; // far below any step between two dies

const named = <T extends { readonly name: string }>(wanted: string | number, rows: readonly T[]): T | undefined =>
  rows.find(({ name }) => name.toLowerCase() === String(wanted).toLowerCase());

function missing(parameter: string, wanted: string | number, rows: readonly { readonly name: string }[]): never {
  const names = rows.map(({ name }) => name);
  throw noAnswer(
    parameter,
    `a ${parameter} in the table`,
    showGiven(wanted),
    names.length === 0 ? "the table is empty" : `nearest is ${showGiven(nearest(String(wanted), names))}`,
  );
}

export function findDie<D extends Die>(wanted: string | number, dies: readonly D[], system: UnitSystem): D {
  const opening = typeof wanted === "number" ? toInternal<"mm">(wanted, "length", system) : parseLength(wanted, system);
  const byOpening = dies.filter(
    (die) => typeof opening === "number" && Math.abs(die.opening - opening) < SAME_OPENING_MM,
  );
  if (byOpening.length > 1 && !named(wanted, dies))
    throw noAnswer(
      "die",
      "named where two dies have the same opening",
      showGiven(wanted),
      byOpening
        .slice(0, 2)
        .map(({ name }) => showGiven(name))
        .join(" or "),
    );
  return named(wanted, dies) ?? byOpening[0] ?? missing("die", wanted, dies);
}

export const findPunch = <P extends Punch>(
  wanted: string | number | undefined,
  punches: readonly P[],
): P | undefined => (wanted === undefined ? undefined : (named(wanted, punches) ?? missing("punch", wanted, punches)));

/** A machine by its name. */
export const findMachine = <T extends { readonly name: string }>(
  wanted: string,
  machines: readonly T[],
  parameter: string,
): T => named(wanted, machines) ?? missing(parameter, wanted, machines);
