/**
 * A bound for every kind of cutting: pieces sawn into bars of no height, bars laid side by side over the sheet's length.
 * What any plan places, bars can place, so that the linear program over bars costs no more (bar relaxation: Scheithauer,
 * Introduction to Cutting and Packing Optimization, 2018; memory, unverified). At least the area bound, mostly more.
 */
import { firstOf, itemAt } from "../../units/certain.ts";
import type { Budget } from "./budget.ts";
import { generateColumns } from "./column-generation.ts";
import { Knapsack } from "./knapsack.ts";
import { LinearProgram } from "./linear-program.ts";
import type { Problem } from "./problem.ts";

/** Longest side in cells of the knapsack: chosen; sizes that are not whole cells count less, so that the bound holds. */
const CELLS = 4000;
/** What a missing piece costs, in dearest sheets: chosen. */
const PENALTY = 20;

/** Bars along x where `along` is 0, along y where it is 1. `enough` as in column-generation.ts. */
export function barBound(
  problem: Problem,
  along: 0 | 1,
  budget: Budget,
  enough: (bound: number, cost: number) => boolean,
): number {
  const { items, sheets } = problem;
  const limited = sheets.flatMap(({ available }, s) => (available < Infinity ? [s] : []));
  const right = Float64Array.from([
    ...items.map(({ quantity }) => quantity),
    ...limited.map((s) => itemAt(sheets, s).available),
  ]);
  const program = new LinearProgram(right, items.length, PENALTY * Math.max(...sheets.map(({ cost }) => cost)));
  const lengths = sheets.map(({ w, h }) => (along === 0 ? w : h));
  const heights = sheets.map(({ w, h }) => (along === 0 ? h : w));
  const cell = cellOf([...lengths, ...items.flatMap(({ w, h }) => [w, h])]);
  const groups = sameTurns(problem);
  const price = (prices: Float64Array) => {
    const found: { rows: number[]; gives: number[]; cost: number }[] = [];
    let ratio = 0;
    for (const group of groups) {
      const knapsack = new Knapsack();
      knapsack.reset(Math.max(...group.map((s) => Math.floor(itemAt(lengths, s) / cell))));
      items.forEach(({ w, h, quantity }, i) => {
        const [own, across] = along === 0 ? [w, h] : [h, w];
        if (itemAt(problem.plain, firstOf(group))[i])
          knapsack.add(2 * i, Math.floor(own / cell), itemAt(prices, i) / across, quantity);
        if (itemAt(problem.turned, firstOf(group))[i] && w !== h) {
          knapsack.add(2 * i + 1, Math.floor(across / cell), itemAt(prices, i) / own, quantity);
        }
      });
      budget.spend(knapsack.work);
      for (const s of group) {
        if (itemAt(sheets, s).available < 1) continue;
        const row = limited.indexOf(s);
        const scarce = row < 0 ? 0 : Math.max(0, -itemAt(prices, items.length + row));
        const cost = itemAt(sheets, s).cost + scarce;
        const cells = Math.floor(itemAt(lengths, s) / cell);
        const worth = knapsack.best(cells) * itemAt(heights, s);
        if (!(worth > cost)) {
          if (worth > 0) ratio = Math.max(ratio, worth / cost);
          continue;
        }
        ratio = Math.max(ratio, worth / cost);
        const gives = new Map<number, number>();
        knapsack.read(knapsack.mark(), cells, (option, copies) => {
          const { w, h } = itemAt(items, option >> 1);
          const across = (along === 0) === (option % 2 === 0) ? h : w;
          gives.set(option >> 1, (gives.get(option >> 1) ?? 0) + (copies * itemAt(heights, s)) / across);
        });
        const supply = row < 0 ? [] : [items.length + row];
        found.push({
          rows: [...gives.keys(), ...supply],
          gives: [...gives.values(), ...supply.map(() => 1)],
          cost: itemAt(sheets, s).cost,
        });
      }
    }
    return {
      ratio,
      add: () => {
        for (const { rows, gives, cost } of found) program.add(rows, gives, cost);
        return found.length;
      },
    };
  };
  return generateColumns(program, right, items.length, price, budget, Infinity, enough).bound;
}

/** Sheets on which every piece may lie the same ways. */
function sameTurns({ sheets, plain, turned }: Problem): number[][] {
  const groups = new Map<string, number[]>();
  sheets.forEach((_, s) => {
    const key = `${itemAt(plain, s).join("")}/${itemAt(turned, s).join("")}`;
    groups.set(key, [...(groups.get(key) ?? []), s]);
  });
  return [...groups.values()];
}

function cellOf(lengths: readonly number[]): number {
  const divide = (a: number, b: number): number => (b === 0 ? a : divide(b, a % b));
  const common = Math.max(1, lengths.reduce(divide, 0));
  return common * Math.max(1, Math.ceil(Math.max(...lengths) / common / CELLS));
}
