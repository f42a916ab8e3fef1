/** The tables that functions about a whole bill take, in their one order: bill, machines and tools, stock, stations, rates. */

import { bill } from "./bill.ts";
import { rates } from "./rates.ts";
import { brakes, dies, punches, shears } from "./shop-tables.ts";
import { stations } from "./stations.ts";
import { anyWaterjets } from "./waterjet.ts";

export const benders = () => ({ bill: bill(), brake: brakes(), dies: dies(), punches: punches() });
export const cutters = () => ({ ...benders(), shear: shears(), waterjet: anyWaterjets() });
export const workers = () => ({ ...cutters(), stations: stations(), rates: rates() });
