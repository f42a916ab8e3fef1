/**
 * The Lagrangian bound of "cheapest assignment within two capacities": each second of a machine is given a price, every
 * line takes the cheaper machine at those prices, and what the capacities are worth is given back. For any prices of 0
 * or more this is a lower bound; the best prices make it that of the linear program (Geoffrion 1974, memory).
 */
import type { Choice } from "./problem.ts";

export interface Prices {
  readonly shear: number;
  readonly waterjet: number;
}

export const boundAt = (choices: readonly Choice[], prices: Prices, capacity: Prices): number =>
  choices.reduce((sum, { shear, waterjet }) => {
    return sum + Math.min(shear.cost + prices.shear * shear.time, waterjet.cost + prices.waterjet * waterjet.time);
  }, 0) -
  prices.shear * capacity.shear -
  prices.waterjet * capacity.waterjet;

/**
 * Prices neither of which can be bettered alone. Usually one machine is short at most, and one price decides; else both are
 * searched together. Where lines cost the same on both machines the bound has a kink, and both prices changed at once might
 * better it: the search that follows then only takes longer.
 */
export function bestPrices(choices: readonly Choice[], capacity: Prices): Prices {
  const free: Prices = { shear: 0, waterjet: 0 };
  const single = (["shear", "waterjet"] as const).map((machine) => ({
    ...free,
    [machine]: bestPrice(choices, free, capacity, machine),
  }));
  const [shearOnly, waterjetOnly] = single as [Prices, Prices];
  if (bestPrice(choices, shearOnly, capacity, "waterjet") === 0) return shearOnly;
  if (bestPrice(choices, waterjetOnly, capacity, "shear") === 0) return waterjetOnly;
  // With the waterjet's price always the best for the shear's, the bound is concave in the shear's price alone.
  const withBestOther = (shear: number): Prices => ({
    shear,
    waterjet: bestPrice(choices, { shear, waterjet: 0 }, capacity, "waterjet"),
  });
  const bound = (shear: number) => boundAt(choices, withBestOther(shear), capacity);
  let [low, high] = [0, Math.max(shearOnly.shear, 1)];
  while (bound(high * 2) > bound(high) && high < MOST_PRICE) high *= 2;
  high *= 2;
  for (let i = 0; i < THIRDS; i++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (bound(a) < bound(b)) low = a;
    else high = b;
  }
  return withBestOther((low + high) / 2);
}

const THIRDS = 60; // numerical: each step leaves two thirds
const MOST_PRICE = 1e12; // numerical: no second is worth more

/** The price of one machine at which its load just fits: the load falls as the price rises. */
function bestPrice(
  choices: readonly Choice[],
  prices: Prices,
  capacity: Prices,
  machine: "shear" | "waterjet",
): number {
  const other = machine === "shear" ? "waterjet" : "shear";
  // The line leaves the machine at the price where the two are equal.
  const leaving = choices
    .map((choice) => ({
      time: choice[machine].time,
      at:
        (choice[other].cost + prices[other] * choice[other].time - choice[machine].cost) /
        Math.max(choice[machine].time, 1e-9), // numerical: a cut of no time never leaves
    }))
    .sort((a, b) => b.at - a.at);
  let load = 0;
  for (const { time, at } of leaving) {
    if (at <= 0) return 0;
    load += time;
    if (load > capacity[machine]) return at;
  }
  return 0;
}
