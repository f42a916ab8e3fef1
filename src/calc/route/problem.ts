/** Which machine cuts which line: the question and its answer. All times whole seconds, all costs whole numbers of one small unit. */
import { itemAt } from "../../units/certain.ts";

export const MACHINES = ["shear", "waterjet"] as const;
export type Machine = (typeof MACHINES)[number];

/** What a line takes at one cutting machine. */
export interface TimeAndCost {
  readonly time: number;
  readonly cost: number;
}

/** undefined: this machine cannot cut the line, or it is pinned to the other. At least one is there. */
export interface RouteLine {
  readonly shear: TimeAndCost | undefined;
  readonly waterjet: TimeAndCost | undefined;
  /** At the brake; the same whichever machine cut the blank, 0 for a flat part. */
  readonly brake: number;
}

/** On a machine that can cut it. */
export function cutOn(line: RouteLine, machine: Machine): TimeAndCost {
  const cut = line[machine];
  if (!cut) throw new Error(`a line that the ${machine} cannot cut`);
  return cut;
}

/** A line that both machines can cut. */
export interface Choice {
  readonly shear: TimeAndCost;
  readonly waterjet: TimeAndCost;
}

/** A machine's calendar and queue. finish(load) <= by exactly where load <= capacity(by); loads are above 0. */
export interface MachineTime {
  finish(load: number): number;
  capacity(by: number): number;
}

export interface MachineTimes {
  readonly shear: MachineTime;
  readonly waterjet: MachineTime;
  /** The brake begins when its queue is done, and not before the first blank is there. */
  readonly brake: { finish(firstBlank: number, load: number): number };
}

export interface Route {
  readonly machines: readonly Machine[];
  readonly cost: number;
  readonly finish: number;
}

/** What one assignment comes to. The shortest line that is bent is cut first, since nothing speaks against it. */
export function routeOf(lines: readonly RouteLine[], machines: readonly Machine[], shop: MachineTimes): Route {
  const load = { shear: 0, waterjet: 0 };
  let [cost, bending, first] = [0, 0, Infinity];
  lines.forEach((line, i) => {
    const machine = itemAt(machines, i);
    const cut = cutOn(line, machine);
    load[machine] += cut.time;
    cost += cut.cost;
    bending += line.brake;
    if (line.brake > 0) first = Math.min(first, firstBlank(cut, machine, shop));
  });
  const ends = MACHINES.flatMap((machine) => (load[machine] > 0 ? [shop[machine].finish(load[machine])] : []));
  if (bending > 0) ends.push(shop.brake.finish(first, bending));
  return { machines: [...machines], cost, finish: Math.max(0, ...ends) };
}

export const firstBlank = (cut: TimeAndCost, machine: Machine, shop: MachineTimes): number =>
  shop[machine].finish(Math.max(1, cut.time));
