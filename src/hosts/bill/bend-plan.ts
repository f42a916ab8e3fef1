/** How a line is bent: order, stops and the pictures of its hits, on the workbook's outlines or else on plain tools. */
import { estimateAirBend } from "../../calc/bend/air-estimate.ts";
import { type BendOrder, bendOrder } from "../../calc/bend/order/order.ts";
import { type BentPart, checkPart } from "../../calc/bend/order/part.ts";
import { checkPress, type Press } from "../../calc/bend/order/press.ts";
import { bentPart } from "../../cells/bill/blank.ts";
import type { LineCheck } from "../../cells/bill/check.ts";
import type { BillLine } from "../../cells/tables/bill.ts";
import { type Degrees, degrees } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/system.ts";
import { drawEndOfBend } from "../drawing/end-of-bend.ts";
import { plainPress } from "../drawing/plain-press.ts";

export interface BendPlan {
  readonly part: BentPart;
  readonly press: Press;
  /** Tools drawn from their tables only: an order found with them is a proposal. */
  readonly plain: boolean;
  readonly order: BendOrder;
  /** Of the largest bend; undefined where nothing is known. */
  readonly springback: Degrees | undefined;
  pictures(name: string, system: UnitSystem): { readonly name: string; readonly svg: string }[];
}

/** Undefined for a flat part. Throws Refusal on a part no sheet can be. */
export function planBends(
  line: BillLine,
  { chosen, blank }: LineCheck,
  drawn: Press | undefined,
): BendPlan | undefined {
  if (!chosen || blank.radius === undefined || line.main.angles.length === 0) return undefined;
  const { die, punch } = chosen.setup;
  const part = bentPart(line, line.main, blank.radius);
  // The outlines of the workbook are those of one die; over another they would be wrong.
  const isDrawn = drawn !== undefined && Math.abs(drawn.dieOpening - die.opening) < SAME_OPENING_MM;
  const press = isDrawn ? drawn : plainPress(die, punch);
  checkPart(part); // now, so that nothing refuses while it is being drawn
  checkPress(press);
  const overbends = part.bends.map(
    ({ angle }) =>
      estimateAirBend(line.material, line.thickness, degrees(Math.abs(angle)), die, punch?.nose).springback,
  );
  const springback = overbends.map((angle) => angle ?? degrees(0));
  let known: BendOrder | undefined;
  return {
    part,
    press,
    plain: !isDrawn,
    get order() {
      known ??= bendOrder(part, springback, press);
      return known;
    },
    springback: overbends.every((angle) => angle === undefined) ? undefined : degrees(Math.max(...springback)),
    pictures(name, system) {
      const { order } = this;
      const hits = order.feasible ? order.hits : order.finished;
      const last = hits.at(-1) ?? { bend: 1, gaugedEnd: "first" as const };
      const finished = hits.slice(0, -1).map(({ bend }) => bend);
      const pose = {
        part,
        press,
        finished,
        hit: last,
        springback: springback[last.bend - 1]!,
        name,
        plain: this.plain,
      };
      return [{ name: `End of bend ${last.bend}`, svg: drawEndOfBend(pose, system) }];
    },
  };
}

const SAME_OPENING_MM = 0.01; // far below any step between two dies
