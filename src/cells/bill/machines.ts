/** BILL.MACHINES: the smallest machines that would do the bill, and how much of it each machine of the shop can do. */
import { findProblems } from "../../calc/bend/check/check.ts";
import { highShearStrength, lowShearStrength } from "../../calc/material/strength.ts";
import { checkShear } from "../../calc/shear/check.ts";
import { neededRating } from "../../calc/shear/needed-rating.ts";
import type { Material } from "../../data/materials/material.ts";
import type { CellMatrix } from "../../units/cell.ts";
import type { Millimetres } from "../../units/quantity.ts";
import { fromInternal, type QuantityKind, unitName } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { type SpillRow, spill } from "../record/spill-columns.ts";
import { blankOf } from "./blank.ts";
import { type CheckShop, largestForce } from "./check.ts";
import { RATED_MATERIAL, shearedBlank } from "./routes.ts";
import { isAnswered, outcomes } from "./rows.ts";
import { chooseTools } from "./tools.ts";

export function billMachines(shop: CheckShop, work?: Working): CellMatrix {
  const { system, materials } = shop;
  const rated = materials.find(RATED_MATERIAL, "rated material");
  const found = outcomes(shop.bill, (line) => {
    const chosen = chooseTools(line, shop, system);
    const blank = blankOf(line, chosen, system);
    return { chosen, blank, rating: ratingFor(line.material, rated, line.thickness) };
  });
  const lines = found.filter(isAnswered);
  const bent = lines.filter(({ answer }) => answer.chosen);
  type Line = (typeof lines)[number];

  const most = (
    question: string,
    quantity: QuantityKind,
    of: readonly Line[],
    value: (line: Line) => number,
  ): SpillRow => {
    if (of.length === 0) return { Question: question, Unit: unitName(quantity, system), Lines: 0 };
    const top = of.reduce((a, b) => (value(b) > value(a) ? b : a));
    const figure = fromInternal(value(top), quantity, system);
    return {
      Question: question,
      Value: figure,
      Unit: unitName(quantity, system),
      Part: top.line.part,
      Lines: of.length,
    };
  };
  const share = (question: string, of: readonly Line[], can: (line: Line) => boolean): SpillRow => {
    const able = of.filter(can);
    const stuck = of.find((line) => !able.includes(line));
    return {
      Question: question,
      Value: able.length,
      Unit: "lines",
      Part: stuck?.line.part,
      Lines: of.length,
      Share: of.length === 0 ? undefined : able.length / of.length,
    };
  };
  const rows: SpillRow[] = [
    most("Smallest brake force, expected", "force", bent, ({ answer }) => largestForce(answer.chosen!).expected),
    most("Smallest brake force, worst case", "force", bent, ({ answer }) => largestForce(answer.chosen!).worst),
    most("Shortest brake bed", "length", bent, ({ answer }) =>
      Math.max(...answer.chosen!.bends.map((b) => b.bendLength)),
    ),
    most("Least shear rating, mild steel", "length", lines, ({ answer }) => answer.rating),
    most("Shortest shear", "length", lines, ({ answer: { blank } }) => Math.max(blank.length, blank.width)),
    ...shop.brakes.map((brake) =>
      share(`Lines that ${brake.name} bends`, bent, ({ answer: { chosen } }) =>
        chosen!.bends.every((bend) =>
          findProblems(bend, { ...chosen!.setup, brake }, system).every(
            ({ check, severity }) => severity !== "stop" || !MACHINE_CHECKS.includes(check),
          ),
        ),
      ),
    ),
    ...shop.shears.map((shear) =>
      share(`Lines that ${shear.name} cuts`, lines, ({ line, answer: { blank } }) =>
        checkShear(
          shearedBlank(line, blank),
          shear,
          [],
          ({ ratedMaterial }) => materials.find(ratedMaterial ?? RATED_MATERIAL, "rated material"),
          system,
        ).every(({ severity }) => severity !== "stop"),
      ),
    ),
  ];
  if (bent.length > 0) {
    const force = Math.max(...bent.map(({ answer }) => largestForce(answer.chosen!).expected));
    step(work, "F", "smallest brake force, expected", force, "N", "largest of the lines' bends; the plates decide");
  }
  const missing = found.length - lines.length;
  if (missing > 0)
    rows.push({ Question: "Lines that could not be read", Value: missing, Unit: "lines", Lines: found.length });
  return spill("BILL.MACHINES", rows, system);
}

/** The checks that are about the brake itself, not about die, punch or part. */
const MACHINE_CHECKS = ["force", "force per length", "bed length"];

/** The rating in mild steel that takes this sheet; a rating holds as it stands for the material it is stated in. */
const ratingFor = (material: Material, rated: Material, thickness: Millimetres): Millimetres =>
  material.name === rated.name
    ? thickness
    : neededRating(thickness, lowShearStrength(rated), highShearStrength(material));
