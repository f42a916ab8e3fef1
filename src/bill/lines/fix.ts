/** The least change that betters a line, tried by planning the line again with it. */

import { leastFlange } from "../../calc/bend/check/flange.ts";
import { STATUSES, type Status, statusOf } from "../../calc/finding.ts";
import { type Millimetres, mm } from "../../units/quantity.ts";
import { Refusal } from "../../units/refusal.ts";
import { refusalOr, remember } from "../../units/remember.ts";
import type { BillLine } from "../nouns/line.ts";
import type { LinePlan, LineShop } from "./plan-line.ts";
import { planAlone } from "./plan-lines.ts";
import { bendLines } from "./tools.ts";

/** What is changed in the bill, by its columns; and one thing that a bill has no column for. */
export type Change =
  | { readonly kind: "tools"; readonly die?: string; readonly punch?: string; readonly brake?: string }
  | { readonly kind: "grain" }
  | { readonly kind: "hole after" }
  | { readonly kind: "waterjet" }
  | { readonly kind: "trim after"; readonly flange: Millimetres };

export interface Fix {
  readonly change: Change;
  /** The line's status with it. */
  readonly reaches: Status;
}

/** undefined: none of the shop's tools can do it, and no change of the part that is tried here. */
export const fixOf = remember(8192, (plan: LinePlan, shop: LineShop): Fix | undefined => {
  const now = statusWith(plan.line, shop);
  if (now === "clear") return undefined;
  for (const [change, line] of changes(plan, shop)) {
    const reaches = statusWith(line, shop);
    if (STATUSES.indexOf(reaches) < STATUSES.indexOf(now)) return { change, reaches };
  }
  return undefined;
});

/** Of the line alone on the shop's tables, the findings of the machine that would cut it among them. */
export function statusWith(line: BillLine, shop: LineShop): Status {
  const planned = planAlone(line, shop);
  if (!("blank" in planned)) return "stop";
  return statusOf([...planned.findings, ...(planned.cutting.shear ? planned.cutting.onShear : [])]);
}

/** Nearest first: one tool, two, another brake, another machine to cut it, then the part itself. */
function* changes({ line, tools }: LinePlan, shop: LineShop): Generator<readonly [Change, BillLine]> {
  if (tools) {
    const free = { ...line, die: undefined, punch: undefined, brake: undefined };
    // Which tools would be best is known by leaving the choice open; then as few as will do are changed.
    const best = planAlone(free, shop);
    const set = "blank" in best ? best.tools : undefined;
    if (set) {
      const names = { die: tools.die.name, punch: tools.punch?.name, brake: tools.brake.name };
      const kept = { ...line, ...names };
      for (const keys of [["die"], ["punch"], ["die", "punch"], ["brake"], ["brake", "die", "punch"]] as const) {
        const pinned = { ...kept, ...Object.fromEntries(keys.map((key) => [key, undefined])) };
        const found = planAlone(pinned, shop);
        if (!("blank" in found) || !found.tools) continue;
        const { die, punch, brake } = found.tools;
        const changed = {
          ...(die.name === names.die ? {} : { die: die.name }),
          ...(punch === undefined || punch.name === names.punch ? {} : { punch: punch.name }),
          ...(brake.name === names.brake ? {} : { brake: brake.name }),
        };
        if (Object.keys(changed).length === 0) continue;
        yield [
          { kind: "tools", ...changed },
          { ...line, ...changed },
        ];
      }
    }
    if (line.grain !== "across") yield [{ kind: "grain" }, { ...line, grain: "across" }];
    if (line.holeDistance !== undefined) yield [{ kind: "hole after" }, { ...line, holeDistance: undefined }];
    const flange = refusalOr(() => leastOf(line, tools.die, shop));
    if (!(flange instanceof Refusal)) yield [{ kind: "trim after", flange }, lengthened(line, flange)];
  }
  if (line.pin === undefined && shop.waterjets.length > 0) yield [{ kind: "waterjet" }, { ...line, pin: "waterjet" }];
}

const leastOf = (line: BillLine, die: { opening: Millimetres; shoulder?: Millimetres | undefined }, shop: LineShop) =>
  mm(Math.max(...bendLines(line).map((bend) => leastFlange(bend, die.opening, die.shoulder, shop.system))));

const lengthened = (line: BillLine, least: Millimetres): BillLine => {
  const longer = (flanges: readonly Millimetres[]) => flanges.map((flange) => mm(Math.max(flange, least)));
  return {
    ...line,
    main: { ...line.main, flanges: line.main.angles.length > 0 ? longer(line.main.flanges) : line.main.flanges },
    cross: line.cross && { ...line.cross, flanges: longer(line.cross.flanges) },
  };
};
