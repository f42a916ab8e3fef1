/** Which cutting machines can take a line, and if not, why not. */
import { statusOf } from "../../calc/problem.ts";
import { checkShear, type ShearedBlank } from "../../calc/shear/check.ts";
import { atMost } from "../../units/nearly.ts";
import { noAnswer, wrong } from "../../units/refusal.ts";
import { type BillLine, ROUTES, type RouteName } from "../tables/bill.ts";
import type { Blank } from "./blank.ts";
import type { Shop } from "./shop.ts";

export const RATED_MATERIAL = "A36"; // guillotines are rated in mild steel, common practice

export type Possible = Readonly<Record<RouteName, { readonly can: boolean; readonly why: string }>>;

export const shearedBlank = ({ material, thickness }: BillLine, { length, width }: Blank): ShearedBlank => ({
  material,
  thickness,
  cutLength: length > width ? length : width,
  stripWidth: length > width ? width : length,
});

export const shearProblems = (line: BillLine, blank: Blank, shop: Pick<Shop, "shears" | "materials" | "system">) =>
  checkShear(
    shearedBlank(line, blank),
    shop.shears[0]!,
    shop.shears,
    ({ ratedMaterial }) => shop.materials.find(ratedMaterial ?? RATED_MATERIAL, "rated material"),
    shop.system,
  );

export function possibleRoutes(line: BillLine, blank: Blank, shop: Shop): Possible {
  const onShear = whyNotShear(line, blank, shop);
  const onWaterjet = whyNotWaterjet(line, blank, shop);
  return {
    shear: { can: onShear === undefined, why: onShear ?? "" },
    waterjet: { can: onWaterjet === undefined, why: onWaterjet ?? "" },
  };
}

const has = (shop: Shop, basis: "hole" | "notch") => shop.stations.some((station) => station.basis === basis);

function whyNotShear(line: BillLine, blank: Blank, shop: Shop): string | undefined {
  if (shop.shears.length === 0) return "there is no shear";
  if (line.notches > 0 && !has(shop, "notch")) return 'notches need the waterjet or a station with basis "notch"';
  if (line.holes > 0 && !has(shop, "hole")) return 'holes need the waterjet or a station with basis "hole"';
  const stops = shearProblems(line, blank, shop).filter(({ severity }) => severity === "stop");
  return statusOf(stops) === "stop" ? stops.map(({ message }) => message).join(" ") : undefined;
}

function whyNotWaterjet(line: BillLine, blank: Blank, shop: Shop): string | undefined {
  const jet = shop.waterjets[0];
  if (!jet) return "there is no waterjet";
  if (line.material.machinability === undefined) return `${line.material.name} has no machinability number`;
  const [long, short] = [Math.max(blank.length, blank.width), Math.min(blank.length, blank.width)];
  const bed = [jet.bedLength ?? Infinity, jet.bedWidth ?? Infinity];
  if (!atMost(long, Math.max(...bed)) || !atMost(short, Math.min(...bed))) return `it does not fit on ${jet.name}`;
  return undefined;
}

/** The route of a line: its pin, else the one asked for, else the shear where it can. Refuses what no machine can do. */
export function routeFor(line: BillLine, possible: Possible, wanted: RouteName | undefined): RouteName {
  if (!ROUTES.some((route) => possible[route].can))
    throw noAnswer(
      "route",
      "one that a machine of the tables can take",
      "none",
      ROUTES.map((r) => `${r}: ${possible[r].why}`).join("; "),
    );
  const route = line.pin ?? wanted ?? (possible.shear.can ? "shear" : "waterjet");
  if (possible[route].can) return route;
  if (line.pin === undefined) return route === "shear" ? "waterjet" : "shear";
  throw wrong(`bill row ${line.row} column "Route"`, "a machine that can cut the line", route, possible[route].why);
}
