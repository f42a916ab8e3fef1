/** What is left of a sheet and worth a tag. */
import { fact } from "./fact.ts";

/** A remnant of common stock, of the same area of a new sheet, where the shop does not say. */
export const COMMON_REMNANT_WORTH = fact(0.5, "", "common practice", "common practice of US shops");

/** Shorter or narrower than this it is scrap, where the shop does not say. */
export const LEAST_REMNANT_IN = fact(12, "in", "common practice", "common practice of US shops");
