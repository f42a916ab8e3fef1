/** Set-up as the week has it, against what the bills share it to. */
import { SECONDS_PER_HOUR } from "../../calc/time/seconds.ts";
import { showNumber } from "../../units/show.ts";
import type { Week } from "./week.ts";

const LEAST = 0.05; // hours (chosen): below that the figures agree as they are printed

/**
 * A bill sets its tools up once and shares that among its lines; in the week they are set up when the work is there, again
 * where a date does not let it wait, and once for two jobs that meet. "Brake 2.14 h more, Shear 0.4 h less"; "" where
 * all stations agree.
 */
export function setUpSays({ steps }: Pick<Week, "steps">): string {
  const more = new Map<string, number>();
  for (const { station, work, setUp, isStarted, lot } of steps) {
    if (!work) continue;
    const inBill = isStarted || lot > 1 ? 0 : work.setUp;
    more.set(station.name, (more.get(station.name) ?? 0) + (setUp - inBill) / SECONDS_PER_HOUR);
  }
  const said = [...more]
    .filter(([, hours]) => Math.abs(hours) >= LEAST)
    .sort(([, a], [, b]) => b - a)
    .map(([station, hours]) => `${station} ${showNumber(Math.abs(hours), 3)} h ${hours > 0 ? "more" : "less"}`);
  if (said.length === 0) return "";
  return `Set-up compared with the bills, where tools and sheet are set up once per job: ${said.join(", ")}.`;
}
