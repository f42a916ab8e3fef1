import { describe, expect, it } from "vitest";
import { planFloor } from "../../../../src/calc/schedule/floor/plan-floor.ts";
import { compareWorth } from "../../../../src/calc/schedule/floor/problem.ts";
import { bruteForceCrew, crewFaultsOf, drawnCrew, withCrew } from "./random-crew.ts";
import { faultsOf, problemOf, weekly } from "./random-floor.ts";

const UNITS = 1e6;

describe("people that are counted", () => {
  it("on 200 small random floors no less late hours and then no less set-up than brute force finds", () => {
    for (let seed = 1; seed <= 200; seed++) {
      const drawn = drawnCrew(seed, seed % 4 === 0 ? 4 : 3);
      const { plan, isProved } = planFloor(drawn.problem, { units: UNITS });
      expect([...faultsOf(drawn, plan), ...crewFaultsOf(drawn, plan)], `seed ${seed}`).toEqual([]);
      expect({ late: plan.worth.late, setUp: plan.worth.setUp }, `seed ${seed}`).toEqual(bruteForceCrew(drawn));
      expect(isProved, `seed ${seed}`).toBe(true);
    }
  });

  it("on 300 random floors nobody stands at two stations, and a further person or machine or a longer shift is never later", () => {
    let shorter = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const drawn = drawnCrew(seed, 14);
      const { problem, crew } = drawn;
      const { plan, bound } = planFloor(problem, { units: 20_000 });
      expect([...faultsOf(drawn, plan), ...crewFaultsOf(drawn, plan)], `seed ${seed}`).toEqual([]);
      expect(bound.late, `seed ${seed}`).toBeLessThanOrEqual(plan.worth.late);
      const again = (changed: typeof problem) => planFloor(changed, { units: 0, tried: [plan] }).plan.worth;
      expect(again(problem), `seed ${seed}`).toEqual(plan.worth);
      const more = again(withCrew(drawn, [crew[0] + 1, crew[1] + 1]).problem);
      expect(compareWorth(more, plan.worth), `person, seed ${seed}`).toBeLessThanOrEqual(0);
      if (more.finishes < plan.worth.finishes) shorter++;
      const longer = problemOf(
        drawn.calendars.map(() => weekly(6, 20)),
        problem,
      );
      expect(again(longer).late, `shift, seed ${seed}`).toBeLessThanOrEqual(plan.worth.late);
      const place = seed % 2;
      let at = 0;
      const machines = problem.stations.flatMap(({ machines: count }, i) => {
        const own = count === Infinity ? [] : plan.machines.slice(at, at + count);
        at += own.length;
        return i === place ? [...own, []] : own;
      });
      const stations = problem.stations.map((each, i) =>
        i === place ? { ...each, machines: each.machines + 1 } : each,
      );
      const further = planFloor({ ...problem, stations }, { units: 0, tried: [{ ...plan, machines }] });
      expect(compareWorth(further.plan.worth, plan.worth), `machine, seed ${seed}`).toBeLessThanOrEqual(0);
    }
    expect(shorter).toBeGreaterThan(50);
  });

  it("where there are enough the plan is no worse than without counting them", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const { problem } = withCrew(drawnCrew(seed, 12), [50, 50]);
      const free = planFloor({ ...problem, crew: undefined }, { units: 10_000 });
      const counted = planFloor(problem, { units: 20_000 });
      expect(compareWorth(counted.plan.worth, free.plan.worth), `seed ${seed}`).toBeLessThanOrEqual(0);
    }
  });
});
