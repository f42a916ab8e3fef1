/** What vendors charge: one minimum a lot, which is what one station does in one color for one delivery. */
import { type Money, money } from "../../units/quantity.ts";
import { dueOf } from "../dates/due.ts";
import type { LinePlan } from "../lines/plan-line.ts";
import type { Shop } from "../nouns/shop.ts";
import { priceEachOf } from "../nouns/station.ts";
import type { OutsideWork } from "../time/station-work.ts";

interface Outside {
  readonly plan: LinePlan;
  readonly outside: readonly OutsideWork[];
}

/** Lines sent to a vendor without a color while others have one: a lot, and a minimum, of their own. */
export function withoutColor(lines: readonly Outside[]): LinePlan[] {
  const isBlank = ({ plan }: Outside) => plan.line.finish.trim() === "";
  const colored = new Set(
    lines.filter((line) => !isBlank(line)).flatMap(({ outside }) => outside.map(({ station }) => station.name)),
  );
  return lines
    .filter((line) => isBlank(line) && line.outside.some(({ station }) => colored.has(station.name)))
    .map(({ plan }) => plan);
}

/** Money of every line's outside work: a lot costs its units, at least the minimum, shared by its lines' units. */
export function outsideShares(lines: readonly Outside[], job: Shop["job"]): Map<LinePlan, Money> {
  const lots = new Map<string, { readonly minimum: number; readonly parts: { plan: LinePlan; charge: number }[] }>();
  for (const { plan, outside } of lines)
    for (const { station, units } of outside) {
      const key = JSON.stringify([station.name, plan.line.finish.trim().toLowerCase(), dueOf(plan.line, job) ?? null]);
      const lot = lots.get(key) ?? { minimum: station.minimum ?? 0, parts: [] };
      lot.parts.push({ plan, charge: units * plan.line.quantity * priceEachOf(station) });
      lots.set(key, lot);
    }
  const shares = new Map<LinePlan, Money>();
  for (const { minimum, parts } of lots.values()) {
    const sum = parts.reduce((total, { charge }) => total + charge, 0);
    for (const { plan, charge } of parts) {
      const share = sum > 0 ? charge / sum : 1 / parts.length;
      shares.set(plan, money((shares.get(plan) ?? 0) + share * Math.max(minimum, sum)));
    }
  }
  return shares;
}
