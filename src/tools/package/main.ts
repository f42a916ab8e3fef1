/** `npm run package`: builds the add-in and packs it with manifests, changelog, licence and notices into one zip. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { type Files, releaseFiles, zip } from "./archive.ts";
import { buildAddIn, originNote, orSay } from "./build-add-in.ts";

const DOCUMENTS = ["CHANGELOG.md", "LICENSE"];

const filesBelow = (folder: string): Files =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => `${parentPath}/${name}`.replaceAll("\\", "/"))
      .map((path) => [path.slice(folder.length + 1), readFileSync(path)]),
  );

await orSay(async () => {
  const { version } = JSON.parse(readFileSync("package.json", "utf8"));
  const documents = new Map(DOCUMENTS.map((name) => [name, readFileSync(name)]));
  await buildAddIn(process.cwd());
  const release = releaseFiles(filesBelow("dist"), documents);
  const content = zip(release);
  const file = `dist/bracket-bill-${version}.zip`;
  writeFileSync(file, content);
  console.log(`${file}: ${release.size} files, ${Math.ceil(content.length / 1024)} KB`);
  console.error(originNote());
});
