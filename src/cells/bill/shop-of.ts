import type { MaterialTable } from "../../bill/material-table.ts";
import type { UnitSystem } from "../../units/system.ts";
import type { Shop } from "./shop.ts";

/** A function's tables, each under its argument's name, as the shop. */
export const shopOf = (
  tables: {
    readonly bill: Shop["bill"];
    readonly brake: Shop["brakes"];
    readonly dies: Shop["dies"];
    readonly punches: Shop["punches"];
    readonly shear: Shop["shears"];
    readonly waterjet: Shop["waterjets"];
    readonly stations: Shop["stations"];
    readonly rates: Shop["rates"];
  },
  system: UnitSystem,
  materials: MaterialTable,
): Shop => ({
  bill: tables.bill,
  brakes: tables.brake,
  dies: tables.dies,
  punches: tables.punches,
  shears: tables.shear,
  waterjets: tables.waterjet,
  stations: tables.stations,
  rates: tables.rates,
  system,
  materials,
});
