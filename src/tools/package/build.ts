/** `npm run build`: the add-in into dist, for the address in the environment variable ORIGIN. */
import { buildAddIn, originNote } from "./build-add-in.ts";

await buildAddIn(process.cwd());
console.error(`dist: ${originNote()}`);
