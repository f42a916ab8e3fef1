/** What is left of a sheet and worth a tag. */
import { fact } from "./fact.ts";

/** Shorter or narrower than this it is scrap, where the shop does not say. */
export const LEAST_REMNANT_IN = fact(12, "in", "common practice", "common practice of US shops");
