/** Every edition ever released, oldest first; the last one is the default. */
import { edition20261 } from "./edition-2026-1.ts";
import type { Edition } from "./material.ts";

export const EDITIONS: readonly Edition[] = [edition20261];
export const CURRENT_EDITION: Edition = edition20261;
