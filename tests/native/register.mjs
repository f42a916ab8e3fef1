/** Node loads the sources itself, as the shipped commands do: run through vitest's own loader they took a sixth longer. */
import { register } from "node:module";

register("./load-source.mjs", import.meta.url);
