/** The smallest machines that would do the bill, and how much of it each machine of the shop can do. */
import { checkBend } from "../../calc/bend/check/check.ts";
import type { Finding, Subject } from "../../calc/finding.ts";
import { highShearStrength, ratedShearStrength } from "../../calc/material/strength.ts";
import { checkShear } from "../../calc/shear/check.ts";
import { neededRating } from "../../calc/shear/needed-rating.ts";
import type { Material } from "../../data/materials/material.ts";
import type { Millimeters } from "../../units/quantity.ts";
import type { QuantityKind } from "../../units/system.ts";
import { step, type Working } from "../../units/working.ts";
import { shearedBlank } from "../lines/cutting.ts";
import { isBent, type LinePlan } from "../lines/plan-line.ts";
import { bendLines } from "../lines/tools.ts";
import type { Shop } from "../nouns/shop.ts";

/** A size that a machine must have: of so many lines the one that asks for most. */
interface NeededSize {
  readonly question: string;
  readonly quantity: QuantityKind;
  readonly of: number;
  readonly most: { readonly value: number; readonly part: string } | undefined;
}
/** How many of so many lines a machine of the shop can do, and the first one it cannot. */
interface MachineShare {
  readonly question: string;
  readonly of: number;
  readonly able: number;
  readonly stuck: string | undefined;
}

export function neededMachines(
  plans: readonly LinePlan[],
  shop: Pick<Shop, "brakes" | "shears" | "ratedIn" | "rates" | "system">,
  work?: Working,
): { readonly sizes: readonly NeededSize[]; readonly shares: readonly MachineShare[] } {
  const bent = plans.filter(isBent);
  const sheared = plans.filter(({ line }) => !line.material.cutOnly);
  const most = <P extends LinePlan>(
    question: string,
    quantity: QuantityKind,
    of: readonly P[],
    value: (plan: P) => number,
  ): NeededSize => {
    const sizes = of.map((plan) => ({ value: value(plan), part: plan.line.part }));
    const top = sizes.reduce<NeededSize["most"]>((a, b) => (a && a.value >= b.value ? a : b), undefined);
    return { question, quantity, of: of.length, most: top };
  };
  const share = <P extends LinePlan>(question: string, of: readonly P[], can: (plan: P) => boolean): MachineShare => {
    const stuck = of.filter((plan) => !can(plan));
    return { question, of: of.length, able: of.length - stuck.length, stuck: stuck[0]?.line.part };
  };
  const rating = ({ line }: LinePlan) => ratingFor(line.material, shop.ratedIn, line.thickness);
  const expected = most("Smallest brake force, expected", "force", bent, ({ force }) => force.expected);
  const sizes = [
    expected,
    most("Smallest brake force, worst case", "force", bent, ({ force }) => force.worst),
    most("Shortest brake bed", "length", bent, ({ line }) => Math.max(...bendLines(line).map((b) => b.bendLength))),
    most("Least shear rating, mild steel", "length", sheared, rating),
    most("Shortest shear", "length", sheared, ({ blank }) => Math.max(blank.length, blank.width)),
  ];
  if (expected.most)
    step(
      work,
      "F",
      "smallest brake force, expected",
      expected.most.value,
      "N",
      "largest of the bends; the plates decide",
    );
  const shares = [
    ...shop.brakes.map((brake) =>
      share(`Lines that ${brake.name} bends`, bent, ({ line, tools }) =>
        bendLines(line).every(
          (bend) =>
            !stops(checkBend(bend, { ...tools, brake, own: shop.rates.own }, shop.system), OF_THE_BRAKE, brake.name),
        ),
      ),
    ),
    ...shop.shears.map((shear) =>
      share(
        `Lines that ${shear.name} cuts`,
        sheared,
        ({ line, blank }) => !stops(checkShear(shearedBlank(line, blank), shear, shop.rates.own)),
      ),
    ),
  ];
  return { sizes, shares };
}

/** What is about the brake itself, not about die, punch or part. */
const OF_THE_BRAKE: readonly Subject[] = ["brake force", "beam", "bend ends", "room"];

const stops = (findings: readonly Finding[], about?: readonly Subject[], name?: string): boolean =>
  findings.some(
    (finding) =>
      finding.status === "stop" && (!about || about.includes(finding.about)) && (!name || finding.name === name),
  );

/** The rating in mild steel that takes this sheet; a rating holds as it stands for the material it is stated in. */
const ratingFor = (material: Material, rated: Material, thickness: Millimeters): Millimeters =>
  material.name === rated.name
    ? thickness
    : neededRating(thickness, ratedShearStrength(rated), highShearStrength(material));
