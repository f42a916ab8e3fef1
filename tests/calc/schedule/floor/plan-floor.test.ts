import { describe, expect, it } from "vitest";
import { boundOf } from "../../../../src/calc/schedule/floor/bound.ts";
import { Floor, Orders } from "../../../../src/calc/schedule/floor/orders.ts";
import { planFloor } from "../../../../src/calc/schedule/floor/plan-floor.ts";
import { compareWorth, type FloorProblem, type Operation } from "../../../../src/calc/schedule/floor/problem.ts";
import { steadyClock } from "../../../../src/calc/schedule/floor/work-clock.ts";
import { bruteForce, drawnFloor, faultsOf, problemOf, START, weekly } from "./random-floor.ts";

/**
 * ft06, machine and time: Fisher and Thompson, "Probabilistic learning combinations of local job-shop scheduling rules",
 * in Muth and Thompson, Industrial Scheduling, Prentice-Hall, 1963. Its least makespan is 55 (JSPLIB).
 */
const FT06 = [
  [2, 1, 0, 3, 1, 6, 3, 7, 5, 3, 4, 6],
  [1, 8, 2, 5, 4, 10, 5, 10, 0, 10, 3, 4],
  [2, 5, 3, 4, 5, 8, 0, 9, 1, 1, 4, 7],
  [1, 5, 0, 5, 2, 5, 3, 3, 4, 8, 5, 9],
  [2, 9, 1, 3, 4, 5, 5, 4, 0, 3, 3, 1],
  [1, 3, 3, 3, 5, 9, 0, 10, 4, 4, 2, 1],
];
const FT06_MAKESPAN = 55;

function jobShop(rows: readonly (readonly number[])[], machines: number): FloorProblem {
  const operations = rows.flatMap((row, job): Operation[] =>
    Array.from({ length: row.length / 2 }, (_, i) => ({
      station: row[2 * i]!,
      run: row[2 * i + 1]!,
      own: 0,
      lot: job,
      change: 0,
      key: 0,
      after: i === 0 ? [] : [(job * row.length) / 2 + i - 1],
      release: 0,
      frozen: undefined,
      people: 1,
    })),
  );
  const last = operations.flatMap((_, i) => (operations[i + 1]?.after[0] === i ? [] : [i]));
  return {
    start: 0,
    stations: Array.from({ length: machines }, () => ({ machines: 1, clock: steadyClock })),
    operations,
    deliveries: [{ due: 0, weight: 1, operations: last }],
  };
}

const UNITS = 4e5;

describe("a textbook job shop", () => {
  it("ft06 is solved to its published optimum and proved", () => {
    const { plan, bound, isProved } = planFloor(jobShop(FT06, 6), { units: 1e8 });
    expect(plan.worth.late).toBe(FT06_MAKESPAN);
    expect(bound.late).toBe(FT06_MAKESPAN);
    expect(isProved).toBe(true);
  });

  it("says less than the optimum nowhere, and that nothing is proved, where it has no time to look", () => {
    const { plan, bound, isProved } = planFloor(jobShop(FT06, 6), { units: 0 });
    expect(plan.worth.late).toBeGreaterThanOrEqual(FT06_MAKESPAN);
    expect(bound.late).toBeLessThanOrEqual(FT06_MAKESPAN);
    expect(isProved).toBe(false);
  });
});

describe("200 small random floors", () => {
  it("have no less late hours and then no less set-up than brute force finds, and the plan can be worked to", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const drawn = drawnFloor(seed, 5 + (seed % 2));
      const { plan, isProved } = planFloor(drawn.problem, { units: UNITS });
      expect(faultsOf(drawn, plan), `seed ${seed}`).toEqual([]);
      expect({ late: plan.worth.late, setUp: plan.worth.setUp }, `seed ${seed}`).toEqual(bruteForce(drawn));
      expect(isProved, `seed ${seed}`).toBe(true);
    }
  });
});

describe("laws on 300 random floors", () => {
  it("a further machine or a longer shift is never later, since the old order is among those tried", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const { problem, calendars } = drawnFloor(seed, 12);
      const { plan } = planFloor(problem, { units: 10_000 });
      const place = seed % 2;
      const more = {
        ...problem,
        stations: problem.stations.map((each, i) => (i === place ? { ...each, machines: each.machines + 1 } : each)),
      };
      let at = 0;
      const machines = problem.stations.flatMap(({ machines: count }, i) => {
        const own = count === Infinity ? [] : plan.machines.slice(at, at + count);
        at += own.length;
        return i === place ? [...own, []] : own;
      });
      const further = planFloor(more, { units: 10_000, tried: [{ machines }] });
      expect(compareWorth(further.plan.worth, plan.worth), `machine, seed ${seed}`).toBeLessThanOrEqual(0);
      const longer = problemOf(
        calendars.map((own, i) => (i === place ? weekly(6, 20) : own)),
        problem,
      );
      const { worth } = planFloor(longer, { units: 10_000, tried: [plan] }).plan;
      expect(worth.late, `shift, seed ${seed}`).toBeLessThanOrEqual(plan.worth.late);
    }
  });

  it("without a job the others are together never later, at the proved optimum", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const { problem, jobs } = drawnFloor(seed, 5);
      const gone = seed % jobs.length;
      const kept = problem.operations.flatMap((_, i) => (jobs[gone]!.includes(i) ? [] : [i]));
      const left = {
        ...problem,
        operations: kept.map((i) => {
          const operation = problem.operations[i]!;
          return { ...operation, after: operation.after.map((part) => kept.indexOf(part)) };
        }),
        deliveries: problem.deliveries
          .filter((_, job) => job !== gone)
          .map((each) => ({ ...each, operations: each.operations.map((i) => kept.indexOf(i)) })),
      };
      const [all, without] = [planFloor(problem, { units: UNITS }), planFloor(left, { units: UNITS })];
      expect(all.isProved && without.isProved, `seed ${seed}`).toBe(true);
      const { due, weight, operations } = problem.deliveries[gone]!;
      const own = weight * Math.max(0, Math.max(...operations.map((i) => all.plan.finish[i]!)) - due);
      expect(without.plan.worth.late, `seed ${seed}`).toBeLessThanOrEqual(all.plan.worth.late - own);
    }
  });

  it("nothing that could begin sooner without harm to the others stands idle", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const drawn = drawnFloor(seed, 14);
      const { problem } = drawn;
      const { plan } = planFloor(problem, { units: 5000 });
      expect(faultsOf(drawn, plan), `seed ${seed}`).toEqual([]);
      // Every operation at every place of every machine of its station, worked out from the orders alone.
      const floor = new Floor(problem);
      const orders = new Orders(floor);
      problem.operations.forEach((_, i) => {
        const home = plan.machines.findIndex((own) => own.includes(i));
        if (home < 0) return;
        const first = floor.firstMachine[i]!;
        for (let m = first; m < first + floor.machinesOf[i]!; m++)
          for (let place = 0; place <= plan.machines[m]!.length; place++) {
            const bare = plan.machines.map((own) => own.filter((each) => each !== i));
            orders.follow(bare.with(m, bare[m]!.toSpliced(place, 0, i)));
            if (!orders.evaluate() || orders.ready[i]! >= plan.ready[i]!) continue;
            const harms =
              orders.worth.setUp > plan.worth.setUp ||
              problem.operations.some((__, other) => other !== i && orders.ready[other]! > plan.ready[other]!);
            expect(harms, `seed ${seed}, operation ${i}`).toBe(true);
          }
      });
    }
  });

  it("the bound is no more than the proved optimum, and where all work is at one station often the optimum itself", () => {
    let exact = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const drawn = drawnFloor(seed, 6);
      const problem =
        seed % 2 === 0
          ? drawn.problem
          : problemOf(drawn.calendars, {
              ...drawn.problem,
              operations: drawn.problem.operations.map((each) =>
                each.key === 0 || each.station === 2 ? each : { ...each, station: 0 },
              ),
            });
      const floor = new Floor(problem);
      const bound = boundOf(floor);
      const { late, setUp } = bruteForce({ ...drawn, problem });
      expect(bound.late, `seed ${seed}`).toBeLessThanOrEqual(late);
      expect(bound.setUp, `seed ${seed}`).toBeLessThanOrEqual(setUp);
      if (late > 0 && bound.late === late) exact++;
    }
    expect(exact).toBeGreaterThan(0);
  });

  it("what is frozen goes first on its station, in its order", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const drawn = drawnFloor(seed, 10);
      const { operations, stations } = drawn.problem;
      const held = operations.flatMap(({ after, station }, i) =>
        after.length === 0 && stations[station]!.machines === 1 ? [i] : [],
      );
      const frozen = held.slice(0, 3).reverse();
      const problem = {
        ...drawn.problem,
        operations: operations.map((each, i) => ({
          ...each,
          frozen: frozen.includes(i) ? frozen.indexOf(i) : undefined,
        })),
      };
      const { plan } = planFloor(problem, { units: 10_000 });
      expect(faultsOf({ ...drawn, problem }, plan), `seed ${seed}`).toEqual([]);
      for (const own of plan.machines) {
        const first = frozen.filter((i) => own.includes(i));
        expect(own.slice(0, first.length), `seed ${seed}`).toEqual(first);
      }
      expect(START).toBeLessThanOrEqual(Math.min(...plan.ready));
    }
  });
});
