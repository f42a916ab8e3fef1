/** Third-party notices: name, version, licence and licence text of every package whose code went into a bundle. */
import { existsSync, readdirSync, readFileSync } from "node:fs";

const PACKAGE_FOLDER = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/;
const LICENCE_FILE = /^(licen[cs]e|notice|copying)/i;

/** `sources`: paths of the bundled files. A package without a licence text stops the build: it could not be passed on. */
export function notices(sources: Iterable<string>): string {
  const folders = new Set<string>();
  for (const source of sources) {
    const folder = PACKAGE_FOLDER.exec(source)?.[1];
    if (folder && existsSync(`${folder}/package.json`)) folders.add(folder);
  }
  const entries = [...folders].map(notice).sort();
  return ["Third-party software contained in the files beside this one.", ...entries].join(`\n\n${"-".repeat(72)}\n\n`);
}

function notice(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"));
  const files = readdirSync(folder)
    .filter((file) => LICENCE_FILE.test(file))
    .sort();
  if (files.length === 0) throw new Error(`${name} must bring a licence text; got none in its package`);
  const texts = files.map((file) => readFileSync(`${folder}/${file}`, "utf8").replace(/\r\n/g, "\n").trim());
  return [`${name} ${version} (${license})`, ...texts].join("\n\n");
}
