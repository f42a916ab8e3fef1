/** Edition 2026.2, copper and brass. */

import { GROOVER_CLEARANCE, ksi, plannedHigh, poundsPerCubicInch, ratio, SHOP_RULE, ZENG_KIM } from "./figures.ts";
import type { Material } from "./material.ts";

const COPPER = "ASTM B152 and B36, usual mill values";

const copper = {
  modulus: ksi(16000, "memory", "copper alloys"),
  poisson: ratio(0.34, "memory", "textbook value for copper"),
  airRadiusLow: ratio(0.12, "memory", `${SHOP_RULE}, as soft aluminum`),
  airRadiusHigh: ratio(0.16, "memory", `${SHOP_RULE}, as mild steel`),
  thicknessOver: "sheet",
} as const;

export const COPPER_ALLOYS: readonly Material[] = [
  {
    name: "C110 half hard",
    aliases: ["C110", "C11000", "C110 H02", "half-hard copper"],
    yieldMinimum: ksi(30, "memory", COPPER),
    yieldTypical: ksi(36, "memory", COPPER),
    tensileMinimum: ksi(37, "memory", COPPER),
    tensileTypical: ksi(42, "memory", COPPER),
    ...plannedHigh(ksi(46, "memory", COPPER)),
    density: poundsPerCubicInch(0.323, "memory", COPPER),
    ...copper,
    machinability: ratio(110, "memory", ZENG_KIM),
  },
  {
    name: "C260 half hard",
    aliases: ["C260", "C26000", "C260 H02", "half-hard brass"],
    yieldMinimum: ksi(40, "memory", COPPER),
    yieldTypical: ksi(52, "memory", COPPER),
    tensileMinimum: ksi(57, "memory", COPPER),
    tensileTypical: ksi(62, "memory", COPPER),
    ...plannedHigh(ksi(67, "memory", COPPER)),
    density: poundsPerCubicInch(0.308, "memory", COPPER),
    ...copper,
    knifeGap: ratio(0.06, "read", `${GROOVER_CLEARANCE}, brass, all tempers`),
  },
];
