/** One bend and one set-up that nothing is wrong with, to be changed a little. */
import type { BendLine, Setup } from "../../../../src/calc/bend/check/line.ts";
import type { Brake, Die, Punch } from "../../../../src/calc/bend/tooling.ts";
import { CURRENT_EDITION } from "../../../../src/data/materials/editions.ts";
import type { Material } from "../../../../src/data/materials/material.ts";
import { degrees, mm, newtons } from "../../../../src/units/quantity.ts";

export const material = (name: string): Material => CURRENT_EDITION.materials.find((each) => each.name === name)!;

export const line = (changed: Partial<BendLine> = {}): BendLine => ({
  material: material("A36"),
  thickness: mm(3),
  bendLength: mm(400),
  flanges: [mm(60), mm(60)],
  bendAngles: [degrees(90)],
  grain: "across",
  ...changed,
});
export const BRAKE: Brake = { name: "B", ratedForce: newtons(1e7), betweenHousings: mm(2000), bedLength: mm(2500) };
export const die = (changed: Partial<Die> = {}): Die => ({
  name: "V24",
  opening: mm(24),
  angle: degrees(80),
  ...changed,
});
export const punch = (changed: Partial<Punch> = {}): Punch => ({
  name: "P",
  nose: mm(1),
  angle: degrees(78),
  ...changed,
});
export const setup = (changed: Partial<Setup> = {}): Setup => ({
  brake: BRAKE,
  die: die(),
  punch: punch(),
  ...changed,
});
