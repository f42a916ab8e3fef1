/** Edition 2026.2, goods that a metal shop cuts but never bends. Their weight is what a bill wants of them. */

import { inches, poundsPerCubicInch } from "./figures.ts";
import type { Material } from "./material.ts";

const DATA_SHEETS = "usual data sheets";

export const CUT_ONLY: readonly Material[] = [
  {
    name: "Composite panel",
    aliases: ["aluminum composite panel", "ACM panel", "ACM"],
    cutOnly: true,
    density: poundsPerCubicInch(0.0497, "memory", `${DATA_SHEETS}, 4 mm panel with a polyethylene core, 5.5 kg/m2`),
    nominalThickness: inches(0.157, "memory", `${DATA_SHEETS}, 4 mm panel`),
  },
  {
    name: "Expanded steel 3/4-9",
    aliases: ["expanded metal", "expanded steel", "expanded metal 3/4-9", "3/4-9 expanded"],
    cutOnly: true,
    density: poundsPerCubicInch(0.0933, "memory", `${DATA_SHEETS}, 1.80 lb/ft2 of 10 gauge, over its own 0.134 in`),
    nominalThickness: inches(0.134, "memory", `${DATA_SHEETS}, strand thickness of 3/4-9`),
  },
  {
    name: "Plywood",
    aliases: ["birch plywood", "ply"],
    cutOnly: true,
    density: poundsPerCubicInch(0.022, "memory", `${DATA_SHEETS}, 610 kg/m3`),
  },
  {
    name: "Acrylic",
    aliases: ["PMMA", "acrylic sheet"],
    cutOnly: true,
    density: poundsPerCubicInch(0.043, "memory", `${DATA_SHEETS}, 1190 kg/m3`),
  },
];
