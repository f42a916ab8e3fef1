import { describe, expect, it } from "vitest";
import { Floor, Orders } from "../../../../src/calc/schedule/floor/orders.ts";
import { planFloor } from "../../../../src/calc/schedule/floor/plan-floor.ts";
import type { FloorPlan, FloorProblem } from "../../../../src/calc/schedule/floor/problem.ts";
import { crewFaultsOf, drawnCrew } from "./random-crew.ts";
import { drawnFloor, faultsOf } from "./random-floor.ts";

const UNITS = 5000;
const DAY = 86_400;

const kept = (problem: FloorProblem, before: FloorPlan): FloorPlan =>
  planFloor(problem, { units: UNITS, tried: [before], isKept: true, held: before.ready }).plan;
const orderOf = ({ machines, ready }: FloorPlan): string =>
  JSON.stringify(machines.map((own) => [...own].sort((a, b) => ready[a]! - ready[b]! || a - b)));
/** One operation without parts is to begin a day later. */
const pinned = (problem: FloorProblem, before: FloorPlan, i: number): FloorProblem => ({
  ...problem,
  operations: problem.operations.with(i, { ...problem.operations[i]!, release: before.ready[i]! + DAY }),
});

describe("a plan that is kept", () => {
  it("stays as it is where nothing has changed and no search betters it, with people and without", () => {
    for (let seed = 1; seed <= 100; seed++)
      for (const { problem } of [drawnFloor(seed, 14), drawnCrew(seed, 14)]) {
        const before = planFloor(problem, { units: 10 * UNITS }).plan;
        const after = planFloor(problem, { units: 0, tried: [before], isKept: true, held: before.ready }).plan;
        expect(after.ready, `seed ${seed}`).toEqual(before.ready);
      }
  });

  it("can be worked to, is no later than in its old order, and moves less than a plan from the beginning", () => {
    let [less, more] = [0, 0];
    for (let seed = 1; seed <= 100; seed++) {
      const drawn = drawnFloor(seed, 14);
      const before = planFloor(drawn.problem, { units: UNITS }).plan;
      const problem = pinned(drawn.problem, before, before.machines.find((own) => own.length > 0)![0]!);
      const after = kept(problem, before);
      expect(faultsOf({ ...drawn, problem }, after), `seed ${seed}`).toEqual([]);
      const orders = new Orders(new Floor(problem));
      orders.follow(before.machines);
      expect(orders.evaluate()).toBe(true);
      const followed = orders.worth;
      const isNoWorse =
        after.worth.late < followed.late || (after.worth.late === followed.late && after.worth.setUp <= followed.setUp);
      expect(isNoWorse, `seed ${seed}`).toBe(true);
      const fresh = planFloor(problem, { units: UNITS, tried: [before] }).plan;
      const moved = (plan: FloorPlan) => plan.ready.filter((at, i) => at !== before.ready[i]).length;
      less += moved(after);
      more += moved(fresh);
      if (after.worth.late === fresh.worth.late && orderOf(fresh) === orderOf(before))
        expect(orderOf(after), `seed ${seed}`).toBe(orderOf(before));
    }
    expect(less).toBeLessThan(more);
  });

  it("with people nobody stands at two stations", () => {
    for (let seed = 1; seed <= 100; seed++) {
      const drawn = drawnCrew(seed, 10);
      const before = planFloor(drawn.problem, { units: UNITS }).plan;
      const i = before.machines.find((own) => own.length > 0)![0]!;
      const staffed = { ...drawn, problem: { ...pinned(drawn.problem, before, i), crew: drawn.problem.crew } };
      const after = kept(staffed.problem, before);
      expect([...faultsOf(staffed, after), ...crewFaultsOf(staffed, after)], `seed ${seed}`).toEqual([]);
    }
  });
});
