/** What goes on the truck in the order it is loaded, by the area where it is wanted. */

import { type LoadedLine, weightOf } from "../bill/load/plan-load.ts";
import { type BillPlan, isQuoted } from "../bill/plan.ts";
import { firstOf } from "../units/certain.ts";
import { Refusal } from "../units/refusal.ts";
import { refusalOr } from "../units/remember.ts";
import { show, showNumber } from "../units/show.ts";
import { fromInternal, type UnitSystem, unitName } from "../units/system.ts";
import { leftOut } from "./left-out.ts";
import { partSays } from "./line-words.ts";
import { BOX, heading, paragraph, table, text } from "./page.ts";

export function loadIn(plan: BillPlan): string {
  const { system } = plan.shop;
  const title = heading("Load-in list");
  const loaded = refusalOr(() => plan.load);
  if (loaded instanceof Refusal) return `${title}${paragraph(`No order of loading: ${loaded.message}`)}`;
  const weight = show(weightOf(loaded), "mass", system, 4);
  const left = plan.lines.filter((line) => !isQuoted(line));
  return [
    title,
    `<p>All together ${text(weight)}, weights of the blanks. Loaded in this order: what is needed first goes on last.</p>`,
    ...byArea(loaded).map((rows) => area(rows, system)),
    left.length > 0 ? `<h2>Not loaded</h2>${leftOut(left, system)}` : "",
  ].join("\n");
}

interface Row {
  readonly order: number;
  readonly loaded: LoadedLine;
}

/** Neighbors of one area; an area never comes twice, since the plan keeps its lines together. */
function byArea(loaded: readonly LoadedLine[]): Row[][] {
  const found: Row[][] = [];
  loaded.forEach((line, i) => {
    const row = { order: i + 1, loaded: line };
    const last = found.at(-1);
    if (last && firstOf(last).loaded.plan.line.area === line.plan.line.area) last.push(row);
    else found.push([row]);
  });
  return found;
}

function area(rows: readonly Row[], system: UnitSystem): string {
  const mass = (value: number, decimals: number) => fromInternal(value, "mass", system).toFixed(decimals);
  const unit = unitName("mass", system);
  const { area: name } = firstOf(rows).loaded.plan.line;
  const together = show(weightOf(rows.map(({ loaded }) => loaded)), "mass", system, 4);
  return `<h2>${text(name === "" ? "No area stated" : name)}: ${text(together)}</h2>${table(
    [
      { title: "Order", number: true },
      { title: "Part", short: true },
      { title: "Description" },
      { title: "Pieces", number: true },
      { title: `Each, ${unit}`, number: true },
      { title: "Lift", short: true },
      { title: "Stacks", number: true },
      { title: `Full stack, ${unit}`, number: true },
      { title: "Lift", short: true },
      { title: "Loaded" },
      { title: "Arrived" },
    ],
    rows.map(({ order, loaded: { plan, stacks, stackWeight, liftPiece, liftStack } }) => [
      String(order),
      partSays({ ...plan.line, plan }),
      plan.line.description,
      showNumber(plan.line.quantity, 7),
      mass(plan.blank.weight, 2),
      liftPiece,
      showNumber(stacks, 7),
      mass(stackWeight, 1),
      liftStack,
      { markup: BOX },
      { markup: BOX },
    ]),
    "tight load",
  )}`;
}
