/** Every edition ever released, oldest first. */
import { edition20261 } from "./edition-2026-1.ts";
import { edition20262 } from "./edition-2026-2.ts";
import type { Edition } from "./material.ts";

export const EDITIONS: readonly Edition[] = [edition20261, edition20262];
/** The one that a blank `data` means. */
export const CURRENT_EDITION: Edition = edition20262;
