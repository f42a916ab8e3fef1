/**
 * `npm run build`: the add-in into dist, for the address in the environment variable ORIGIN. Without one, the manifest for
 * trying on localhost is also renewed in manifest/, where it is kept.
 */
import { copyFileSync } from "node:fs";
import { buildAddIn, originNote, orSay } from "./build-add-in.ts";

await orSay(async () => {
  await buildAddIn(process.cwd());
  if (!process.env["ORIGIN"]) copyFileSync("dist/manifest/bracket-bill.xml", "manifest/bracket-bill.xml");
  console.error(`dist: ${originNote()}`);
});
