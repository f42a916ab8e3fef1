/** Method and strength for answers that protect a machine: the cautious ones unless told otherwise. */
import { FORCE_METHODS } from "../../calc/bend/tonnage.ts";
import { choice } from "./choice.ts";
import { tensile } from "./stress.ts";

export const cautiousMethod = () =>
  choice({
    description: 'Force formula: "Lange", "Groover", "US shop" or the "highest" that applies',
    words: FORCE_METHODS,
    fallback: "highest",
  });

export const cautiousTensile = () => tensile("high");
