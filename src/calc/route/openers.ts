/** Lines that could be the first at the brake, which waits for the first blank. */
import { beginCount } from "./begin-count.ts";
import { firstBlank, MACHINES, type Machine, type MachineTimes, type RouteLine } from "./problem.ts";

export interface Opener {
  readonly line: number;
  readonly machine: Machine;
  /** When its blank would be there, cut first. */
  readonly at: number;
}

export const endsOf = (line: RouteLine, shop: MachineTimes, index = 0): Opener[] =>
  MACHINES.flatMap((machine) => {
    const cut = line[machine];
    return cut
      ? [{ line: index, machine, at: cut.time > 0 || line.brake > 0 ? firstBlank(cut, machine, shop) : 0 }]
      : [];
  });

/** Lines that could be the first at the brake, the earliest first. */
export const openers = (lines: readonly RouteLine[], shop: MachineTimes): Opener[] =>
  lines.flatMap((line, i) => (line.brake > 0 ? endsOf(line, shop, i) : [])).sort((a, b) => a.at - b.at);

/** The openers, earliest first, that still let the brake finish by then: a finish later than another's is later too. */
export function inTime(first: readonly Opener[], bending: number, shop: MachineTimes, by: number): readonly Opener[] {
  return first.slice(
    0,
    beginCount(first, ({ at }) => shop.brake.finish(at, bending) <= by),
  );
}
