import { describe, expect, it } from "vitest";
import { MaterialTable } from "../../../src/bill/nouns/material-table.ts";
import { CURRENT_EDITION } from "../../../src/data/materials/editions.ts";

const table = new MaterialTable(CURRENT_EDITION);

describe("a material is found by the name people write", () => {
  it("whatever the case, dots and blanks", () => {
    for (const written of ["a572-50", "A572 50", "ASTM A572 Gr. 50"])
      expect(table.find(written, "material").name, written).toBe("A572-50");
  });

  it("or by its gauge series, itself or an alloy's", () => {
    expect(table.gaugeSeries("A36", "material")).toBe("steel");
    expect(table.gaugeSeries(304, "material")).toBe("stainless");
    expect(table.gaugeSeries("Steel", "material")).toBe("steel");
  });

  it("and copper, which is sold by several gauges, is asked for by its thickness", () => {
    expect(() => table.gaugeSeries("C110 half hard", "material")).toThrow(
      'material must be a material with a gauge series; got "C110 half hard"; copper alloys are sold by several gauges: give the thickness',
    );
  });

  it("nothing is no name, nor is what is neither text nor a number", () => {
    expect(() => table.find(null, "material")).toThrow("material must be given; got nothing");
    expect(() => table.find("", "material")).toThrow("material must be given; got ");
    expect(() => table.find(true, "material")).toThrow("material must be the name of a material; got TRUE");
  });

  it("304 may arrive as a number", () => expect(table.find(304, "material").name).toBe("304"));

  it("an alloy behind the word for its family, and no other metal behind it", () => {
    for (const written of ["Al 5052-H32", "Alum. 5052 H32", "aluminum 5052-H32"])
      expect(table.find(written, "material").name, written).toBe("5052-H32");
    expect(() => table.find("Al A36", "material")).toThrow("a material in the table");
  });

  it("a family without its grade is refused with the grades there are", () => {
    expect(() => table.find("stainless", "material")).toThrow('name the grade: "304" or "316"');
    expect(() => table.find("6061", "material")).toThrow("6061-T6");
  });

  it.each<[written: string, hint: RegExp]>([
    ["mild", /plate is "A36", hot-rolled sheet "A1011 CS"/],
    ["Mild steel", /plate is "A36"/],
    ["black steel", /plate is "A36"/],
    ["Alu", /"5052-H32" or "6061-T6"/],
    ["Aluminum".replace("num", "nium"), /"5052-H32" or "6061-T6"/],
    ["Alu 5052", /name the temper or grade: "5052-H32" or "5052-H34"/],
    ["stainless steel", /"304" or "316"/],
    ["SS", /"304" or "316"/],
    ["HR steel", /hot-rolled sheet is "A1011 CS"/],
    ["hot-rolled", /hot-rolled sheet is "A1011 CS"/],
    ["hot rolled", /hot-rolled sheet is "A1011 CS"/],
    ["hotrolled", /hot-rolled sheet is "A1011 CS"/],
    ["CR", /cold-rolled sheet is "A1008 CS"/],
    ["CRS", /cold-rolled sheet is "A1008 CS"/],
    ["cold-rolled", /cold-rolled sheet is "A1008 CS"/],
    ["coldrolled", /cold-rolled sheet is "A1008 CS"/],
    ["304L", /the table has "304"; its low-carbon kin 304L/],
    ["SS304L", /the table has "304"; its low-carbon kin 304L/],
    ["galv sheet", /"A653 CS"/],
    ["A63", /nearest is "A36"; MATERIAL.LIST/],
    ["unobtainium", /got "unobtainium"; MATERIAL.LIST/],
  ])("%s is answered with what it may be, never with another metal", (written, hint) => {
    expect(() => table.find(written, "material")).toThrow(hint);
  });

  it("the workbook's own row stands for the edition's of that name", () => {
    const a36 = table.find("A36", "material");
    const own = { ...a36, aliases: [], source: "our own" } as typeof a36;
    expect(new MaterialTable(CURRENT_EDITION, [own]).find("A36", "material")).toBe(own);
  });
});
