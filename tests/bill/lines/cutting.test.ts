/** Which machine can cut a line, and why not the other one. */
import { describe, expect, it } from "vitest";
import { BillPlan } from "../../../src/bill/plan.ts";
import { readData } from "../../../src/cells/parameters/read-data.ts";
import { readBill } from "../../../src/cells/tables/bill.ts";
import { bill, type Line, only, SHOP, without } from "../../cells/example/tables.ts";
import { answerOf, bracket, kindsOf, planned, shopOf } from "../shop.ts";

const cut = (line: Line, changed: Parameters<typeof shopOf>[0] = {}) => {
  const plan = planned([bracket(line)], shopOf(changed));
  const answer = answerOf(plan, "HB1");
  const { shear, waterjet } = answer.plan!.cutting;
  return { shear: shear?.name, waterjet: waterjet?.name, cutter: answer.cutter, said: kindsOf(answer).join(", ") };
};
const FLAT: Line = { Flanges: "20", "Bend angles": null, Width: 10 };

describe("the shear", () => {
  it("of two the one with the best status, then the lowest rating", () => {
    const thin = { ...FLAT, Material: "A1008 CS", Thickness: "18 ga", Holes: 0 };
    expect(cut(thin).shear).toBe("Shear 2");
    expect(cut(FLAT).shear).toBe("Shear 1");
    expect(cut({ ...thin, Shear: "shear 1" }).shear).toBe("Shear 1");
  });
  it("the order of the table does not matter", () => {
    const turned = { shears: [SHOP.shears[0]!, ...SHOP.shears.slice(1).reverse()] };
    expect(cut(FLAT, turned)).toEqual(cut(FLAT));
  });
  it.each([
    ["1/4 in stainless is over its rating: waterjet, a note", { Material: "304" }, "waterjet", /waterjet: over rating/],
    ["notches and no station for them", { Notches: 2, "Notch path": 1 }, "waterjet", /waterjet: no station/],
    ["pinned there, and it cannot", { Material: "304", Route: "shear" }, undefined, /cutting: stop over rating/],
    ["pinned to the waterjet", { Route: "waterjet" }, "waterjet", /^(?!.*cutting)/],
  ] as [string, Line, string | undefined, RegExp][])("%s", (_, line, cutter, said) => {
    const found = cut({ ...FLAT, ...line });
    expect(found.cutter).toBe(cutter);
    expect(found.said).toMatch(said);
  });
});

describe("sheet thinner than what the waterjet's formula was compared with, 3 mm", () => {
  const thin = { ...FLAT, Material: "A1008 CS", Thickness: "16 ga", Holes: 0 };
  const NOTE = "cutting: note thin on waterjet";
  it("is a note on the line that the waterjet cuts, and none on the shear's", () => {
    expect(cut({ ...thin, Route: "waterjet" }).said).toContain(NOTE);
    expect(cut({ ...thin, Route: "shear" }).said).not.toContain(NOTE);
    expect(cut({ ...FLAT, Thickness: 0.1875, Route: "waterjet" }).said).not.toContain(NOTE);
  });
  it("goes by the shop's own timed cut where there is one", () => {
    const materials = readData(
      [
        ["Name", "Timed feed (in/min)", "Timed thickness (in)", "Materials edition"],
        ["A1008 CS", 20, 0.063, "2026.1"],
      ],
      "materials",
      "in",
    );
    const [row] = readBill(bill(bracket({ ...thin, Route: "waterjet" })), "bill", {
      system: "in",
      materials,
      material: undefined,
    });
    const [answer] = new BillPlan(shopOf(), [row!]).lines;
    expect(answer!.cutter).toBe("waterjet");
    expect(kindsOf(answer!)).not.toContain(NOTE);
  });
});

describe("tables that are not there", () => {
  it("no station drills: holes need the waterjet; without a table of stations that is not looked at", () => {
    expect(cut(FLAT, { stations: without(SHOP.stations, "Drill") }).cutter).toBe("waterjet");
    expect(cut(FLAT, { stations: undefined }).shear).toBe("Shear 1");
  });
  it("no shears: the waterjet, and why; no waterjets: the shear or a stop", () => {
    expect(cut(FLAT, { shears: undefined })).toMatchObject({
      cutter: "waterjet",
      said: "cutting: note waterjet: no shear",
    });
    expect(cut(FLAT, { waterjets: undefined }).cutter).toBe("shear");
    expect(cut({ ...FLAT, Material: "304" }, { waterjets: undefined })).toMatchObject({
      cutter: undefined,
      said: expect.stringContaining("cutting: stop over rating"),
    });
  });
  it("neither: nothing is said about cutting, but nothing cuts it, so that it is not quoted", () => {
    const plan = planned([bracket()], shopOf({ shears: undefined, waterjets: undefined }));
    expect(plan.lines[0]).toMatchObject({ status: "clear", isQuoted: false, cutter: undefined });
    expect(plan.notChecked).toEqual(["shears", "waterjets"]);
    expect(plan.groups).toEqual([]);
  });
});

describe("the waterjet", () => {
  it("needs a blank that fits on its bed, and a material with a machinability number", () => {
    const long = { ...FLAT, Flanges: "150", Material: "304", Holes: 0 };
    expect(cut(long).waterjet).toBeUndefined();
    expect(cut({ ...long, Flanges: "90" }).waterjet).toBe("Jet 1");
  });
  it("counts no sheet for a blank that fits none with its grain", () => {
    const across = { ...FLAT, Flanges: "40", Width: 60, Grain: "length", Route: "waterjet", Holes: 0 };
    const plan = planned([bracket(across)], shopOf({ stock: only(SHOP.stock, "Plate 1/4") }));
    expect(kindsOf(plan.lines[0]!)).toContain("cutting: stop not on waterjet");
    expect(plan.lines[0]!.isQuoted).toBe(false);
    const along = planned([bracket({ ...across, Grain: "width" })], shopOf({ stock: only(SHOP.stock, "Plate 1/4") }));
    expect(along.lines[0]!.isQuoted).toBe(true);
  });
});
