/**
 * Materials, edition 2026.2: strengths of one kind, hardening fitted to measured bends, figures read since 2026.1. What
 * was decided where sources disagree stands in CHANGELOG.md.
 */
import { ALUMINUM_ALLOYS } from "./edition-2026-2-aluminum.ts";
import { COPPER_ALLOYS } from "./edition-2026-2-copper.ts";
import { CUT_ONLY } from "./edition-2026-2-cut-only.ts";
import { STAINLESS_STEELS } from "./edition-2026-2-stainless.ts";
import { STEELS } from "./edition-2026-2-steel.ts";
import type { Edition } from "./material.ts";

const airMethod = "best" as const;

export const edition20262: Edition = {
  name: "2026.2",
  date: "2026-11-28",
  airMethod,
  stainlessGauges: "as printed",
  materials: [...STEELS, ...STAINLESS_STEELS, ...ALUMINUM_ALLOYS, ...COPPER_ALLOYS, ...CUT_ONLY].map((material) => ({
    ...material,
    airMethod,
  })),
};
