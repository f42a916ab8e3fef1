/** `npm run package`: builds the add-in and packs it with manifests, changelog, license and notices into one zip. */
import { readFileSync, writeFileSync } from "node:fs";
import { releaseFiles, zip } from "../../hosts/install/archive.ts";
import { buildAddIn, filesBelow, originNote, orSay } from "./build-add-in.ts";

await orSay(async () => {
  const { version } = JSON.parse(readFileSync("package.json", "utf8"));
  await buildAddIn(process.cwd());
  const release = releaseFiles(filesBelow("dist"));
  const content = zip(release);
  const file = `dist/bracket-bill-${version}.zip`;
  writeFileSync(file, content);
  console.log(`${file}: ${release.size} files, ${Math.ceil(content.length / 1024)} KB`);
  console.error(originNote());
});
