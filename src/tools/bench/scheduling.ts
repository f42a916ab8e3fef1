/**
 * npm run -s bench:scheduling -- FILE [--seconds 1] [--json]
 * Published job shops: every machine a station, no set-ups, one delivery of everything. The optimum is read afterwards.
 */
import { readFileSync } from "node:fs";
import { planFloor } from "../../calc/schedule/floor/plan-floor.ts";
import type { FloorProblem, Operation } from "../../calc/schedule/floor/problem.ts";
import { steadyClock } from "../../calc/schedule/floor/work-clock.ts";
import { itemAt } from "../../units/certain.ts";
import { processorTime, timeIsUp } from "./cutting/clock.ts";
import { benchOptions } from "./options.ts";

/** More than any machine does; the clock ends the search. */
const MOST_UNITS_A_SECOND = 1e9;

interface Instance {
  readonly name: string;
  readonly machines: number;
  /** Machine and time, in order. */
  readonly jobs: readonly (readonly (readonly [number, number])[])[];
  readonly optimum?: number | null;
}

export function jobShop({ machines, jobs }: Instance): FloorProblem {
  const operations: Operation[] = [];
  const last = jobs.flatMap((job) => {
    job.forEach(([station, run], i) => {
      const after = i === 0 ? [] : [operations.length - 1];
      operations.push({
        station,
        run,
        own: 0,
        lot: 0,
        change: 0,
        key: 0,
        after,
        release: 0,
        frozen: undefined,
        people: 1,
      });
    });
    return job.length > 0 ? [operations.length - 1] : [];
  });
  return {
    start: 0,
    stations: Array.from({ length: machines }, () => ({ machines: 1, clock: steadyClock })),
    operations,
    deliveries: [{ due: 0, weight: 1, operations: last }],
  };
}

/** Worked out from orders and times alone: every operation once, in its job's order, no two on a machine at once. */
function isValid({ jobs }: Instance, start: readonly number[], makespan: number): boolean {
  let at = 0;
  const onMachine = new Map<number, [number, number][]>();
  for (const job of jobs) {
    let free = 0;
    for (const [machine, time] of job) {
      const begin = itemAt(start, at++);
      if (!(begin >= free)) return false;
      free = begin + time;
      onMachine.set(machine, [...(onMachine.get(machine) ?? []), [begin, free]]);
    }
    if (free > makespan) return false;
  }
  return [...onMachine.values()].every((spans) => {
    spans.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    return spans.every(([begin], i) => i === 0 || begin >= itemAt(spans, i - 1)[1]);
  });
}

function main(): number {
  const { operand, seconds, json } = benchOptions("bench:scheduling FILE [--seconds 1] [--json]", {
    operand: "FILE",
    numbers: { seconds: { usual: 1, least: 0.01 } },
  });
  const read = JSON.parse(readFileSync(operand, "utf8")) as { instances: readonly Instance[] } | readonly Instance[];
  const print = (row: object) =>
    process.stdout.write(`${json ? JSON.stringify(row) : Object.entries(row).flat().join(" ")}\n`);
  const rows = ("instances" in read ? read.instances : read).map((instance) => {
    const begun = processorTime();
    const { plan, bound, isProved } = planFloor(jobShop(instance), {
      units: seconds * MOST_UNITS_A_SECOND,
      stop: timeIsUp(seconds * 1000),
    });
    const took = (processorTime() - begun) / 1000;
    const makespan = plan.worth.late;
    const optimum = instance.optimum ?? null;
    const row = {
      name: instance.name,
      makespan,
      optimum,
      gap: optimum === null ? null : makespan / optimum - 1,
      bound: bound.late,
      proved: isProved,
      valid: isValid(instance, plan.ready, makespan),
      seconds: took,
    };
    print(row);
    return row;
  });
  const gaps = rows.flatMap(({ gap }) => (gap === null ? [] : [gap]));
  const total = {
    instances: rows.length,
    mean_gap: gaps.length === 0 ? null : gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length,
    worst_gap: gaps.length === 0 ? null : Math.max(...gaps),
    invalid: rows.filter(({ valid }) => !valid).length,
  };
  if (json) print({ total });
  else print(total);
  return total.invalid === 0 ? 0 : 1;
}

process.exitCode = main();
