/** Which machine cuts which line. The search itself is tested in calc/route. */
import { describe, expect, it } from "vitest";
import type { Line } from "../../cells/example/tables.ts";
import { job, MONDAY, rates, SHOP, without } from "../../cells/example/tables.ts";
import { bracket, planned, shopOf } from "../shop.ts";

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
