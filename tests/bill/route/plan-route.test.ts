/** Which machine cuts which line. The search itself is tested in calc/route. */
import { describe, expect, it } from "vitest";
import type { CalendarRow } from "../../../src/bill/nouns/calendar.ts";
import type { Station } from "../../../src/bill/nouns/station.ts";
import { routeShop } from "../../../src/bill/route/clock.ts";
import { COST_UNITS, costOf, planRouteAnew } from "../../../src/bill/route/plan-route.ts";
import { timeOf } from "../../../src/bill/time/station-work.ts";
import { type Instant, instant } from "../../../src/calc/schedule/calendar.ts";
import type { Working } from "../../../src/units/working.ts";
import type { Line } from "../../cells/example/tables.ts";
import { HOUR, job, MONDAY, rates, SHOP, withCell, without } from "../../cells/example/tables.ts";
import { bracket, planned, quotedOf, shopOf } from "../shop.ts";

const LINES: Line[] = [
  bracket(),
  bracket({ Part: "S", Material: "304" }),
  bracket({ Part: "P", Route: "waterjet" }),
  bracket({ Part: "N", Notches: 2, "Notch path": 1 }),
  bracket({ Part: "T", Material: "A1008 CS", Thickness: "16 ga" }),
  bracket({ Part: "F", Flanges: "30", "Bend angles": null, Width: 20, Quantity: 90 }),
];
const cutters = (lines: readonly Line[], shop = shopOf()) =>
  Object.fromEntries(planned(lines, shop).lines.map(({ part, cutter }) => [part, cutter]));

describe("the route", () => {
  it("keeps pins and needs, whatever is cheaper", () => {
    expect(cutters(LINES)).toMatchObject({ S: "waterjet", P: "waterjet", N: "waterjet" });
  });
  it("the order of the bill changes nothing", () => {
    expect(cutters([...LINES].reverse())).toEqual(cutters(LINES));
    const { best } = planned(LINES).route;
    const turned = planned([...LINES].reverse()).route.best!;
    expect([turned.cost, turned.finish, turned.proved]).toEqual([best!.cost, best!.finish, best!.proved]);
    expect(best!.proved).toBe(true);
  });
  it("puts every free line on its cheaper machine where time does not matter", () => {
    const plan = planned(LINES, shopOf({ job: job({ Due: MONDAY + 300 }) }));
    plan.route.cuts!.forEach(({ shear, waterjet }, i) => {
      if (shear && waterjet) expect(plan.route.cutters[i]).toBe(shear.cost <= waterjet.cost ? "shear" : "waterjet");
    });
  });
  it("what a bench must add after the shear counts: dear drilling sends holes to the waterjet", () => {
    const dear = SHOP.stations.map((row) => (row[0] === "Drill" ? row.with(4, 5000) : row));
    const plan = shopOf({ stations: dear, job: job({ Due: MONDAY + 300 }) });
    expect(cutters([bracket()], plan)).toEqual({ HB1: "waterjet" });
    expect(cutters([bracket({ Holes: 0 })], plan)).toEqual({ HB1: "shear" });
  });
});

describe("with fewer tables", () => {
  it("without a start or a calendar every line goes to its cheaper machine, without a search", () => {
    for (const changed of [{ job: undefined }, { calendar: undefined }]) {
      const { route } = planned(LINES, shopOf(changed));
      expect(route.best).toBeUndefined();
      expect(route.cuts).toHaveLength(LINES.length);
    }
  });
  it("without stations the shear cuts what it can", () => {
    expect(cutters(LINES, shopOf({ stations: undefined }))).toMatchObject({ HB1: "shear", S: "waterjet", F: "shear" });
  });
  it("a figure that is missing is kept as the reason why nothing is timed", () => {
    const { route } = planned(LINES, shopOf({ stations: without(SHOP.stations, "Brake") }));
    expect(route.cuts).toBeUndefined();
    expect(route.untimed!.message).toMatch(/^stations must be a station in the table; got "Brake"/);
    expect(
      planned(LINES, shopOf({ rates: rates({}).filter(([name]) => name !== "Handling per piece") })).route.untimed!
        .message,
    ).toBe('rates must be a table with a row "Handling per piece"; got none');
  });
});

describe("the machines' time as a route counts it", () => {
  const H = 3600;
  const at = (hour: number): Instant => instant(MONDAY * 24 * H + hour * H);
  const station = (name: string, queue: number) => ({ name, queue: queue * H }) as unknown as Station;
  // Monday from 7:00 to 15:00, Tuesday too; the brake works on to 17:00.
  const day = (weekday: number, to: number, of?: string): CalendarRow => ({
    day: { weekday },
    shift: { from: 7 * H, to: to * H },
    station: of,
  });
  const rows = [day(1, 15), day(2, 15), day(1, 17, "Brake"), day(2, 17, "Brake")];
  const shop = (...stations: Station[]) => routeShop(stations, rows, at(7));
  const hour = (found: number) => (found - at(0)) / H;

  it("is behind its queue, in its shifts: by hand", () => {
    const { shear, waterjet } = shop(station("Shear", 2), station("Waterjet", 0));
    expect([hour(shear.finish(H)), hour(shear.finish(6 * H)), hour(shear.finish(7 * H))]).toEqual([10, 15, 24 + 8]);
    expect(hour(shear.finish(H))).toBe(10); // asked again
    expect(hour(waterjet.finish(H))).toBe(8);
    expect([shear.capacity(at(12)) / H, waterjet.capacity(at(12)) / H]).toEqual([3, 5]);
    expect(shear.capacity(at(24 + 8)) / H).toBe(7);
  });
  it("at the brake begins when the queue is done and the first blank is there, whichever is later", () => {
    const { brake } = shop(station("Brake", 6));
    expect(hour(brake.finish(at(9), H))).toBe(14);
    expect(hour(brake.finish(at(14), H))).toBe(15);
    expect(hour(brake.finish(at(16), 2 * H))).toBe(24 + 8);
    const free = shop(station("Brake", 0)).brake;
    expect([hour(free.finish(at(9), H)), hour(free.finish(at(5), H))]).toEqual([10, 8]);
  });
  it("of a machine that is not in the table is none: nothing is cut there, and nothing is bent", () => {
    const { shear, brake } = shop(station("Waterjet", 0));
    expect([hour(shear.finish(H)), shear.capacity(at(12))]).toEqual([7, 0]);
    expect(brake.finish(at(9), H)).toBe(at(9));
  });
});

describe("what a route costs", () => {
  it("is of each line what its cutting takes and costs where it goes, in whole ten-thousandths", () => {
    const plan = planned([bracket({ Holes: 0 }), bracket({ Part: "B", Holes: 0, Width: 9 })]);
    expect(plan.route.cutters).toEqual(["shear", "shear"]);
    plan.quoted.forEach((line, i) => {
      const [cutting] = plan.workOf(line).works;
      const cut = plan.route.cuts![i]!.shear!;
      expect(cut.time).toBe(timeOf(cutting!));
      // 78 an hour, as the table says of the shear.
      expect(cut.cost).toBe(Math.round(((timeOf(cutting!) * 78) / 3600) * COST_UNITS));
    });
    expect(plan.route.best!.cost).toBe(plan.route.cuts!.reduce((sum, { shear }) => sum + shear!.cost, 0));
  });
  it("is said in its working in money", () => {
    const work: Working = [];
    const plan = planned([bracket({ Holes: 0 })]);
    planRouteAnew(plan.routed, plan.shop, work);
    const [cutting] = plan.workOf(plan.quoted[0]!).works;
    const cost = work.find(({ symbol }) => symbol === "cost")!;
    expect(cost.value).toBeCloseTo((timeOf(cutting!) * 78) / 3600, 3);
  });
  it("counts the second person where two are needed, and asks for that rate only then", () => {
    const big = bracket({ Part: "big", Flanges: "20; 20", Width: 40, Quantity: 2, Holes: 0 });
    const shop = shopOf({ rates: rates({ "Second person": 30 }) });
    const plan = planned([bracket(), big], shop);
    const work = (part: string) => plan.workOf(quotedOf(plan, part)).works[0]!;
    expect([work("HB1").people, work("big").people]).toEqual([1, 2]);
    const hours = (part: string) => timeOf(work(part)) / 3600;
    expect(costOf(work("HB1"), shop)).toBeCloseTo(hours("HB1") * work("HB1").station.rate, 9);
    expect(costOf(work("big"), shop)).toBeCloseTo(hours("big") * (work("big").station.rate + 30), 9);
    const none = shopOf({ rates: rates({}).filter(([name]) => name !== "Second person") });
    expect(costOf(work("HB1"), none)).toBeGreaterThan(0);
    expect(() => costOf(work("big"), none)).toThrow(
      expect.objectContaining({ message: 'rates must be a table with a row "Second person"; got none' }),
    );
  });
  it("without a calendar is the least of each line alone", () => {
    const dear = withCell(SHOP.stations, "Shear", "Rate", 4000);
    for (const stations of [SHOP.stations, dear]) {
      const { route } = planned(LINES, shopOf({ calendar: undefined, stations }));
      route.cuts!.forEach(({ shear, waterjet }, i) => {
        const least = !shear || (waterjet && waterjet.cost < shear.cost) ? "waterjet" : "shear";
        expect(route.cutters[i]).toBe(least);
      });
      expect(route.cutters.includes("shear")).toBe(stations !== dear);
    }
    const only = planned([bracket()], shopOf({ calendar: undefined, stations: dear, waterjets: undefined })).route;
    expect(only.cutters).toEqual(["shear"]);
  });
  it("is not counted without stations, nor of a bill without a line that can be cut", () => {
    const none = { best: undefined, allOnWaterjet: undefined, untimed: undefined };
    expect(planned([bracket()], shopOf({ stations: undefined })).route).toEqual({
      ...none,
      cutters: ["shear"],
      cuts: undefined,
    });
    expect(planned([bracket({ Width: 130 })]).route).toEqual({ ...none, cutters: [], cuts: [] });
  });
});

describe("of two lines alike", () => {
  it("the same one goes to the waterjet where there is time for one on the shear, wherever it stands in the bill", () => {
    const line = (Part: string) => bracket({ Part, Holes: 0, Flanges: "12", "Bend angles": null, Quantity: 400 });
    const lines = ["a", "b", "c"].map(line);
    // The shear is free on Thursday; one line is done on the waterjet by then, all three on neither by Friday noon.
    const stations = withCell(withCell(SHOP.stations, "Waterjet", "Queue", 0), "Shear", "Queue", 30);
    const split = Array.from({ length: 10 }, (_, i) => {
      const shop = shopOf({ stations, job: job({ Due: MONDAY + 4 + (7 + i / 2) * HOUR }) });
      return [cutters(lines, shop), cutters([...lines].reverse(), shop)] as const;
    }).filter(([found]) => new Set(Object.values(found)).size > 1);
    expect(split.length).toBeGreaterThan(0);
    for (const [found, turned] of split) expect(turned).toEqual(found);
  });
});
