/** The same questions at 100 lines, put to an independent solver (HiGHS, as the `highs` package). */
import loadHighs from "highs";
import { describe, expect, it } from "vitest";
import { bestRoute } from "../../../src/calc/route/best-route.ts";
import { MACHINES, type Machine, type RouteLine } from "../../../src/calc/route/problem.ts";
import { type Question, randomQuestion, shopWith } from "./random-route.ts";

const COUNT = 100;
const variable = (machine: Machine, i: number) => `${machine[0]}${i}`;

/** Continuous work from second 0, so that a finish is queue plus load. */
function model({ lines, queues }: Question, goal: "finish" | "cost", due?: number): string {
  const can = (machine: Machine): [RouteLine, number][] =>
    lines.map((line, i): [RouteLine, number] => [line, i]).filter(([line]) => line[machine]);
  const sum = (terms: string[]) => terms.join(" + ") || "0 T";
  const load = (machine: Machine) => can(machine).map(([line, i]) => `${line[machine]!.time} ${variable(machine, i)}`);
  const bending = lines.reduce((total, { brake }) => total + brake, 0);
  const openers = MACHINES.flatMap((machine) =>
    can(machine)
      .filter(([line]) => line.brake > 0)
      .map(([line, i]) => ({
        name: `o${variable(machine, i)}`,
        chosen: variable(machine, i),
        at: queues[machine] + Math.max(1, line[machine]!.time),
      })),
  );
  const costs = MACHINES.flatMap((machine) =>
    can(machine).map(([line, i]) => `${line[machine]!.cost} ${variable(machine, i)}`),
  );
  const binaries = [...MACHINES.flatMap((machine) => can(machine).map(([, i]) => variable(machine, i)))];
  return [
    "Minimize",
    goal === "finish" ? " obj: T" : ` obj: ${sum(costs)}`,
    "Subject To",
    ...MACHINES.map((machine) => ` ${machine}: T - ${load(machine).join(" - ")} >= ${queues[machine]}`),
    ` brake: T >= ${queues.brake + bending}`,
    ` opened: ${sum(openers.map(({ name }) => name))} = 1`,
    ` first: T - ${openers.map(({ name, at }) => `${at} ${name}`).join(" - ")} >= ${bending}`,
    ...openers.map(({ name, chosen }) => ` c${name}: ${chosen} - ${name} >= 0`),
    ...lines.map((line, i) => ` one${i}: ${sum(MACHINES.filter((m) => line[m]).map((m) => variable(m, i)))} = 1`),
    "Bounds",
    due === undefined ? " T >= 0" : ` 0 <= T <= ${due}`,
    "Binary",
    ` ${[...binaries, ...openers.map(({ name }) => name)].join(" ")}`,
    "End",
  ].join("\n");
}

describe("the route against HiGHS at 100 lines", async () => {
  const highs = await loadHighs();
  const solve = (text: string) => {
    const answer = highs.solve(text, { mip_rel_gap: 0, mip_abs_gap: 0.5 });
    expect(answer.Status).toBe("Optimal");
    return Math.round(answer.ObjectiveValue);
  };

  it.each([3, 5, 8, 21])(
    "seed %i",
    (seed) => {
      const { lines, queues } = randomQuestion(seed, COUNT);
      const question = { lines, queues, shop: shopWith(queues, 1, 1) };
      const first = bestRoute(lines, question.shop);
      expect(first).toMatchObject({ proved: true, finishBound: first.finish });
      expect(first.finish).toBe(solve(model(question, "finish")));
      for (const later of [0, 1000, 20_000]) {
        const due = first.finish + later;
        const cheapest = bestRoute(lines, question.shop, due);
        expect(cheapest.proved).toBe(true);
        expect(cheapest.cost).toBe(solve(model(question, "cost", due)));
      }
    },
    120_000,
  );
});
