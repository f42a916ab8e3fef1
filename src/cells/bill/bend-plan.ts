/** How the strips of a line are bent: order and stops, on the workbook's tool outlines or else on plain tools. */
import { estimateAirBend } from "../../calc/bend/air-estimate.ts";
import { type BendOrder, bendOrder } from "../../calc/bend/order/order.ts";
import type { BentPart } from "../../calc/bend/order/part.ts";
import { plainPress } from "../../calc/bend/order/plain-press.ts";
import type { Press } from "../../calc/bend/order/press.ts";
import { seat } from "../../calc/bend/order/seat.ts";
import type { Chosen } from "../../calc/bend/tools/choose-tools.ts";
import { type Degrees, degrees, type Millimetres, mm } from "../../units/quantity.ts";
import type { BillLine, Strip } from "../tables/bill.ts";
import { bentPart } from "./blank.ts";

const SAME_OPENING_MM = 0.01; // chosen: far below any step between two dies

export class StripPlan {
  readonly part: BentPart;
  readonly press: Press;
  /** Tools known from their tables only: an order found with them is a proposal. */
  readonly plain: boolean;
  /** Overbend of each bend; undefined where nothing is known of the material. */
  readonly springback: readonly (Degrees | undefined)[];
  /** Of the punch tip below the die's top at the end of each bend, under load: solved where it can be, else geometry. */
  readonly depths: readonly Millimetres[];
  #order: BendOrder | undefined;

  constructor(line: BillLine, strip: Strip, { setup: { die, punch } }: Chosen, radius: Millimetres, drawn?: Press) {
    this.part = bentPart(line, strip, radius);
    // The outlines of the workbook are those of one die; over another they would be wrong.
    const fits = drawn !== undefined && Math.abs(drawn.dieOpening - die.opening) < SAME_OPENING_MM;
    this.press = fits ? drawn : plainPress(die, punch);
    this.plain = !fits;
    const solved = strip.angles.map((angle) =>
      estimateAirBend(line.material, line.thickness, degrees(Math.abs(angle)), die, punch?.nose),
    );
    this.springback = solved.map(({ springback }) => springback);
    this.depths = solved.map(({ stroke }, i) => {
      if (stroke !== undefined) return mm(stroke - line.thickness);
      const { tip, loaded } = seat(this.part, i + 1, this.overbend(i + 1), this.press);
      return mm(-tip(loaded));
    });
  }

  overbend(bend: number): Degrees {
    return this.springback[bend - 1] ?? degrees(0);
  }

  /** Searched when it is asked for. Throws a Refusal on a part no sheet can be. */
  get order(): BendOrder {
    const overbends = this.part.bends.map((_, i) => this.overbend(i + 1));
    this.#order ??= rememberedOrder(this.part, overbends, this.press);
    return this.#order;
  }
}

/** After an edit of one line all the others ask again: the same strip on the same tools has the same order. */
function rememberedOrder(part: BentPart, overbends: readonly Degrees[], press: Press): BendOrder {
  const key = JSON.stringify([part, overbends]);
  let known = ordersKnown.get(press);
  if (!known || known.size >= MOST_REMEMBERED) {
    known = new Map();
    ordersKnown.set(press, known);
  }
  const order = known.get(key) ?? bendOrder(part, overbends, press);
  known.set(key, order);
  return order;
}

const ordersKnown = new WeakMap<Press, Map<string, BendOrder>>();
const MOST_REMEMBERED = 4096; // chosen: a long bill; some megabytes a set of tools

/** One plan a direction that has bends: none for a flat part, two for a tray. */
export const planBends = (
  line: BillLine,
  chosen: Chosen | undefined,
  radius: Millimetres | undefined,
  drawn?: Press,
): StripPlan[] =>
  chosen === undefined || radius === undefined
    ? []
    : [line.main, ...(line.cross ? [line.cross] : [])]
        .filter(({ angles }) => angles.length > 0)
        .map((strip) => new StripPlan(line, strip, chosen, radius, drawn));
