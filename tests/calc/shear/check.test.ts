/** What is found about a cut on either side of each threshold. Common practice of US shops; the plate decides. */
import { describe, expect, it } from "vitest";
import { highShearStrength, ratedShearStrength, shearStrength } from "../../../src/calc/material/strength.ts";
import { checkShear, type Shear, type ShearedBlank } from "../../../src/calc/shear/check.ts";
import { mm } from "../../../src/units/quantity.ts";
import { material } from "../bend/check/set-up.ts";

const A36 = material("A36");
const SHEAR: Shear = { name: "S", ratedThickness: mm(6), ratedIn: A36, cutLength: mm(2500) };
const BLANK: ShearedBlank = { material: A36, thickness: mm(3), cutLength: mm(1000), stripWidth: mm(300) };
const said = (blank: Partial<ShearedBlank>, shear: Partial<Shear> = {}) =>
  checkShear({ ...BLANK, ...blank }, { ...SHEAR, ...shear }).map(
    ({ about, status, kind }) => `${about}: ${status} ${kind}`,
  );

it("an ordinary cut is clear", () => expect(said({})).toEqual([]));

describe("the length of the cut", () => {
  it.each([
    [2500, []],
    [2501, ["cutting: stop too long"]],
  ])("%d mm on a shear of 2500", (cutLength, found) => expect(said({ cutLength: mm(cutLength) })).toEqual(found));
});

describe("the rating", () => {
  it("is the plate's own in its own material", () => {
    expect(said({ thickness: mm(6) })).toEqual([]);
    expect(said({ thickness: mm(6.01) })).toEqual(["cutting: stop over rating"]);
  });
  // 10 gauge is 0.1345 in the published Manufacturers' Standard Gauge table (read) and 0.134505 in by its weight.
  it("of a plate that prints 10 gauge takes 10 gauge, and not 9", () => {
    const printed = { ratedThickness: mm(0.1345 * 25.4) };
    expect(said({ thickness: mm(0.134505 * 25.4) }, printed)).toEqual([]);
    expect(said({ thickness: mm(0.1495 * 25.4) }, printed)).toEqual(["cutting: stop over rating"]);
  });
  it("in stainless only a strong sheet is over it: a check; an ordinary one too: a stop", () => {
    const stainless = material("304");
    // At equal force, parallel blades: t S1 / S2, with the strength that the rating covers.
    const careful = (6 * ratedShearStrength(A36)) / highShearStrength(stainless);
    const ordinary = (6 * ratedShearStrength(A36)) / shearStrength(stainless);
    expect(careful).toBeLessThan(ordinary - 0.1);
    const at = (thickness: number) => said({ material: stainless, thickness: mm(thickness) });
    expect(at(careful)).toEqual([]);
    expect(at(careful + 0.01)).toEqual(["cutting: check strong only"]);
    expect(at(ordinary)).toEqual(["cutting: check strong only"]);
    expect(at(ordinary + 0.01)).toEqual(["cutting: stop over rating"]);
  });
  it("304 of 1/4 in on a shear rated 1/4 in in mild steel stops", () => {
    const quarter = { thickness: mm(6.35), material: material("304") };
    expect(said(quarter, { ratedThickness: mm(6.35) })).toEqual(["cutting: stop over rating"]);
  });
});

describe("the piece that falls", () => {
  it.each([
    [100, []],
    [99, ["hold-down: note falls last"]],
  ])("%d mm wide under a hold-down that needs 100", (stripWidth, found) => {
    expect(said({ stripWidth: mm(stripWidth) }, { leastHold: mm(100) })).toEqual(found);
  });
  it.each([
    // thinner than 3/16 in
    [3, 12, undefined],
    [3, 11.9, "note"],
    [3, 8, "note"],
    [3, 7.9, "check"],
    [3, 4, "check"],
    [3, 3.9, "stop"],
    // from 3/16 in on
    [4.7625, 12, undefined],
    [4.7625, 11.9, "check"],
    [4.7625, 4, "check"],
    [4.7625, 3.9, "stop"],
  ] as const)("%d mm sheet, %d thicknesses wide: %s", (thickness, times, status) => {
    const found = said({ thickness: mm(thickness), stripWidth: mm(thickness * times) });
    expect(found).toEqual(status ? [`narrow strip: ${status} twists`] : []);
  });
});

describe("the blade gap as a share of the thickness", () => {
  it.each([
    [3, 0.1, undefined],
    [3, 0.101, "note wide"],
    [3, 0.2, "note wide"],
    [3, 0.201, "check wide"],
    [3, 0.4, "check wide"],
    [3, 0.401, "stop folds in"],
    [3, 0.039, undefined], // tight only from 3/16 in
    [4.7625, 0.04, undefined],
    [4.7625, 0.039, "check tight"],
    [4.7, 0.039, undefined],
  ] as const)("%d mm sheet, %d: %s", (thickness, share, found) => {
    expect(said({ thickness: mm(thickness) }, { bladeGap: mm(share * thickness) })).toEqual(
      found ? [`blade gap: ${found}`] : [],
    );
  });
});
