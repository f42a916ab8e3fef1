/**
 * The one plan of a bill. Lines, route, cut, times, dates and money are worked out here, each stage from those before it
 * and remembered by what it is made from; whatever shows a bill (cell, sheet, paper, screen, command) shows this.
 */
import { withStrips } from "../calc/bend/strip-correction.ts";
import type { LinePrice } from "../calc/cost/line-price.ts";
import type { Finding } from "../calc/finding.ts";
import { entryOf, itemAt } from "../units/certain.ts";
import { Refusal } from "../units/refusal.ts";
import { refusalOr, remember } from "../units/remember.ts";
import type { Working } from "../units/working.ts";
import { type CutGroup, type CutLine, planCutting, scarce } from "./cut/plan-cutting.ts";
import { type DatesPlan, planDates } from "./dates/plan-dates.ts";
import { answerOf, canBeQuoted, isQuoted, type LineAnswer, type QuotedLine, shortFinding } from "./line-answer.ts";
import { type Fix, fixOf } from "./lines/fix.ts";
import { isPlanned, type LinePlan, type LineShop } from "./lines/plan-line.ts";
import { planLines, planLinesAnew } from "./lines/plan-lines.ts";
import { type LoadedLine, planLoad } from "./load/plan-load.ts";
import { type MoneyPlan, planMoney } from "./money/plan-money.ts";
import { type BillLine, type BillRow, isLine } from "./nouns/line.ts";
import { hasTable, type Shop, TABLES, type TableName } from "./nouns/shop.ts";
import { openPlates, rowsOfLine } from "./open-plates.ts";
import { planNumber } from "./plan-number.ts";
import { planRoute, planRouteAnew, type RoutePlan } from "./route/plan-route.ts";
import { bendingWorks } from "./time/bending-work.ts";
import { benchWork, cuttingWork, outsideWork, shearShares } from "./time/cutting-work.ts";
import type { OutsideWork, StationWork } from "./time/station-work.ts";
import { type BillTotals, totalsOf } from "./totals.ts";

export { isQuoted, type LineAnswer, type QuotedLine };

/** What a quoted line has to do, in the order it is done. */
export interface LineWork {
  readonly works: readonly StationWork[];
  readonly outside: readonly OutsideWork[];
}

export class BillPlan {
  /** Each line's sheet as the shop's own test strips found it. */
  readonly rows: readonly BillRow[];

  constructor(
    readonly shop: Shop,
    rows: readonly BillRow[],
    private readonly work?: Working,
  ) {
    this.rows = measured(rows, shop.corrections);
  }

  /** The bill's lines in its own order. */
  get lines(): readonly LineAnswer[] {
    return this.#settled.lines;
  }
  get quoted(): readonly QuotedLine[] {
    return this.lines.filter(isQuoted);
  }
  /** Sheets by material, thickness and machine, of quoted lines alone. */
  get groups(): readonly CutGroup[] {
    if (!hasTable(this.shop, "stock")) return [];
    return this.#once("groups", () => planCutting(this.#settled.cut, this.shop));
  }
  get route(): RoutePlan {
    return this.#settled.route;
  }
  /** The lines the route was chosen for, in its order. */
  get routed(): readonly LinePlan[] {
    return this.#settled.cut.map(({ plan }) => plan);
  }
  get areSetsProved(): boolean {
    return this.#lines.setsProved;
  }

  /** The least change that betters a line; undefined where it is clear, or nothing that was tried betters it. */
  fix(line: LineAnswer): Fix | undefined {
    const at = this.lines.indexOf(line);
    const row = this.rows[at];
    if (line.status === "clear" || !line.plan || !row || !isLine(row)) return undefined;
    const { plan, status } = line;
    // In a longer bill nobody waits for a plan per fix.
    const isShort = this.rows.length <= MOST_PLANNED_ANEW;
    const inBill = (changed: BillLine) => itemAt(this.changed(at, changed).lines, at).status;
    return this.#once(`fix ${at}`, () => fixOf(row, plan, status, this.#lineShop, isShort ? inBill : undefined));
  }

  /** The whole bill with one line, by its index, as another. */
  changed(at: number, line: BillLine): BillPlan {
    return new BillPlan(this.shop, this.rows.with(at, line));
  }

  /** Throws the Refusal of a figure that the tables lack. */
  workOf(line: QuotedLine): LineWork {
    const works = entryOf(this.#works, line.plan);
    if (works instanceof Refusal) throw works;
    return works;
  }

  /** Throws a Refusal where there is no calendar, no start or no time to leave by. */
  get dates(): DatesPlan {
    const { start, due } = this.shop.job;
    if (!hasTable(this.shop, "calendar")) throw new Refusal("#VALUE!", "calendar must be given; got nothing");
    if (start === undefined)
      throw new Refusal("#VALUE!", 'job must be a table with an entry at "Work can begin"; got none');
    if (due === undefined)
      throw new Refusal("#VALUE!", 'job must be a table with an entry at "Must leave by"; got none');
    return this.#once("dates", () =>
      planDates(
        this.quoted.flatMap((line) => {
          const done = refusalOr(() => this.workOf(line));
          if (done instanceof Refusal) return [];
          const vendorDays = done.outside.map(({ station }) => station.vendorDays ?? 0);
          return [{ plan: line.plan, works: done.works, vendorDays: Math.max(0, ...vendorDays) }];
        }),
        start,
        due,
        this.shop,
        this.work,
      ),
    );
  }

  /** Throws the Refusal of a table or a rate that every price needs. */
  get money(): MoneyPlan {
    for (const name of ["stations", "rates", "stock"] as const)
      if (!hasTable(this.shop, name)) throw new Refusal("#VALUE!", `${name} must be given; got nothing`);
    return this.#once("money", () =>
      planMoney(
        this.quoted.flatMap((line) => {
          const done = refusalOr(() => this.workOf(line));
          return done instanceof Refusal ? [] : [{ plan: line.plan, ...done }];
        }),
        this.groups,
        this.shop,
        this.work,
      ),
    );
  }

  /** The price of a quoted line. Throws the Refusal of what it lacks. */
  priceOf(line: QuotedLine): LinePrice {
    this.workOf(line);
    const found = entryOf(this.money.lines, line.plan);
    if (found instanceof Refusal) throw found;
    return found;
  }

  get totals(): BillTotals {
    return this.#once("totals", () =>
      totalsOf(this.lines, this.groups, (line) => !(refusalOr(() => this.priceOf(line)) instanceof Refusal)),
    );
  }

  /** Quoted lines as they are loaded, the first one first. */
  get load(): readonly LoadedLine[] {
    return this.#once("load", () =>
      planLoad(
        this.quoted.map(({ plan }) => plan),
        this.shop.rates,
        this.shop.job.areas,
      ),
    );
  }

  /** Tables that were not given: what they decide was not looked at. */
  get notChecked(): readonly TableName[] {
    return TABLES.filter((name) => !hasTable(this.shop, name) && !OPTIONAL.includes(name));
  }

  /** Machines and tools in use whose rows nobody has confirmed from the plate. */
  get notFromPlate(): readonly string[] {
    return openPlates(this.quoted.flatMap(rowsOfLine));
  }

  /** A name for this very plan: the same inputs have the same one, on every machine and in whatever order they stand. */
  get number(): string {
    return this.#once("number", () => planNumber(this.shop, this.rows));
  }

  readonly #kept = new Map<string, unknown>();
  #once<T>(name: string, answer: () => T): T {
    if (!this.#kept.has(name)) this.#kept.set(name, refusalOr(answer));
    const found = this.#kept.get(name) as T | Refusal;
    if (found instanceof Refusal) throw found;
    return found;
  }

  get #lineShop(): LineShop {
    return this.#once("line shop", () => {
      const { brakes, dies, punches, drawn, shears, waterjets, stations, rates, stock, system, given } = this.shop;
      return { brakes, dies, punches, drawn, shears, waterjets, stations, rates, stock, system, given };
    });
  }

  get #lines() {
    return this.#once("lines", () =>
      this.work ? planLinesAnew(this.rows, this.#lineShop, this.work) : planLines(this.rows, this.#lineShop),
    );
  }

  get #works(): ReadonlyMap<LinePlan, LineWork | Refusal> {
    return this.#once("works", () => {
      const plans = this.quoted.map(({ plan }) => plan);
      const bending = refusalOr(() => bendingWorks(plans, this.shop, this.work));
      const sheared = this.quoted.filter(({ cutter }) => cutter === "shear").map(({ plan }) => plan);
      const shares = refusalOr(() => shearShares(sheared, this.shop));
      return new Map(
        this.quoted.map(({ plan, cutter }) => [
          plan,
          refusalOr((): LineWork => {
            if (bending instanceof Refusal) throw bending;
            if (cutter === "shear" && shares instanceof Refusal) throw shares;
            const share = shares instanceof Refusal ? 0 : (shares.get(plan) ?? 0);
            const cut = cuttingWork(plan, cutter, share, this.shop, this.work);
            const cutting = [cut, ...benchWork(plan, cutter, this.shop)];
            const bent = bending.get(plan);
            return { works: bent ? [...cutting, bent] : cutting, outside: outsideWork(plan, this.shop) };
          }),
        ]),
      );
    });
  }

  /**
   * Route and counted sheets take turns: a line whose sheets run out is not quoted, and the others are planned without
   * it.
   */
  get #settled(): Settled {
    return this.#once("settled", () => {
      const short = new Map<LinePlan, Finding>();
      for (;;) {
        const routed = this.#lines.lines.filter(isPlanned).filter((plan) => canBeQuoted(plan) && !short.has(plan));
        const route = this.work ? planRouteAnew(routed, this.shop, this.work) : planRoute(routed, this.#routeShop);
        const cut = routed.map((plan, i): CutLine => ({ plan, cutter: itemAt(route.cutters, i) }));
        const left = planCutting(scarce(cut, this.shop), this.shop).flatMap((group) => [...group.short]);
        for (const [plan, { count, reason }] of left) short.set(plan, shortFinding(plan, count, reason));
        if (left.length > 0) continue;
        const cutterOf = new Map(cut.map(({ plan, cutter }) => [plan, cutter]));
        const lines = this.#lines.lines.map((plan) => answerOf(plan, cutterOf, short));
        return { lines, route, cut };
      }
    });
  }

  get #routeShop() {
    const { stations, rates, calendar, job, finished, given } = this.shop;
    return { stations, rates, calendar, job, finished, given };
  }
}

/** Lines of an ordinary bill (chosen): up to here the whole bill is planned again to prove a fix. */
const MOST_PLANNED_ANEW = 100;

interface Settled {
  readonly lines: readonly LineAnswer[];
  readonly route: RoutePlan;
  /** The quoted lines, each with its machine. */
  readonly cut: readonly CutLine[];
}

/** Tables that a plan can do without. */
const OPTIONAL: readonly TableName[] = ["outlines", "press", "job", "corrections", "finished"];

const measured = (rows: readonly BillRow[], corrections: Shop["corrections"]): readonly BillRow[] =>
  corrections.length === 0
    ? rows
    : rows.map((row) => (isLine(row) ? { ...row, material: withStrips(row.material, corrections) } : row));

/** Two calls about the same bill in the same shop share the plan; it fills as its stages are asked for. */
export const planBill = remember(6, (shop: Shop, rows: readonly BillRow[]): BillPlan => new BillPlan(shop, rows));

/** With the steps of its working recorded; nothing of it comes from memory. */
export const planBillAnew = (shop: Shop, rows: readonly BillRow[], work: Working): BillPlan =>
  new BillPlan(shop, rows, work);
