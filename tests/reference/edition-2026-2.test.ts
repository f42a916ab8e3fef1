/** What edition 2026.2 answers where sources were read since 2026.1, through the cell functions; 2026.1 keeps its answers. */
import { describe, expect, it } from "vitest";
import { callRecord } from "../../src/cells/call/call.ts";
import { RECORDS } from "../../src/cells/catalogue.ts";
import { isCellError } from "../../src/units/cell.ts";

type Cell = string | number | null;
function ask(name: string, ...given: readonly Cell[]) {
  const record = RECORDS.find((each) => each.name === name)!;
  const { value } = callRecord(record, [...given]);
  return isCellError(value) ? value.message : value;
}

describe("a shear's rating, by equal shearing force (capacity booklet of a guillotine maker, reprint)", () => {
  it.each([
    ["A1011 CS", 0.25, "a softer sheet is not refused at the rating"],
    ["A653 CS", 0.25, "nor is this one"],
    ["304", 0.167, "50 / (0.7 x 107) of the rating"],
    ["A36", 0.25, "the rated sheet itself"],
  ])("2026.2: %s on a 1/4 in A36 shear: %s in, %s", (material, thickness) => {
    expect(ask("SHEAR.MAXTHICKNESS", material, 0.25, null, "in", "2026.2")).toBeCloseTo(thickness as number, 3);
  });

  it("no softer sheet gets less than the rating, whatever the rating is stated in", () => {
    const soft = { "304": ["316", "316L"], "A572-50": ["A36", "1018 CR"], "6061-T6": ["6061-T4", "5052-H32"] };
    for (const [rated, sheets] of Object.entries(soft))
      for (const sheet of sheets)
        expect(ask("SHEAR.MAXTHICKNESS", sheet, 0.25, rated, "in", "2026.2"), `${sheet} on ${rated}`).toBe(0.25);
  });

  it("2026.1 keeps its answers", () => {
    expect(ask("SHEAR.MAXTHICKNESS", "304", 0.25, null, "in", "2026.1")).toBeCloseTo(0.136, 3);
    expect(ask("SHEAR.MAXTHICKNESS", "A1011 CS", 0.25, null, "in", "2026.1")).toBeCloseTo(0.213, 3);
  });
});

describe("2026.1 keeps its default method", () => {
  it.each<[name: string, call: Cell[], answer: number]>([
    // Shop rule (memory), by hand: 0.158125 of 2 in; 2 tan 45 (R + t) - pi/2 (R + 0.42 t); the flat of 2 and 3 in.
    ["AIR.RADIUS", ["A36", 0.25, 90, 2], 0.31625],
    ["AIR.DEDUCTION", ["A36", 0.25, 90, 2], 0.470802047],
    ["AIR.FLAT", ["A36", 0.25, "2; 3", 90, 2], 4.529197953],
  ])("%s", (name, call, answer) => {
    const record = RECORDS.find((each) => each.name === name)!;
    const place = (key: string) => Object.keys(record.parameters).indexOf(key);
    const given = [...call, ...Array.from({ length: place("data") - call.length }, () => null), "2026.1"];
    expect(ask(name, ...given)).toBeCloseTo(answer, 8);
    expect(ask(name, ...given.with(place("method"), "rule")), "what is left blank").toBeCloseTo(answer, 8);
  });
});

describe("stainless gauges as tables print them (gauge chart, reprint)", () => {
  it.each([
    [26, 0.0187, 0.0188],
    [22, 0.0312, 0.0313],
    [13, 0.0937, 0.0938],
    [9, 0.1562, 0.1563],
    [14, 0.0781, 0.0781],
    [12, 0.1094, 0.1094],
    [10, 0.1406, 0.1406],
  ])("%s ga: %s in, %s under 2026.1", (gauge, printed, rounded) => {
    expect(ask("SHEET.THICKNESS", gauge, "stainless", "in", "2026.2")).toBeCloseTo(printed, 9);
    expect(ask("SHEET.THICKNESS", gauge, "stainless", "in", "2026.1")).toBeCloseTo(rounded, 9);
    expect(ask("BLANK.WEIGHT", "304", `${gauge} ga`, 10, 10, 1, "in", "2026.2")).toBeCloseTo(printed * 100 * 0.29, 9);
  });
});

describe("typical yield beside typical tensile (Kutz, Handbook of Materials Selection, Table 5; producer's data sheet)", () => {
  it.each([
    ["1100-H14", 17, 18],
    ["3003-H14", 21, 22],
    ["5052-H32", 28, 33],
    ["5052-H34", 31, 38],
    ["6061-T6", 40, 45],
    ["2024-T3", 50, 70],
    ["304", 39, 87],
    ["316", 40, 84],
  ])("%s: %s and %s ksi", (material, yieldTypical, tensile) => {
    expect(ask("MATERIAL.VALUE", material, "yield typical", "in", "2026.2")).toBe(yieldTypical);
    expect(ask("MATERIAL.VALUE", material, "tensile typical", "in", "2026.2")).toBe(tensile);
  });

  it("5052-H32 reads n about 0.086 from them, not 0.144", () => {
    const rows = ask(
      "WORKING",
      "AIR.RADIUS",
      "5052-H32",
      0.125,
      90,
      1,
      0.0625,
      "mechanics",
      null,
      null,
      null,
      "in",
      "2026.2",
    );
    const n = (rows as unknown as Cell[][]).find(([symbol]) => symbol === "n")!;
    expect(n[2]).toBeCloseTo(0.086, 2);
  });
});

describe("goods that are cut only", () => {
  it.each(["Composite panel", "Expanded steel 3/4-9", "Plywood", "Acrylic"])("%s has a weight and no bend", (name) => {
    expect(ask("BLANK.WEIGHT", name, 0.25, 12, 12, 1, "in", "2026.2")).toBeGreaterThan(0.3);
    for (const call of [
      ["AIR.RADIUS", name, 0.25, 90, 2, null, null, null, null, null, "in", "2026.2"],
      ["AIR.SPRINGBACK", name, 0.25, 90, 2, null, null, null, null, null, "in", "2026.2"],
      ["BEND.TONNAGE", name, 0.25, 12, 2, null, null, "in", "2026.2"],
    ] as const)
      expect(ask(...(call as unknown as [string, ...Cell[]])), call[0]).toMatch(
        /^material must be a metal that is bent or sheared; got .+; it is cut only/,
      );
    expect(ask("JET.FEED", name, 0.25, 3, 50, 0.014, 0.75, 0.04, "in", "2026.2")).toMatch(/time a cut of your own/);
  });
});

describe("edition 2026.2 has what such shops handle", () => {
  it.each(["3003-H14", "1018 CR", "316L", "galvanneal", "1100-O"])("%s bends, with its density and a force", (name) => {
    expect(ask("AIR.RADIUS", name, 0.06, 90, 0.5, 0.03, null, null, null, null, "in", "2026.2")).toBeGreaterThan(0.02);
    expect(ask("BLANK.WEIGHT", name, 0.06, 12, 12, 1, "in", "2026.2")).toBeGreaterThan(0.5);
    expect(ask("BEND.TONNAGE", name, 0.06, 12, 0.5, null, null, "in", "2026.2")).toBeGreaterThan(0.3);
  });
});

describe("abrasive waterjet in thin sheet", () => {
  it("the working lays the published speed beside the formula's: about 20 in/min in 1.6 mm mild steel", () => {
    const rows = ask("WORKING", "JET.FEED", "A36", 0.063, 1, 50, 0.014, 0.75, 0.04) as unknown as Cell[][];
    const thin = rows.find(([symbol]) => symbol === "thin")!;
    expect(thin[2]).toBeCloseTo(20, 9);
    expect(String(thin[1])).toContain("time a cut of your own");
    const thick = ask("WORKING", "JET.FEED", "A36", 0.5, 1, 50, 0.014, 0.75, 0.04) as unknown as Cell[][];
    expect(thick.find(([symbol]) => symbol === "thin")).toBeUndefined();
  });
});

describe("past the faces of the die", () => {
  it("AIR.TONNAGE refuses, or says what bottoming takes: 5 times as much, the upper end of 3-5 (common practice)", () => {
    const call = (at: string) =>
      ask("AIR.TONNAGE", "6061-T6", 0.125, 90, 12, 2, 0.0625, 88, null, null, null, at, "in", "2026.2");
    expect(call("air")).toMatch(
      /^die_angle must be at most 7\d(\.\d)? deg, since the sheet turns 10\d\.\d deg under load; got 88;/,
    );
    const free = ask("BEND.TONNAGE", "6061-T6", 0.125, 12, 2, "Lange", "typical", "in", "2026.2");
    expect((call("bottoming") as number) / (free as number)).toBeCloseTo(5, 9);
  });
});
