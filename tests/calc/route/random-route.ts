/** Random routing questions with a seed, and a plain machine: a queue, then work at a pace with a pause every day. */
import type { MachineTime, MachineTimes, RouteLine, TimeAndCost } from "../../../src/calc/route/problem.ts";

export function random(seed: number): () => number {
  let state = seed >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 2 ** 32;
  };
}

/** Works `open` seconds of every `day`, from its beginning; `queue` seconds of work come first. */
export function plainMachine(queue: number, open: number, day: number): MachineTime {
  const finish = (load: number) => {
    const work = load + queue;
    const days = Math.ceil(work / open) - 1;
    return days * day + (work - days * open);
  };
  const capacity = (by: number) => {
    const days = Math.floor(by / day);
    return days * open + Math.min(by - days * day, open) - queue;
  };
  return { finish, capacity };
}

export function plainBrake(queue: number, open: number, day: number): MachineTimes["brake"] {
  const worked = (at: number) => Math.floor(at / day) * open + Math.min(at % day, open);
  const { finish } = plainMachine(0, open, day);
  return { finish: (first, load) => finish(Math.max(worked(first), queue) + load) };
}

export interface Question {
  readonly lines: readonly RouteLine[];
  readonly shop: MachineTimes;
  readonly queues: { readonly shear: number; readonly waterjet: number; readonly brake: number };
}

export function randomQuestion(seed: number, count: number): Question {
  const next = random(seed);
  const between = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  const [open, day] = next() < 0.5 ? [1, 1] : [28_800, 86_400];
  const long = next() < 0.3 ? 60 : 4000;
  const alike = next() < 0.2; // the waterjet always three times the shear: the hard case for any bound
  const lines = Array.from({ length: count }, (): RouteLine => {
    const time = between(1, long);
    const shear: TimeAndCost = { time, cost: between(0, 5000) };
    const waterjet: TimeAndCost = { time: alike ? time * 3 : between(1, long * 3), cost: between(0, 9000) };
    const kind = next();
    return {
      shear: kind < 0.15 ? undefined : shear,
      waterjet: kind > 0.85 ? undefined : waterjet,
      brake: next() < 0.8 ? between(1, long) : 0,
    };
  });
  const queues = { shear: between(0, long * 2), waterjet: between(0, long * 2), brake: between(0, long * 2) };
  return { lines, queues, shop: shopWith(queues, open!, day!) };
}

export const shopWith = (
  queues: { readonly shear: number; readonly waterjet: number; readonly brake: number },
  open: number,
  day: number,
): MachineTimes => ({
  shear: plainMachine(queues.shear, open, day),
  waterjet: plainMachine(queues.waterjet, open, day),
  brake: plainBrake(queues.brake, open, day),
});
