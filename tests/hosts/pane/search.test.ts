import { describe, expect, it } from "vitest";
import { RECORDS } from "../../../src/cells/catalogue.ts";
import { guideEntry } from "../../../src/hosts/pane/guide/entry.ts";
import { search } from "../../../src/hosts/pane/guide/search.ts";

const entries = RECORDS.map(guideEntry);
const names = (typed: string) => search(entries, typed).map(({ name }) => name);

describe("searching the guide", () => {
  it("shows everything when nothing is typed", () => expect(search(entries, "  ")).toEqual(entries));

  it.each([
    ["setback", "SHOP.BEND.SETBACK"],
    ["Bend Tonnage", "SHOP.BEND.TONNAGE"],
    ["shop.bend.setback", "SHOP.BEND.SETBACK"],
    ["knife gap", "SHOP.SHEAR.CLEARANCE"],
    ["blank weigh", "SHOP.BLANK.WEIGHT"],
  ])("%j finds %s first", (typed, name) => expect(names(typed)[0]).toBe(name));

  it("needs every word, wherever it stands", () => {
    expect(names("shear force")).toContain("SHOP.SHEAR.FORCE");
    expect(names("shear force")).not.toContain("SHOP.BEND.TONNAGE");
    expect(names("shear unicorn")).toEqual([]);
  });

  it("takes signs of a formula or a pattern as plain text", () => {
    expect(names("=SHOP.BEND.SETBACK(")[0]).toBe("SHOP.BEND.SETBACK");
    expect(names(".*")).toHaveLength(entries.length);
    expect(names("<blink>")).toEqual([]);
  });
});

describe("a function in the guide", () => {
  it("shows syntax, units, defaults and a true example", () => {
    expect(entries.find(({ name }) => name === "SHOP.BEND.SETBACK")).toMatchObject({
      topic: "BEND",
      syntax: "=SHOP.BEND.SETBACK(thickness, radius, bend_angle, [units])",
      answers: "in or mm",
      example: { formula: "=SHOP.BEND.SETBACK(0.04,0.16,90)", answer: "0.2" },
    });
  });
});
